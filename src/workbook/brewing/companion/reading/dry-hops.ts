import type { Filled } from "../../../batch/contents";
import { formCells } from "../../../batch/derived/form-fields";
import { batchFields } from "../../../batch/fields";
import { madeFor } from "../../../batch/read/batch-contents";
import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { dayShown } from "../../../grid/words/day-words";
import { changeCells } from "../change-cells";
import { ChangeRefused } from "../outcome";

/** The day on which hops went into the beer, as a form asks for it. */
export const dryHopsForm = { dryHoppedOn: batchFields.dryHoppedOn } as const;

/** Hops of the batch that go into the fermenter, and the day that is noted already. */
export interface DryHops {
  readonly names: readonly string[];
  readonly noted: number | undefined;
}

/** Undefined where the batch has none, or its sheet no cell for the day. */
export function dryHops(sheet: BatchSheet): DryHops | undefined {
  const { cell } = dryHopsForm.dryHoppedOn;
  if (!sheet.has(cell)) return undefined;
  const names = sheet.block("hop_plan").flatMap((line) => (line.includes("dry") ? [String(line[0] ?? "") || "hops"] : []));
  return names.length === 0 ? undefined : { names: [...new Set(names)], noted: sheet.knownNumber(cell) };
}

/** Why hops cannot have gone in on this day; "" while nothing speaks against it. */
export function dryHopsProblem(sheet: BatchSheet, day: Filled<number>, today: number): string {
  const pitched = sheet.knownNumber("pitched_at");
  if (day === "") return "";
  if (pitched !== undefined && day < Math.floor(pitched)) return `The yeast went in on ${dayShown(pitched)}: dry hops come after it.`;
  return day > Math.floor(today) ? "That day is still to come: note it once they are in." : "";
}

/** Writes the day; a cell that holds one already keeps it. */
export async function writeDryHops(context: Excel.RequestContext, seen: BatchSheet, day: number): Promise<void> {
  const { cell, label } = dryHopsForm.dryHoppedOn;
  if (seen.value(cell) !== "") throw new ChangeRefused(`“${label}” is filled in already: if it is wrong, clear that cell first.`);
  await changeCells(context, seen, formCells(dryHopsForm, { dryHoppedOn: day }, madeFor(seen)));
}
