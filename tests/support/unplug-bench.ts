import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { UnitSystem } from "../../src/functions/quantities";
import type { BatchContents, Method } from "../../src/workbook/batch/contents";
import { exampleBatch } from "../../src/workbook/batch/example-batch";

/** An invented batch under way: brewed, with readings, not yet packaged. */
export function batchUnderWay(units: UnitSystem, method: Method, into: "bottles" | "keg"): BatchContents {
  const batch = exampleBatch({
    id: "underway",
    sheetName: "Batch 1",
    batchName: "Under way",
    brewedOn: 46270,
    volume: units === "us" ? 5 : 19,
    units,
    topUp: 0,
    method,
  });
  const sample = units === "us" ? 68 : 20;
  return {
    ...batch,
    wort: { collected: "", reading: 1.052, scale: "SG", sampleTemperature: sample, volume: units === "us" ? 5.1 : 19.2 },
    readings: [1.03, 1.017, 1.0125, 1.012].map((reading, index) => ({
      when: 46273.5 + 2 * index,
      reading,
      scale: "SG",
      sampleTemperature: sample + index,
      beerTemperature: sample,
    })),
    packaging: { ...batch.packaging, into, packagedOn: into === "bottles" ? 46285 : "" },
    tasting: { ...batch.tasting, notes: "Private: too sweet for Aunt Hilda." },
  };
}

/** Every cell in use on a sheet: formula or constant, and what it shows. */
export async function cellsOn(sheetName: string): Promise<{ formulas: Map<string, unknown>; values: Map<string, unknown> }> {
  return Excel.run(async (context) => {
    const used = context.workbook.worksheets.getItem(sheetName).getUsedRange();
    used.load("rowIndex,columnIndex,formulas,values");
    await context.sync();
    const cells = (matrix: unknown[][]) =>
      new Map(
        matrix.flatMap((row, r) =>
          row.flatMap((content, c): [string, unknown][] =>
            content === "" ? [] : [[`${used.rowIndex + r},${used.columnIndex + c}`, content]],
          ),
        ),
      );
    return { formulas: cells(used.formulas), values: cells(used.values) };
  });
}

export async function notesOn(sheetName: string): Promise<string[]> {
  return Excel.run(async (context) => {
    const { notes } = context.workbook.worksheets.getItem(sheetName);
    notes.load("items/content");
    await context.sync();
    return notes.items.map(({ content }) => content);
  });
}

/** Where two sheets show different things, numbers to 1e-6 of their size. */
export function differentValues(one: ReadonlyMap<string, unknown>, other: ReadonlyMap<string, unknown>): string[] {
  return [...new Set([...one.keys(), ...other.keys()])].flatMap((cell) => {
    const [a, b] = [one.get(cell) ?? "", other.get(cell) ?? ""];
    if (typeof a === "number" && typeof b === "number" ? Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(a)) : a === b) return [];
    return typeof a === "string" && a.startsWith("#") && typeof b === "string" && b.startsWith("#")
      ? []
      : [`${cell}: ${String(a)} | ${String(b)}`];
  });
}

export const sheetNames = ({ snapshot }: HeadlessBench): string[] => {
  const { sheetOrder, sheets } = snapshot();
  return sheetOrder.map((id) => sheets[id]?.name ?? "");
};

/** Differences but for what a copy has more: workings below its last row, and what stands still in place of what kind of sheet it is. */
export function withoutAdded(before: ReadonlyMap<string, unknown>, differences: readonly string[]): string[] {
  const lastRow = Math.max(...[...before.keys()].map((cell) => Number(cell.split(",")[0])));
  return differences.filter((text) => Number(text.split(",")[0]) <= lastRow && !text.startsWith("0,6: Gylebook batch sheet | "));
}
