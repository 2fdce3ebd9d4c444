import { wortMix } from "../../../../functions/wort/mix";
import { formCells } from "../../../batch/derived/form-fields";
import { batchFields } from "../../../batch/fields";
import { madeFor } from "../../../batch/read/batch-contents";
import type { Filled } from "../../../batch/contents";
import { newlySaid } from "../../../batch/rules/what-it-says";
import { ask } from "../ask";
import { changeCells, type CellChange } from "../change-cells";
import { ChangeRefused } from "../outcome";
import { gravityWords, shown } from "../words";
import { unitsOf, type BatchSheet } from "../../../batch/read/batch-sheets";
import { atCalibration, corrected, type Measured, type SheetReading } from "./corrected";

/** The reading before the yeast goes in, and how much wort there is. */
export interface OriginalMeasured extends Measured {
  /** Wort in the fermenter; where `sampled` is "before", without the top-up water. */
  readonly volume: Filled<number>;
  /** Whether the sample was drawn before the top-up water was mixed in. */
  readonly sampled: "before" | "after";
  readonly topUp: Filled<number>;
}

export interface Original extends SheetReading {
  readonly volume: number;
  /** Why it is hard to believe; none where the sheet takes it as it is. */
  readonly doubts: readonly string[];
}

/** Turns it into the gravity of the whole and asks the sheet about it; `problem` is "" while something is missing. */
export function originalGravity(
  sheet: BatchSheet,
  measured: OriginalMeasured,
): { readonly ready: Original; readonly problem?: undefined } | { readonly ready?: undefined; readonly problem: string } {
  const { volume, sampled, topUp } = measured;
  const sample = corrected(sheet, measured, "wort");
  if (!sample.ready) return { problem: sample.problem === "" ? "" : (slip(sheet, measured) ?? sample.problem) };
  if (volume === "" || volume <= 0) return { problem: "" };
  if (sampled === "after") return doubted(sheet, { ...sample.ready, volume });
  if (topUp === "" || topUp <= 0) return { problem: "" };
  const whole = ask(wortMix, [[volume], [topUp]], [[sample.ready.gravity], [1]]);
  if (whole.value === undefined) return { problem: whole.problem };
  const units = unitsOf(sheet);
  const note = [
    sample.ready.note,
    `Read as ${gravityWords(sample.ready.gravity)} in ${shown(volume, "volume", units)} before ${shown(topUp, "volume", units)} of top-up water; this is the gravity of the whole.`,
  ];
  const mixed = atCalibration(sheet, whole.value, note.filter((part) => part !== undefined).join(" "));
  return mixed.ready ? doubted(sheet, { ...mixed.ready, volume: volume + topUp }) : mixed;
}

/** The lines that judge the reading before the yeast, and the volume with it. */
export const linesOfOriginal = ["original-gravity", "volumes", "course", "finished"] as const;

/** What the sheet's checks would say of it that they do not say now. */
const doubted = (sheet: BatchSheet, original: Omit<Original, "doubts">): { readonly ready: Original } => ({
  ready: { ...original, doubts: newlySaid(sheet, originalCells(sheet, original), linesOfOriginal).map(({ words }) => words) },
});

const { collected: _, ...form } = batchFields.wort.fields;

/** A usual slip, such as points for a gravity, in the sheet's own words. */
const slip = (sheet: BatchSheet, { instrument, reading, scale, sampleTemperature }: OriginalMeasured): string | undefined =>
  instrument === "hydrometer"
    ? newlySaid(sheet, formCells(form, { reading, scale, sampleTemperature, volume: "" }, madeFor(sheet)), ["original-gravity"])[0]?.words
    : undefined;

const originalCells = (sheet: BatchSheet, { note, ...original }: Omit<Original, "doubts">): CellChange[] =>
  formCells(form, original, madeFor(sheet)).map((cell) =>
    cell.name === form.reading.cell && note !== undefined ? { ...cell, note } : cell,
  );

/** Writes reading, scale, temperature and volume; each of these cells but the scale must still be empty. */
export async function writeOriginal(context: Excel.RequestContext, seen: BatchSheet, original: Omit<Original, "doubts">): Promise<void> {
  const changes = originalCells(seen, original);
  const filled = changes.find(({ name }) => name !== form.scale.cell && seen.value(name) !== "");
  if (filled)
    throw new ChangeRefused(`The sheet holds ${filled.label} already (${seen.value(filled.name)}): if it is wrong, clear that cell first.`);
  await changeCells(context, seen, changes);
}
