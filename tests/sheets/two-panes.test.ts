import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/bench/headless";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { insertBatch } from "../../src/workbook/insert-batch";
import { migrateSheets } from "../../src/workbook/migrate";
import { insertSeason } from "../../src/workbook/season/insert-season";
import { refreshSeason } from "../../src/workbook/season/refresh-season";
import { benchTimeout, openBatchBench } from "../support/batch-bench";
import { crossingOrders, interleaved, type Ending, type Writer } from "../support/interleaving";
import { openFile } from "../support/open-file";

/**
 * Two members, two panes, one workbook: their round trips to Excel cross each other. Whatever the order, the workbook
 * must end as if one of them had come after the other, so nothing is lost and nothing is there twice. A writer joins
 * with one line in `cases`.
 */
let bench: HeadlessBench;
beforeAll(async () => { bench = await openBatchBench(); }, benchTimeout);
afterAll(() => bench.dispose());

const empty = async () => bench.load({ id: `book-${crypto.randomUUID()}`, sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } });
const old = async () => { await openFile(bench, new URL("../samples/old/first-extract-batch-plan-1.xlsx", import.meta.url)); };
const withSeason = async () => {
  await empty();
  await Excel.run((context) => insertBatch(context, { ...firstExtractBatch(), sheetName: "First", id: "first" }));
  await Excel.run((context) => insertSeason(context, { sheetName: "Season", units: "us", today: 46300 }));
};

const inserts = (sheetName: string): Writer => (context) => insertBatch(context, { ...firstExtractBatch(), sheetName, id: sheetName.toLowerCase() });
const migrates: Writer = (context) => migrateSheets(context);
const refreshes: Writer = refreshSeason;
const types = (sheetName: string, cell: string, value: string): Writer => async (context) => {
  context.workbook.worksheets.getItem(sheetName).getRange(cell).values = [[value]];
  await context.sync();
};

interface Case {
  readonly what: string;
  readonly open: () => Promise<void>;
  readonly writers: readonly [Writer, Writer];
  /** Round trips that each makes at most when nobody is in its way. */
  readonly trips: readonly [number, number];
  /** Both do the same: an order and its mirror image tell the same. */
  readonly alike?: true;
}

const cases: readonly Case[] = [
  { what: "two batches are inserted", open: empty, writers: [inserts("One"), inserts("Two")], trips: [2, 2], alike: true },
  { what: "two batches of one name are inserted", open: empty, writers: [inserts("One"), inserts("ONE")], trips: [2, 2], alike: true },
  { what: "both bring the old sheets along", open: old, writers: [migrates, migrates], trips: [3, 3], alike: true },
  { what: "old sheets are brought along while a batch is inserted", open: old, writers: [migrates, inserts("Two")], trips: [3, 2] },
  { what: "old sheets are brought along while somebody types", open: old, writers: [migrates, types("Batch 1", "B5", "Another name")], trips: [3, 1] },
  { what: "both refresh the season sheet", open: withSeason, writers: [refreshes, refreshes], trips: [4, 4], alike: true },
];

/** Sheets, cells, names and tables, without what chance or order of arrival decides: ids, positions, numbers of tables. */
function state(): string {
  const { sheets, resources } = bench.snapshot();
  const tables = JSON.parse(resources?.find(({ name }) => name === "SHEET_TABLE_PLUGIN")?.data ?? "{}") as Record<string, { tables: { name: string }[] }>;
  const names = Object.values(JSON.parse(resources?.find(({ name }) => name === "SHEET_DEFINED_NAME_PLUGIN")?.data ?? "{}") as Record<string, { name: string; formulaOrRefString: string }>);
  const text = JSON.stringify(Object.values(sheets).map(({ id, name, cellData }) => ({
    name, tables: (tables[id ?? ""]?.tables ?? []).map((table) => table.name).sort(), cells: contents(cellData as Cells),
  })).sort((a, b) => (a.name! < b.name! ? -1 : 1))) + JSON.stringify(names.map(({ name, formulaOrRefString }) => `${name} ${formulaOrRefString}`).sort());
  return text.replaceAll(/((?:Malt|Hops|Readings|[A-Z][A-Za-z]+)_)\d+\b/gu, "$1n").replaceAll(/: [a-z0-9]{12}"/gu, ': mark"');
}

type Cells = Record<string, Record<string, { f?: string | null; v?: unknown; s?: unknown } | null>> | undefined;
const contents = (cells: Cells) => Object.entries(cells ?? {}).flatMap(([row, columns]) =>
  Object.entries(columns).flatMap(([column, cell]) => (cell?.f || (cell?.v ?? "") !== "" ? [`${row},${column}: ${String(cell?.f ?? cell?.v)}`] : [])));

const words = (endings: readonly Ending[]) => endings.map((ending) => (ending.ended === "done" ? "done" : ending.problem.message));

describe.each(cases)("$what", ({ open, writers, trips, alike }) => {
  it("ends as one after the other, whatever comes between", async () => {
    const allOf = (who: 0 | 1) => Array.from({ length: 20 }, () => who);
    const results = new Map<string, string[]>();
    for (const first of [0, 1] as const) {
      await open();
      const endings = await interleaved(writers, [...allOf(first), ...allOf(first === 0 ? 1 : 0)]);
      results.set(`${JSON.stringify(words(endings))}${state()}`, words(endings));
    }
    for (const order of crossingOrders(...trips).filter(([first]) => !alike || first === 0)) {
      await open();
      const endings = await interleaved(writers, order);
      const found = `${JSON.stringify(words(endings))}${state()}`;
      if (!results.has(found)) expect(found, `order ${order.join("")}`).toEqual([...results.keys()][0]);
    }
    expect([...results.values()].some((endings) => endings.includes("done"))).toBe(true);
  }, benchTimeout * 4);
});
