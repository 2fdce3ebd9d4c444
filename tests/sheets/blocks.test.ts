import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { blockFields, blockKeys, blockResults, blocksFor } from "../../src/workbook/batch/fields/blocks";
import { withBlocks } from "../../src/workbook/batch/new-batch";
import { batchContents } from "../../src/workbook/batch/read/batch-contents";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import { addBlocks } from "../../src/workbook/care/grow/add-blocks";
import { unpluggedCopies } from "../../src/workbook/exchange/unplug";
import { cellsOn, differentValues } from "../support/unplug-bench";
import { filledBlocks } from "../support/filled-blocks";
import type { NamedCells } from "../../src/workbook/grid/read/named-cells";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";

const usual = (units: BatchContents["units"], method: BatchContents["method"], sheetName: string): BatchContents =>
  exampleBatch({ id: "a", sheetName, batchName: "Grown", brewedOn: 46270, volume: units === "us" ? 5 : 20, units, topUp: 0, method });

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

const nameless = (text: string, sheetName: string): string => text.replaceAll(sheetName, "Sheet");

/** Everything of a sheet that a brewer sees or prints. */
function wholeOf(sheetName: string) {
  const sheet = Object.values(bench.snapshot().sheets).find(({ name }) => name === sheetName)!;
  const styles = bench.snapshot().styles as Record<string, unknown>;
  const cells: Record<string, unknown> = {};
  for (const [row, columns] of Object.entries(sheet.cellData ?? {})) {
    for (const [column, cell] of Object.entries(columns as Record<string, { f?: string; v?: unknown; s?: unknown } | null>)) {
      const style = typeof cell?.s === "string" ? styles[cell.s] : cell?.s;
      if (cell && (cell.f ?? cell.v ?? style))
        cells[`${row},${column}`] = [cell.f && nameless(cell.f, sheetName), cell.v ?? "", style ?? {}];
    }
  }
  const extras = bench.host.extras.ofSheet(bench.host.unitId, sheet.id ?? "");
  const heights = Object.fromEntries(
    Object.entries(sheet.rowData ?? {}).map(([row, data]) => [row, (data as { h?: number } | undefined)?.h]),
  );
  const { printArea, horizontalPageBreaks } = extras;
  return {
    cells,
    heights,
    merges: [...(sheet.mergeData ?? [])]
      .map(({ startRow, endRow, startColumn, endColumn }) => [startRow, endRow, startColumn, endColumn].join())
      .sort(),
    printArea,
    horizontalPageBreaks,
  };
}

const look = (sheetName: string) => Excel.run((context) => readBatchSheet(context, sheetName));

describe("a sheet with every block", () => {
  it.each(["metric", "us"] as const)("calculates in the grid, plugged in or not (%s)", async (units) => {
    const sheetName = `Filled ${units}`;
    const sheet = await insertOn(bench, filledBlocks(units, sheetName));
    for (const name of blockResults) {
      if (sheet.rangeOf(name).includes(":") || name === "report_verdict" || name === "third_adds" || name.startsWith("part_")) continue;
      expect(sheet.number(name), name).toBeGreaterThan(0);
    }
    await Excel.run((context) => unpluggedCopies(context, [sheetName], { prices: true, standalone: false }));
    await bench.calculate();
    const [plugged, unplugged] = [await cellsOn(sheetName), await cellsOn(`${sheetName} unplugged`)];
    // Below it stand the workings of the copy.
    const there = new Map([...unplugged.values].filter(([cell]) => plugged.values.has(cell)));
    expect(differentValues(plugged.values, there).filter((text) => !/Gylebook/.test(text))).toEqual([]);
    // A verdict that could harm somebody stands still on purpose. What has a plain form goes on calculating: nothing else of the blocks became a mere value.
    const first = sheet.cellOf(blockFields[blockKeys[0]!].area).replace(/\D/g, "");
    const frozen = [...plugged.formulas].filter(
      ([cell, formula]) =>
        Number(cell.split(",")[0]) >= Number(first) - 1 &&
        String(formula).startsWith("=") &&
        !/GYLE\.(MASH\.ACIDITY|MASH\.CORRECT|WATER\.TARGET|PACK\.LINE|PACK\.CHECK)\(/.test(String(formula)) &&
        !String(unplugged.formulas.get(cell) ?? "").startsWith("="),
    );
    expect(frozen).toEqual([]);
  });
});

describe("a block that comes later", () => {
  const kinds = (["metric", "us"] as const).flatMap((units) =>
    (["extract", "all-grain"] as const).map((method) => [units, method] as const),
  );
  it.each(kinds)("makes the sheet that was made with it from the first: %s, %s", async (units, method) => {
    const [chosen, later] = [`Chosen ${units} ${method}`, `Later ${units} ${method}`];
    await insertOn(bench, withBlocks(usual(units, method, chosen), blocksFor(method)));
    await insertOn(bench, usual(units, method, later));
    for (const key of blocksFor(method)) {
      const { added, kept } = await Excel.run((context) => addBlocks(context, later, [key]));
      expect(added).toEqual([expect.stringContaining(blockFields[key].label)]);
      expect(kept).toEqual([]);
    }
    await bench.calculate();
    expect(wholeOf(later)).toEqual(wholeOf(chosen));
    const [one, other] = [await look(chosen), await look(later)];
    expect(batchContents(other!)).toEqual({ ...batchContents(one!), sheetName: later });
    expect([...other!.names()].sort()).toEqual([...one!.names()].sort());
  });

  it("stands below what the brewer has written under the sheet, moves nothing, and is not given twice", async () => {
    await insertOn(bench, usual("metric", "all-grain", "Mine"));
    await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Mine");
      sheet.getRange("8:9").insert("Down");
      sheet.getRange("A8").values = [["A line of my own"]];
      sheet.getRange("B160").values = [["Far below"]];
      await context.sync();
    });
    const before: NamedCells | undefined = await look("Mine");
    await Excel.run((context) => addBlocks(context, "Mine", blockKeys));
    const after: NamedCells | undefined = await look("Mine");
    for (const name of before!.names()) expect(after!.range(name)).toBe(before!.range(name));
    for (const { address, value } of before!.filled()) {
      if (typeof value !== "string" || !/^[A-Z]+(8|160)$/.test(address)) continue;
      expect(value).toMatch(/A line of my own|Far below/);
    }
    expect(after!.area(blockFields[blockKeys[0]!].area).from.row).toBe(161);
    const again = Excel.run((context) => addBlocks(context, "Mine", [blockKeys[0]!]));
    await expect(again).rejects.toThrow(/has “.*” already/);
  });
});
