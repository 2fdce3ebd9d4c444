import { expect } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { carryOut } from "../../src/workbook/brewing/companion/outcome";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import type { NamedCells } from "../../src/workbook/grid/read/named-cells";
import { insertOn, openBatchBench, type BatchSheet } from "./batch-bench";

export interface CompanionBench {
  readonly bench: HeadlessBench;
  readonly batch: BatchSheet;
  /** The sheet as the pane reads it now. */
  read(): Promise<NamedCells>;
  /** The workbook as it was at first. */
  reset(): Promise<void>;
}

export async function openCompanion(contents: BatchContents): Promise<CompanionBench> {
  const bench = await openBatchBench();
  const batch = await insertOn(bench, contents);
  const read = async () => {
    await bench.calculate();
    const sheet = await Excel.run((context) => readBatchSheet(context, contents.sheetName));
    if (!sheet) throw new Error("no batch sheet");
    return sheet;
  };
  const first = JSON.stringify(bench.snapshot());
  const reset = () => bench.load(JSON.parse(first) as ReturnType<HeadlessBench["snapshot"]>);
  return { bench, batch, read, reset };
}

/** All that stands in the workbook's cells, names, tables and notes. */
export function contentOf({ snapshot }: HeadlessBench): string {
  const { sheetOrder, sheets, resources } = snapshot();
  const resource = (name: string): unknown => resources?.find((one) => one.name === name)?.data ?? "";
  const cells = sheetOrder.map((id) => {
    const filled: [string, unknown, unknown][] = [];
    for (const [row, columns] of Object.entries(sheets[id]?.cellData ?? {})) {
      for (const [column, cell] of Object.entries(columns as Record<string, { f?: unknown; v?: unknown } | null>)) {
        if ((cell?.f ?? "") !== "" || (cell?.v ?? "") !== "") filled.push([`${row},${column}`, cell?.f ?? "", cell?.v ?? ""]);
      }
    }
    return { name: sheets[id]?.name, filled };
  });
  return JSON.stringify({
    cells,
    names: resource("SHEET_DEFINED_NAME_PLUGIN"),
    tables: resource("SHEET_TABLE_PLUGIN"),
    notes: resource("SHEET_NOTE_PLUGIN"),
  });
}

/** Compared without showing the whole workbook when it differs. */
export function expectSame(bench: HeadlessBench, before: string): void {
  const now = contentOf(bench);
  const from = [...now].findIndex((letter, index) => letter !== before[index]);
  expect(
    now === before
      ? ""
      : `before …${before.slice(Math.max(0, from - 60), from + 100)}… now …${now.slice(Math.max(0, from - 60), from + 100)}…`,
  ).toBe("");
}

type Change = (context: Excel.RequestContext) => Promise<void>;

/** A protected sheet, a cell being edited and a sheet that was deleted meanwhile: nothing happens, and the words say why. */
export async function expectRefusals({ bench, batch }: CompanionBench, change: Change): Promise<void> {
  await bench.calculate();
  const sheet = (context: Excel.RequestContext) => context.workbook.worksheets.getItem(batch.sheetName);
  await Excel.run(async (context) => {
    sheet(context).protection.protect();
    await context.sync();
  });
  const before = contentOf(bench);
  expect(await carryOut(change)).toEqual({
    kind: "unchanged",
    message: expect.stringContaining("If the sheet is protected, take the protection off"),
  });
  expectSame(bench, before);
  await Excel.run(async (context) => {
    sheet(context).protection.unprotect();
    await context.sync();
  });

  const { host } = bench;
  const notEditing = host.cellEditing;
  host.cellEditing = { active: () => true, ended: () => Promise.resolve() };
  expect(await carryOut(change)).toEqual({ kind: "unchanged", message: expect.stringContaining("A cell is being edited") });
  host.cellEditing = notEditing;
  expectSame(bench, before);

  await Excel.run(async (context) => {
    context.workbook.worksheets.add("Other");
    sheet(context).delete();
    await context.sync();
  });
  expect(await carryOut(change)).toEqual({ kind: "unchanged", message: expect.stringContaining("The sheet is gone") });
}

/** Between the look at the sheet and the write somebody protects it, or deletes it: nothing is written, and the words say why. */
export async function expectNothingMeanwhile({ bench, batch, reset }: CompanionBench, change: Change): Promise<void> {
  const sheet = (context: Excel.RequestContext) => context.workbook.worksheets.getItem(batch.sheetName);
  const hands = [
    [(context: Excel.RequestContext) => sheet(context).protection.protect(), "If the sheet is protected, take the protection off"],
    [
      (context: Excel.RequestContext) => {
        context.workbook.worksheets.add("Other");
        sheet(context).delete();
      },
      "The sheet is gone",
    ],
  ] as const;
  for (const [hand, words] of hands) {
    await reset();
    await bench.calculate();
    let before = "";
    const outcome = await carryOut(async (context) => {
      const sync = context.sync.bind(context);
      let trips = 0;
      context.sync = (async () => {
        trips += 1;
        if (trips === 2) {
          await Excel.run(async (other) => {
            hand(other);
            await other.sync();
          });
          await bench.calculate();
          before = contentOf(bench);
        }
        return sync();
      }) as typeof context.sync;
      await change(context);
    });
    await bench.calculate();
    expect(before).not.toBe("");
    expect(outcome).toEqual({ kind: "unchanged", message: expect.stringContaining(words) });
    expectSame(bench, before);
  }
}
