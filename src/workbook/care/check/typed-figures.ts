import { packetAlphaPercent } from "../../../core/hops/alpha";
import type { UnitSystem } from "../../../functions/quantities";
import { figureDoubt, outsideLimits } from "../../batch/derived/figure-doubts";
import type { Fields, On } from "../../batch/describe/field";
import { numberCells, type NumberCell } from "../../batch/derived/number-cells";
import { batchFields } from "../../batch/fields";
import { methodOf } from "../../batch/read/batch-contents";
import { unitsBeside, type BatchSheet } from "../../batch/read/batch-sheets";
import { unitWords } from "../../batch/unit-words";
import type { Finding } from "./finding";

/** Figures in the wrong unit, outside their limits, or that no beer can have: every number of the sheet is held against its description. */
export function typedFigures(sheet: BatchSheet, units: UnitSystem, fields: Fields = batchFields): Finding[] {
  const on: On = { units, method: methodOf(sheet) };
  return numberCells(fields, sheet).flatMap((cell): Finding[] => {
    const { field, value, address } = cell;
    const words = figureDoubt(field, value, on) ?? alphaWords(cell) ?? outsideLimits(field, value, on, address);
    if (words === undefined) return [];
    // What the sheet's own line tells of as well.
    const rule = field.cell === "hop_alpha" && value > mostAlpha ? "hops.alpha-too-high" : undefined;
    return [{ sheet: sheet.sheetName, address, weight: "look", words, ...(rule !== undefined && { rule }) }];
  });
}

const { least: leastAlpha, most: mostAlpha } = packetAlphaPercent;

function alphaWords({ field: { cell }, value }: NumberCell): string | undefined {
  if (cell !== "hop_alpha") return undefined;
  if (value > mostAlpha) return `An alpha acid of ${value} %? No hop has so much: is a decimal point missing?`;
  return value > 0 && value < leastAlpha
    ? `An alpha acid of ${value} %? Type it as on the packet: ${Number((value * 100).toPrecision(3))}, not a share of one.`
    : undefined;
}

/** Units that were typed over, so that every figure is read for what it is not. */
export function changedUnits(sheet: BatchSheet, units: UnitSystem): Finding[] {
  const made = unitsBeside(sheet);
  if (made === undefined || !sheet.has("units")) return [];
  const typedUnits = sheet.text("units");
  if (made === units && typedUnits.toLowerCase() === made) return [];
  return [
    {
      sheet: sheet.sheetName,
      address: sheet.range("units").split(":")[0] ?? "",
      weight: "stop",
      words: `This sheet was made in ${unitWords(made).volume}, but its units cell says “${typedUnits}”: every figure on it is misread, the bottle pressure too. Type “${made}” again; for other units use Scale and copy.`,
    },
  ];
}
