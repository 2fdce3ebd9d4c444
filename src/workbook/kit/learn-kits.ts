import { learned, type Learned } from "../../core/kit/shrink";
import { quantity, type UnitSystem } from "../../functions/quantities";
import { isBatchSheet } from "../read/batch-sheets";
import type { NamedCells } from "../read/named-cells";
import { readAllSheets } from "../read/read-sheets";
import { batchFigures } from "./batch-figures";
import { learnedRows, quantityOf, type LearnedKey, type LearnedRow } from "./kit-rows";
import { handFigures, isKitSheet, kitsOnSheet, unitsOfKits } from "./kits-on-sheet";
import { typicalValue } from "./kit-plan";

export interface LearnedFigure {
  readonly key: LearnedKey;
  readonly label: string;
  readonly unit: string;
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
}

/**
 * Reads every batch sheet, works out what each kit's batches tell, and writes it beside the typical values: two
 * `context.sync()` to read, one to write, whatever the number of batches. Undefined where there is no kit sheet. What
 * the brewer typed is not touched.
 */
export async function learnKits(context: Excel.RequestContext): Promise<KitReport | undefined> {
  const sheets = await readAllSheets(context);
  const kitSheet = sheets.find(isKitSheet);
  if (!kitSheet) return undefined;
  const report = kitReport(kitSheet, sheets.filter(isBatchSheet));
  const sheet = context.workbook.worksheets.getItem(kitSheet.sheetName);
  for (const { number, figures } of report.kits) {
    sheet.getRange(kitSheet.range(`kit_${number}_learned`)).values = figures.map(({ learned: { value, plusMinus, batches } }) => (batches === 0 ? ["", "", 0] : [value, plusMinus, batches]));
  }
  await context.sync();
  return report;
}

export function kitReport(kitSheet: NamedCells, batches: readonly NamedCells[]): KitReport {
  const kits = kitsOnSheet(kitSheet);
  const kitOf = (batch: NamedCells) => {
    const name = batch.has("kit_name") ? batch.text("kit_name").toLowerCase() : "";
    return kits.find((kit) => (name === "" ? kit.number === 1 : kit.name.toLowerCase() === name));
  };
  return {
    sheetName: kitSheet.sheetName,
    kits: kits.map(({ number, name }) => {
      const own = batches.filter((batch) => kitOf(batch)?.number === number);
      const told = own.map(batchFigures);
      const byHand = handFigures(kitSheet, name);
      const taken = kitSheet.block(`kit_${number}_take`).map(([word]) => word === "yes");
      return {
        number,
        name,
        batches: own.length,
        figures: learnedRows.map((row, index) => figure(row, [...told.flatMap((figures) => figures[row.key] ?? []), ...(byHand[row.key] ?? [])], unitsOfKits(kitSheet), taken[index] ?? false)),
      };
    }),
    unknown: batches.filter((batch) => !kitOf(batch)).map(({ sheetName }) => sheetName),
  };
}

function figure({ key, label, spread }: LearnedRow, values: readonly number[], units: UnitSystem, taken: boolean): LearnedFigure {
  const measure = quantityOf(key);
  const [toCore, fromCore] = measure ? [quantity(measure).toCore, quantity(measure).fromCore] : [(value: number) => value, (value: number) => value];
  const typical = typicalValue(key, units);
  const { value, plusMinus, batches } = learned(values, { value: toCore(typical, units), ...spread });
  return { key, label, unit: measure ? quantity(measure).unit[units] : "", typical, taken, learned: { value: fromCore(value, units), plusMinus: fromCore(plusMinus, units), batches } };
}
