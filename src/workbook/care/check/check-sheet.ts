import type { UnitSystem } from "../../../functions/quantities";
import { planVersion } from "../../batch/describe/plan-version";
import { newBatch } from "../../batch/new-batch";
import { standing } from "../../batch/read/standing";
import { blocksOnSheet } from "../../batch/read/blocks-on-sheet";
import { planBatch } from "../../batch/sheet/plan";
import type { World } from "../../grid/evaluate/world";
import { batchContents } from "../../batch/read/batch-contents";
import { batchMark, isBatchSheet, isNewer, type BatchSheet } from "../../batch/read/batch-sheets";
import { MissingName } from "../../grid/read/named-cells";
import { dates } from "./dates";
import type { Finding } from "./finding";
import { formulaErrors } from "./formula-errors";
import { courseOfReadings } from "./course";
import { ownLines, saidOf } from "./own-lines";
import { deletedNames, overwrittenFormulas, textNumbers } from "./planned-formulas";
import { stillToFill } from "./still-to-fill";
import { changedUnits, typedFigures } from "./typed-figures";

/** Everything that can be said about one sheet. @param today day number */
export function checkSheet(sheet: BatchSheet, world: World, today: number): Finding[] {
  const errors = formulaErrors(sheet, world);
  if (!isBatchSheet(sheet)) return errors;
  if (isNewer(sheet))
    return [
      ...errors,
      {
        sheet: sheet.sheetName,
        weight: "look",
        words: "Made by a newer Gylebook than this one, so only its formulas were looked at. Update this one.",
      },
    ];
  return [...errors, ...batchFindings(sheet, today)];
}

function batchFindings(sheet: BatchSheet, today: number): Finding[] {
  const units: UnitSystem = sheet.has("units") && sheet.text("units").toLowerCase() === "us" ? "us" : "metric";
  const isOlder = Number(sheet.value(batchMark)) < planVersion;
  const older: Finding[] = isOlder
    ? [
        {
          sheet: sheet.sheetName,
          weight: "look",
          words: "Made by an older Gylebook: its formulas were not compared with their plan. Older sheets, under Help, brings it along.",
        },
      ]
    : [];
  const gone = isOlder
    ? []
    : deletedNames(
        sheet,
        planBatch(
          newBatch(
            {
              id: "",
              sheetName: sheet.sheetName,
              batchName: "",
              brewedOn: 1,
              volume: 1,
              units,
              topUp: 0,
              method: sheet.has("mash_water") ? "all-grain" : "extract",
            },
            blocksOnSheet(sheet),
          ),
        ),
      );
  try {
    const plan = isOlder ? undefined : planBatch(batchContents(sheet), standing(sheet));
    const said = saidOf(sheet);
    const detailed = [
      ...changedUnits(sheet, units),
      ...(plan ? [...overwrittenFormulas(sheet, plan), ...textNumbers(sheet, plan)] : []),
      ...typedFigures(sheet, units),
      ...courseOfReadings(sheet, said),
      ...dates(sheet, today),
      ...stillToFill(sheet),
    ];
    return [...older, ...gone, ...detailed, ...ownLines(sheet, said, detailed)];
  } catch (problem) {
    // Without its named cells a sheet cannot be judged further; which ones are gone has been said.
    if (!(problem instanceof MissingName)) throw problem;
    return [...older, ...(gone.length > 0 ? gone : [{ sheet: sheet.sheetName, weight: "look" as const, words: `${problem.message}.` }])];
  }
}
