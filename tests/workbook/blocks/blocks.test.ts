import fc from "fast-check";
import { describe, expect, it } from "vitest";
import "../../support/fixed-seed";
import { sheetFigures } from "../../../src/build/sheet-figures";
import { planVersion } from "../../../src/workbook/batch/describe/plan-version";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { blockFields, blockKeys, blockResults, blocksFor, checkName, type BlockKey } from "../../../src/workbook/batch/fields/blocks";
import { newCells } from "../../../src/workbook/batch/fields/cells";
import type { Fields } from "../../../src/workbook/batch/describe/field";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { newBatch, withBlocks } from "../../../src/workbook/batch/new-batch";
import { batchContents } from "../../../src/workbook/batch/read/batch-contents";
import { blocksOnSheet } from "../../../src/workbook/batch/read/blocks-on-sheet";
import { standing } from "../../../src/workbook/batch/read/standing";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { typedFigures } from "../../../src/workbook/care/check/typed-figures";
import { checkedBatch } from "../../../src/workbook/exchange/batch-file/schema";
import { readBatchFile } from "../../../src/workbook/exchange/batch-file/read-batch-file";
import { writeBatchFile } from "../../../src/workbook/exchange/batch-file/write-batch-file";
import { block } from "../../../src/workbook/grid/plan/addresses";
import { marginsPt } from "../../../src/workbook/grid/plan/print-scale";
import { rowHeightPoints } from "../../../src/workbook/grid/plan/sheet-builder";
import type { SheetPlan } from "../../../src/workbook/grid/plan/sheet-plan";
import { ofFields } from "../../support/arbitrary-blocks";
import { plannedSheet } from "../../support/planned-sheet";

const kinds = (["extract", "all-grain"] as const).flatMap((method) => (["metric", "us"] as const).map((units) => ({ method, units })));
const blank = ({ method, units }: (typeof kinds)[number], blocks: readonly BlockKey[] = []) =>
  newBatch({ id: "a", sheetName: "Blank", batchName: "Blank", brewedOn: 46270, volume: 20, topUp: 0, method, units }, blocks);
const named = kinds.map((kind) => [`${kind.method}, ${kind.units}`, kind] as const);
/** None, each, every two, all but one, and all: what two blocks do to each other, no third one changes. */
function combinationsOf(keys: readonly BlockKey[]): readonly (readonly BlockKey[])[] {
  const pairs = keys.flatMap((one, index) => keys.slice(index + 1).map((other) => [one, other]));
  return [[], ...keys.map((key) => [key]), ...pairs, ...keys.map((key) => keys.filter((one) => one !== key)), keys];
}

const lastUsualRow = (plan: SheetPlan): number =>
  Math.max(...plan.names.filter(({ name }) => name === "check_states").map(({ range }) => block(range).to.row));
const cellsOf = (fields: Fields): string[] =>
  Object.values(fields).flatMap((field) => {
    if (field.kind === "group") return cellsOf(field.fields);
    if (field.kind === "table") return Object.keys(field.areas);
    return field.cell === undefined ? [] : [field.cell];
  });

describe.each(named)("blocks of a sheet (%s)", (_, kind) => {
  const plain = planBatch(blank(kind));
  const blocks = blocksFor(kind.method);
  const combinations = combinationsOf(blocks);

  it("leave a sheet without them as it was, and stand below everything of one that has them", () => {
    const usual = lastUsualRow(plain);
    expect(block(plain.print.area).to.row).toBe(usual);
    for (const keys of combinations) {
      const plan = planBatch(blank(kind, keys));
      const above = ({ address }: { readonly address: string }) => block(address).to.row <= usual;
      const places = (cells: SheetPlan["cells"]) => cells.filter(above).map(({ address, style, mergeTo }) => [address, style, mergeTo]);
      expect(places(plan.cells)).toEqual(places(plain.cells));
      expect(plan.names.filter(({ range }) => block(range).to.row <= usual)).toEqual(plain.names);
      expect(plan.rowHeights.filter(({ row }) => row <= usual)).toEqual(plain.rowHeights);
      expect(plan.print.breaksBeforeRow.slice(0, 2)).toEqual(plain.print.breaksBeforeRow);
      // Nothing of a block is left above it.
      expect(plan.cells.filter((cell) => !above(cell)).length > 0).toBe(keys.length > 0);
    }
  });

  it("bring the names that are described for them, and no other", () => {
    const all = planBatch(blank(kind, blocks)).names.map(({ name }) => name);
    const more = all.filter((name) => !plain.names.some((one) => one.name === name));
    const described = blocks.flatMap((key) => [blockFields[key].area, checkName(key), ...cellsOf(blockFields[key].fields)]);
    for (const name of more) expect([...described, ...blockResults]).toContain(name);
    if (kind.method === "all-grain") expect([...more].sort()).toEqual([...described, ...blockResults].sort());
    // An older sheet does not lack them.
    for (const name of described) expect(newCells(planVersion)).not.toContain(name);
  });

  it("speak only of cells that the sheet has", () => {
    for (const keys of combinations) {
      const plan = planBatch(blank(kind, keys));
      const defined = new Set(plan.names.map(({ name }) => name));
      for (const { content } of plan.cells) {
        if (typeof content !== "string" || !content.startsWith("=")) continue;
        for (const word of content.replace(/"[^"]*"/g, "").match(/(?<![A-Za-z.])[a-z][a-z_]+(?![A-Za-z.(])/g) ?? [])
          expect(defined, `${word} in ${content}`).toContain(word);
      }
      for (const { name } of plan.names) expect(name).toMatch(/^(?![a-z]{1,3}\d+$)(?![rc]\d*$)[a-z][a-z_]*$/);
    }
  });

  it("print on pages of their own, none too full, each beginning with a section", () => {
    for (const keys of combinations.filter(({ length }) => length > 0)) {
      const plan = planBatch(blank(kind, keys));
      const heightOf = (row: number) => plan.rowHeights.find((height) => height.row === row)?.points ?? rowHeightPoints;
      const sections = plan.cells.filter(({ style }) => style === "section").map(({ address }) => block(address).from.row);
      const starts = [1, ...plan.print.breaksBeforeRow, block(plan.print.area).to.row + 1];
      for (const row of plan.print.breaksBeforeRow) expect(sections).toContain(row);
      const wide = plan.columnWidths.slice(0, 9).reduce((sum, characters) => sum + (characters * 7 + 5) * 0.75, 0);
      const scale = Math.min(1, ((plan.print.paper === "a4" ? 595 : 612) - 2 * marginsPt.side) / wide);
      for (let page = 1; page < starts.length; page += 1) {
        let points = 0;
        for (let row = starts[page - 1]!; row < starts[page]!; row += 1) points += heightOf(row);
        expect(points * scale).toBeLessThanOrEqual((plan.print.paper === "a4" ? 842 : 792) - marginsPt.top - marginsPt.bottom);
      }
    }
  });

  it("end below all that belongs to them, so that the next one begins in the same row whenever it comes", () => {
    for (const key of blocks) {
      const plan = planBatch(blank(kind, [key]));
      const end = block(plan.names.find(({ name }) => name === blockFields[key].area)!.range).to.row;
      for (const { range, name } of plan.names) expect(block(range).to.row, name).toBeLessThanOrEqual(end);
      for (const { address } of plan.cells) expect(block(address).to.row, address).toBeLessThanOrEqual(end);
    }
  });

  it("keep the whole sheet within its calls and chains", () => {
    const { calls, deepestChain } = sheetFigures(planBatch(blank(kind, blocks)));
    // Calls side by side cost next to nothing; those that wait for one another do.
    expect(calls).toBeLessThanOrEqual(92);
    expect(deepestChain).toBeLessThanOrEqual(5);
  });

  it("are read back, in whatever order they came", () => {
    const backwards = [...blocks].reverse();
    const batch = blank(kind, blocks);
    const sheet = plannedSheet(planBatch(batch, { blocks: backwards }));
    expect(blocksOnSheet(sheet)).toEqual(backwards);
    expect(batchContents(sheet)).toEqual(batch);
    expect(planBatch(batch, standing(sheet))).toEqual(planBatch(batch, { blocks: backwards }));
  });

  it("travel in a file, which refuses what a sheet would", () => {
    for (const keys of combinations) {
      const batch = blank(kind, keys);
      expect(checkedBatch(batch).success).toBe(true);
      expect(readBatchFile(writeBatchFile(batch, { prices: true }))).toEqual(batch);
    }
    expect(checkedBatch({ ...blank(kind), beforeBoil: { volume: 1 } }).success).toBe(false);
    expect(checkedBatch({ ...blank(kind), behindTheBoil: {} }).success).toBe(false);
  });

  it("ask about nothing while they are new", () => {
    expect(typedFigures(plannedSheet(planBatch(blank(kind, blocks))), kind.units)).toEqual([]);
  });
});

describe("a block", () => {
  it("is read back as it was written, whatever it holds", () => {
    const on = { units: "metric", method: "all-grain" } as const;
    for (const key of blockKeys) {
      fc.assert(
        fc.property(ofFields(blockFields[key].fields, on, fc.constantFrom("", "=1+1", "'quoted", "Größe")), (contents) => {
          const batch = { ...blank(on), [key]: contents } as BatchContents;
          expect(batchContents(plannedSheet(planBatch(batch)))).toEqual(batch);
        }),
        { numRuns: 40 },
      );
    }
  });

  it("does not take away what somebody has typed when it is asked for again", () => {
    const batch = withBlocks(
      exampleBatch({
        id: "a",
        sheetName: "B",
        batchName: "B",
        brewedOn: 46270,
        volume: 20,
        units: "metric",
        topUp: 0,
        method: "all-grain",
      }),
      ["beforeBoil"],
    );
    const typed = { ...batch, beforeBoil: { ...batch.beforeBoil!, volume: 26 } };
    expect(withBlocks(typed, blockKeys).beforeBoil?.volume).toBe(26);
  });
});
