import type { UnitSystem } from "../../../functions/quantities";
import { called, forSheet, type Fields, type NumberField, type On } from "../../batch/describe/field";
import { inCore, unitOf } from "../../batch/describe/measures";
import { numberCells, type NumberCell } from "../../batch/derived/number-cells";
import { batchFields } from "../../batch/fields";
import { methodOf } from "../../batch/read/batch-contents";
import { unitsBeside } from "../../batch/read/batch-sheets";
import { unitWords } from "../../batch/unit-words";
import type { NamedCells } from "../../grid/read/named-cells";
import type { Finding } from "./finding";

/** Figures in the wrong unit, outside their limits, or that no beer can have: every number of the sheet is held against its description. */
export function typedFigures(sheet: NamedCells, units: UnitSystem, fields: Fields = batchFields): Finding[] {
  const on: On = { units, method: methodOf(sheet) };
  return numberCells(fields, sheet).flatMap((cell): Finding[] => {
    const words = wrongUnit(cell, units) ?? wrongShare(cell) ?? alphaWords(cell) ?? outside(cell, on);
    if (words === undefined) return [];
    // What the sheet's own line tells of as well.
    const rule = cell.field.cell === "hop_alpha" && cell.value > mostAlpha ? "hops.alpha-too-high" : undefined;
    return [{ sheet: sheet.sheetName, address: cell.address, weight: "look", words, ...(rule !== undefined && { rule }) }];
  });
}

/** Beyond what its place may have: the other system's unit, or a slip. */
function wrongUnit({ field: { measure, plausible }, value }: NumberCell, units: UnitSystem): string | undefined {
  if (!plausible || measure === undefined) return undefined;
  const fits = (system: UnitSystem): boolean => {
    const core = inCore(measure, value, system);
    return core >= plausible.from && core <= plausible.to;
  };
  if (fits(units)) return undefined;
  const other = units === "us" ? "metric" : "us";
  const shown = (system: UnitSystem): string => unitOf(measure, system).replace("US ", "");
  return `${plausible.words} ${value} ${shown(units)}?${fits(other) ? ` That looks like ${shown(other)}; this sheet is in ${shown(units)}.` : " Check the figure and its unit."}`;
}

/** A percentage of more than all, or typed as a share of one. */
function wrongShare({ field: { percentOf }, value }: NumberCell): string | undefined {
  if (percentOf === undefined) return undefined;
  if (value > 100) return `${percentOf} of ${value} %? More than all of it cannot be.`;
  const percent = Number((value * 100).toPrecision(4));
  return value > 0 && value <= 1 ? `${percentOf} of ${value} %? Type ${percent} for ${percent} %.` : undefined;
}

/** No hop has more alpha acid, %, and none that is sold for it less than this (our judgement). */
const [leastAlpha, mostAlpha] = [0.3, 25];

function alphaWords({ field: { cell }, value }: NumberCell): string | undefined {
  if (cell !== "hop_alpha") return undefined;
  if (value > mostAlpha) return `An alpha acid of ${value} %? No hop has so much: is a decimal point missing?`;
  return value > 0 && value < leastAlpha
    ? `An alpha acid of ${value} %? Type it as on the packet: ${Number((value * 100).toPrecision(3))}, not a share of one.`
    : undefined;
}

/** What a file would refuse, too: 0 is what a cell says that must not be empty. */
function outside({ field, value, address }: NumberCell, on: On): string | undefined {
  const [from, to] = forSheet(field.limits, on);
  if ((value === 0 && !field.blank) || (value >= from && value <= to)) return undefined;
  if (value < 0 && from >= 0) return `${value} in ${address}: less than nothing cannot be.`;
  const name = called(field);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} ${value}${unitWord(field, on)}? It may be from ${from} to ${to}.`;
}

const unitWord = ({ measure }: NumberField, { units }: On): string => {
  const unit = unitOf(measure, units);
  return unit === "" ? "" : ` ${unit}`;
};

/** Units that were typed over, so that every figure is read for what it is not. */
export function changedUnits(sheet: NamedCells, units: UnitSystem): Finding[] {
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
