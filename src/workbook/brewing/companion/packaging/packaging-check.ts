import { headspaceLimits } from "../../../../core/pack/closed-bottle";
import { packCheck } from "../../../../functions/pack/check";
import { refusal } from "../../../../functions/pack/check-words";
import { unitsOf } from "../../../batch/read/batch-sheets";
import type { NamedCells } from "../../../grid/read/named-cells";
import { askText } from "../ask";
import type { PackagingInput } from "./packaging-form";

/** What the sheet's own verdict is asked of, for a form: see `batch/packaging.ts`. */
export function judgedBy(
  sheet: NamedCells,
  { into, carbonation, warmestStorage, kegTemperature, bottleKind }: PackagingInput,
  co2 = carbonation,
): readonly unknown[] {
  const keg = into === "keg";
  const place = (name: string) => (sheet.has(name) ? sheet.value(name) : "");
  // A sheet of an older plan has no such cell, and judges by what is expected alone.
  const endsAt = sheet.value(sheet.has("ends_at") ? "ends_at" : "fg_expected");
  return [
    co2,
    keg ? kegTemperature : warmestStorage,
    keg ? "keg" : bottleKind,
    sheet.value("fg"),
    endsAt,
    unitsOf(sheet),
    place("altitude"),
    place("headspace"),
  ];
}

/** GYLE.PACK.CHECK in full; an error's words where it cannot judge, "" where something is missing. */
export function packagingCheck(sheet: NamedCells, input: PackagingInput, co2 = input.carbonation): string {
  // A typed 0 is no blank, which the function takes for the usual share: the sheet withholds its verdict, too.
  const air = sheet.has("headspace") ? sheet.value("headspace") : "";
  if (input.into === "bottles" && typeof air === "number" && air < headspaceLimits.atLeast)
    return `Air in the neck of a bottle: ${headspaceLimits.atLeast} to ${headspaceLimits.atMost} %, not ${air}`;
  return askText(packCheck, ...judgedBy(sheet, input, co2));
}

/** Whether a verdict lets a sugar or a pressure stand beside it: it holds, or holds just so, and the beer has finished. */
export const lets = (check: string): boolean => /^(within|close): /.test(check) && !check.includes(refusal);
