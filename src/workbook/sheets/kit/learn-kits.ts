import { learned, type Learned } from "../../../core/kit/shrink";
import { quantity, type UnitSystem } from "../../../functions/quantities";
import { batchIdOf, isBatchSheet, isUnplugged } from "../../batch/read/batch-sheets";
import { markOf } from "../../batch/read/copied-sheets";
import type { NumberFormat } from "../../grid/plan/sheet-plan";
import type { NamedCells } from "../../grid/read/named-cells";
import { readAllSheets } from "../../grid/read/read-sheets";
import { withSecondLook } from "../../grid/read/second-look";
import { changeRanges, rangeChange } from "../../grid/write/change-ranges";
import { unpluggedBatches, type UnpluggedBatch } from "../../batch/read/unplugged-batches";
import { batchFigures } from "./batch-figures";
import { learnedRows, quantityOf, type LearnedKey, type LearnedRow } from "./kit-rows";
import { handFigures, isKitSheet, kitsOnSheet, unitsOfKits } from "./kits-on-sheet";
import { typicalValue } from "./kit-plan";

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
  const changes = report.kits.map(({ number, figures }) =>
    rangeChange(
      kitSheet,
      kitSheet.range(`kit_${number}_learned`),
      figures.map(({ learned: { value, plusMinus, batches } }) => (batches === 0 ? ["", "", 0] : [value, plusMinus, batches])),
    ),
  );
  await changeRanges(context, changes, { place: `“${kitSheet.sheetName}”` });
  return report;
}

export function kitReport(kitSheet: NamedCells, batches: readonly NamedCells[], unplugged: readonly NamedCells[] = []): KitReport {
  const kits = kitsOnSheet(kitSheet);
  const brewings = sameBrewings(batches);
  const kitOf = (batch: NamedCells) => {
    const name = batch.has("kit_name") ? batch.text("kit_name").toLowerCase() : "";
    return kits.find((kit) => (name === "" ? kit.number === 1 : kit.name.toLowerCase() === name));
  };
  return {
    sheetName: kitSheet.sheetName,
    kits: kits.map(({ number, name }) => {
      const own = brewings.map((sheets) => sheets.filter((batch) => kitOf(batch)?.number === number)).filter(({ length }) => length > 0);
      const told = own.map((sheets) => sheets.map(batchFigures));
      const byHand = handFigures(kitSheet, name);
      const taken = kitSheet.block(`kit_${number}_take`).map(([word]) => word === "yes");
      return {
        number,
        name,
        batches: own.length,
        figures: learnedRows.map((row, index) =>
          figure(
            row,
            [...told.flatMap((sheets) => apart(sheets.flatMap((figures) => figures[row.key] ?? []))), ...(byHand[row.key] ?? [])],
            unitsOfKits(kitSheet),
            taken[index] ?? false,
          ),
        ),
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
