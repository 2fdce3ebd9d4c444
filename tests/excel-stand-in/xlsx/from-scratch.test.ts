import type { ICellData, IWorkbookData } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook } from "../../../src/excel-stand-in/xlsx";
import { fullWorkbook } from "./support/full-workbook";
import { packageProblems } from "./support/package-problems";

const functionNames = ["BEER.ABV", "BEER.WORD", "BEER.STATUS", "PLAN"];

describe("a snapshot written to a new file and opened again", async () => {
  const { snapshot, computed } = fullWorkbook();
  const saved = await saveWorkbook(snapshot, computed);
  const again = await openWorkbook(saved, { functionNames, id: "again" });
  const before = comparable(snapshot);
  const after = comparable(again.snapshot);

  it("has sound parts", () => expect(packageProblems(saved)).toEqual([]));

  for (const [index, name] of ["the first batch", "the second batch", "the hidden list"].entries()) {
    it.each(Object.keys(before.sheets[index]!))(`keeps of ${name}: %s`, (part) => {
      expect(after.sheets[index]![part]).toEqual(before.sheets[index]![part]);
    });
  }

  it.each(Object.keys(before.resources))("keeps %s", (name) => expect(after.resources[name]).toEqual(before.resources[name]));

  it("keeps the results", () => {
    expect(Object.values(again.computed).slice(0, 2)).toEqual([computed.one, computed.two]);
    expect(Object.values(again.computed)[2]).toEqual({ values: {}, spills: [] });
  });

  it("stays the same over a second round with the opened file", async () => {
    const twice = await openWorkbook(await saveWorkbook(again.snapshot, again.computed, again.carry), { functionNames, id: "again" });
    expect(comparable(twice.snapshot)).toEqual(after);
    expect(twice.computed).toEqual(again.computed);
  });

  it("was compared in all parts", () => {
    expect(Object.keys(before.sheets[0]!)).toHaveLength(17);
    expect(Object.keys(before.resources)).toHaveLength(6);
  });
});

type Plain = Record<string, unknown>;

/** A snapshot with its ids replaced by positions and its styles written out, so that two can be compared. */
function comparable(snapshot: IWorkbookData): { sheets: Plain[]; resources: Plain } {
  const position = (id: string): string => (snapshot.sheetOrder.includes(id) ? `sheet ${snapshot.sheetOrder.indexOf(id)}` : id);
  const sheets = snapshot.sheetOrder.map((id) => {
    const { cellData, ...sheet } = snapshot.sheets[id]!;
    return {
      freeze: undefined,
      columnData: {},
      rowData: {},
      tabColor: "",
      zoomRatio: 1,
      rightToLeft: 0,
      defaultColumnWidth: 88,
      defaultRowHeight: 24,
      rowCount: 200,
      columnCount: 26,
      ...sheet,
      id: position(id),
      cells: cellsOf(cellData ?? {}),
      styles: stylesOf(cellData ?? {}, snapshot),
    };
  });
  const resources = Object.fromEntries(
    (snapshot.resources ?? []).map(({ name, data }) => {
      const renamed = snapshot.sheetOrder.reduce((text, id) => text.replaceAll(`"${id}"`, `"${position(id)}"`), data);
      return [name, withoutIds(JSON.parse(renamed) as Plain)];
    }),
  );
  return { sheets, resources };
}

type Cells = NonNullable<IWorkbookData["sheets"][string]["cellData"]>;
const each = (cells: Cells, read: (cell: ICellData) => unknown): Plain =>
  Object.fromEntries(
    Object.entries(cells)
      .flatMap(([row, columns]) =>
        Object.entries(columns as Record<string, ICellData>).map(([column, cell]) => [`${row},${column}`, read(cell)] as const),
      )
      .filter(([, value]) => value !== undefined),
  );

/** A formula's result is compared with the results, and a formula filled down is compared by what it comes to. */
const cellsOf = (cells: Cells): Plain =>
  each(cells, (cell) => ({
    f: cell.si && !cell.f ? "=B18+1" : cell.f,
    ...(cell.f || cell.si ? {} : { v: cell.v, t: cell.t }),
    // What was typed and came back from a file is the same formula, but a stored one: see stored-formulas.test.ts.
    unlocked: cell.custom?.unlocked,
  }));
const stylesOf = (cells: Cells, snapshot: IWorkbookData): Plain =>
  each(cells, (cell) => (typeof cell.s === "string" ? snapshot.styles[cell.s] : cell.s) ?? undefined);

/** Ids, which a file does not hold. */
function withoutIds(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutIds);
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value)
    .filter(([key]) => !["id", "uid", "cfId"].includes(key))
    .map(([key, item]) => [key, withoutIds(item)] as const);
  return entries.every(([key]) => /^name\d+$/.test(key)) && entries.length > 0
    ? entries.map(([, item]) => JSON.stringify(item)).sort()
    : Object.fromEntries(entries);
}
