import { learned, type Learned } from "../../../core/kit/shrink";
import { quantity, type UnitSystem } from "../../../functions/quantities";
import { batchIdOf, isBatchSheet, isUnplugged } from "../../batch/read/batch-sheets";
import { markOf } from "../../batch/read/copied-sheets";
import type { NumberFormat } from "../../grid/plan/sheet-plan";
import { address } from "../../grid/plan/addresses";
import type { CellValue, NamedCells } from "../../grid/read/named-cells";
import { readAllSheets } from "../../grid/read/read-sheets";
import { withSecondLook } from "../../grid/read/second-look";
import { changeRanges, rangeChange, type RangeChange } from "../../grid/write/change-ranges";
import { unpluggedBatches, type UnpluggedBatch } from "../../batch/read/unplugged-batches";
import { batchFigures } from "./batch-figures";
import { everyLearnedRow, learnedAmongFixed, learnedRows, quantityOf, type LearnedKey, type LearnedRow } from "./kit-rows";
import { handFigures, isKitSheet, kitsOnSheet, takePlace, unitsOfKits } from "./kits-on-sheet";
import { goesByLearned, goesByOwn, typicalValue } from "./kit-plan";

export interface LearnedFigure {
  readonly key: LearnedKey;
  readonly label: string;
  readonly unit: string;
  readonly format: NumberFormat;
  readonly typical: number;
  /** In the units of the kit sheet. */
  readonly learned: Learned;
  /** Whether new batches go by it. */
  readonly taken: boolean;
}

export interface LearnedKit {
  readonly number: number;
  readonly name: string;
  readonly batches: number;
  readonly figures: readonly LearnedFigure[];
}

export interface KitReport {
  readonly sheetName: string;
  readonly kits: readonly LearnedKit[];
  /** Batch sheets that name a kit which is not on the kit sheet. */
  readonly unknown: readonly string[];
  /** Groups of sheets that carry one mark, or one log to the letter; what their sheets tell alike was counted once. */
  readonly copies: readonly (readonly string[])[];
  /** Sheets that nothing was learned from. */
  readonly unplugged: readonly UnpluggedBatch[];
}

/**
 * Reads every batch sheet, works out what each kit's batches tell, and writes it beside the typical values: two
 * `context.sync()` to read, one to write, whatever the number of batches. Undefined where there is no kit sheet. What
 * the brewer typed is not touched.
 */
export function learnKits(context: Excel.RequestContext): Promise<KitReport | undefined> {
  return withSecondLook(() => lookAndLearn(context));
}

async function lookAndLearn(context: Excel.RequestContext): Promise<KitReport | undefined> {
  const sheets = await readAllSheets(context);
  const kitSheet = sheets.find(isKitSheet);
  if (!kitSheet) return undefined;
  const report = kitReport(kitSheet, sheets.filter(isBatchSheet), sheets.filter(isUnplugged));
  const changes = report.kits.flatMap(({ number, figures }) => {
    const told = figures.map(({ learned: { value, plusMinus, batches } }) => (batches === 0 ? ["", "", 0] : [value, plusMinus, batches]));
    return [
      rangeChange(kitSheet, kitSheet.range(`kit_${number}_learned`), told.slice(0, learnedRows.length)),
      ...learnedAmongFixed.flatMap((row, index) => amongFixed(kitSheet, number, row, told[learnedRows.length + index] ?? [])),
    ];
  });
  await changeRanges(context, changes, { place: `“${kitSheet.sheetName}”` });
  return report;
}

/** The line of a figure that older kit sheets had only to write into: it is made one that learns, unless somebody has used its cells. */
function amongFixed(kitSheet: NamedCells, number: number, { key }: LearnedRow, told: readonly CellValue[]): RangeChange[] {
  const place = takePlace(kitSheet, number, key);
  if (place === undefined) return [];
  const { row, column } = place;
  const [take, goesBy] = [kitSheet.at(row, column), kitSheet.formulaAt(row, column + 2)];
  const cells = `${address(row, column - 3)}:${address(row, column - 1)}`;
  if (take === "yes" || take === "no") return [rangeChange(kitSheet, cells, [told])];
  const isFree = [-3, -2, -1, 0].every((step) => kitSheet.formulaAt(row, column + step) === "");
  if (!isFree || goesBy !== goesByOwn(row)) return [];
  return [
    rangeChange(kitSheet, `${address(row, column - 3)}:${address(row, column)}`, [[...told, "no"]]),
    rangeChange(kitSheet, address(row, column + 2), [[goesByLearned(row)]]),
  ];
}

export function kitReport(kitSheet: NamedCells, batches: readonly NamedCells[], unplugged: readonly NamedCells[] = []): KitReport {
  const kits = kitsOnSheet(kitSheet);
  const brewings = sameBrewings(batches);
  const kitOf = (batch: NamedCells) => {
    const name = batch.knownText("kit_name").toLowerCase();
    return kits.find((kit) => (name === "" ? kit.number === 1 : kit.name.toLowerCase() === name));
  };
  return {
    sheetName: kitSheet.sheetName,
    kits: kits.map(({ number, name }) => {
      const own = brewings.map((sheets) => sheets.filter((batch) => kitOf(batch)?.number === number)).filter(({ length }) => length > 0);
      const told = own.map((sheets) => sheets.map(batchFigures));
      const byHand = handFigures(kitSheet, name);
      return {
        number,
        name,
        batches: own.length,
        figures: everyLearnedRow.map((row) => {
          const take = takePlace(kitSheet, number, row.key);
          return figure(
            row,
            [...told.flatMap((sheets) => apart(sheets.flatMap((figures) => figures[row.key] ?? []))), ...(byHand[row.key] ?? [])],
            unitsOfKits(kitSheet),
            take !== undefined && kitSheet.at(take.row, take.column) === "yes",
          );
        }),
      };
    }),
    unknown: batches.filter((batch) => !kitOf(batch)).map(({ sheetName }) => sheetName),
    copies: brewings.filter(({ length }) => length > 1).map((sheets) => sheets.map(({ sheetName }) => sheetName)),
    unplugged: unpluggedBatches(unplugged.map(markOf), batches.map(markOf)),
  };
}

/** A figure that a copied sheet brought along from its original is one figure; what was measured anew on the copy is another. */
const apart = (values: readonly number[]): readonly number[] => [...new Set(values)];

/** Batch sheets in groups that tell of one brewing: they carry one mark, or the same log. */
function sameBrewings(batches: readonly NamedCells[]): readonly (readonly NamedCells[])[] {
  const groups: { readonly sheets: NamedCells[]; readonly keys: Set<string> }[] = [];
  for (const sheet of batches) {
    const keys = [batchIdOf(sheet), logOf(sheet)].filter((key) => key !== "");
    const known = groups.find((group) => keys.some((key) => group.keys.has(key)));
    if (!known) groups.push({ sheets: [sheet], keys: new Set(keys) });
    else {
      known.sheets.push(sheet);
      for (const key of keys) known.keys.add(key);
    }
  }
  return groups.map(({ sheets }) => sheets);
}

/** What was noted of a brewing, to the letter; empty where neither a time nor a reading is. */
function logOf(sheet: NamedCells): string {
  const noted = (name: string) => (sheet.has(name) ? sheet.block(name).flat() : []);
  const log = [noted("happened"), noted("readings"), noted("reading_times")];
  if (!log.flat().some((value) => typeof value === "number")) return "";
  return JSON.stringify([...log, sheet.number("og_reading"), sheet.number("volume_reached")]);
}

function figure({ key, label, format, spread }: LearnedRow, values: readonly number[], units: UnitSystem, taken: boolean): LearnedFigure {
  const { toCore, fromCore, unit } = quantity(quantityOf(key));
  const typical = typicalValue(key, units);
  const { value, plusMinus, batches } = learned(values, { value: toCore(typical, units), ...spread });
  return {
    key,
    label,
    unit: unit[units],
    format,
    typical,
    taken,
    learned: { value: fromCore(value, units), plusMinus: fromCore(plusMinus, units), batches },
  };
}
