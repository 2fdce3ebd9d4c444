import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { openWorkbook, type ComputedValues, type OpenedWorkbook } from "../../src/excel-stand-in/xlsx";
import { makeWorkbook, valuesOnlyBytes, type MadeWorkbook } from "../../src/build/make-sample";
import { addSeasonSheets, noteSeason, seasonBatches } from "../../src/build/sample-season";
import { registry } from "../../src/functions/registry";
import { loadHeadlessBench } from "../support/headless-bench";
import { shownByLibreOffice, soffice } from "../support/libre-office";

/* Twelve batches on the grid engine: the dearest of the sample tests. */
const patience = 420_000;
const shipped = readFileSync(new URL("../../sample-workbooks/season.xlsx", import.meta.url));

let opened: OpenedWorkbook;
let made: MadeWorkbook;
beforeAll(async () => {
  opened = await openWorkbook(shipped, { functionNames: registry.map(({ id }) => id) });
  made = await makeWorkbook(await loadHeadlessBench(), seasonBatches(), (context) => addSeasonSheets(context), noteSeason);
}, patience);

const plain = (value: unknown): unknown => (typeof value === "number" ? Number(value.toPrecision(9)) : value);

/** By name of sheet: formula or constant, and value, of every cell. */
function cellsOf(
  { sheetOrder, sheets }: OpenedWorkbook["snapshot"],
  computed: ComputedValues,
): Record<string, { contents: Record<string, unknown>; values: Record<string, unknown> }> {
  return Object.fromEntries(
    sheetOrder.map((id) => {
      const contents: Record<string, unknown> = {};
      const values: Record<string, unknown> = {};
      for (const [row, columns] of Object.entries(sheets[id]?.cellData ?? {})) {
        for (const [column, cell] of Object.entries(columns as Record<string, { f?: string | null; v?: unknown } | null>)) {
          const content = cell?.f ?? cell?.v;
          if (content !== undefined && content !== null && content !== "")
            contents[`${row},${column}`] = typeof content === "string" ? content.replaceAll(" ", "") : plain(content);
        }
      }
      for (const [row, columns] of Object.entries(computed[id]?.values ?? {})) {
        for (const [column, value] of Object.entries(columns))
          if (value !== "" && value !== null) values[`${row},${column}`] = plain(value);
      }
      return [sheets[id]?.name ?? id, { contents, values }];
    }),
  );
}

describe("season.xlsx", () => {
  it("is what the present code makes, cell by cell, on every sheet", () => {
    const inFile = cellsOf(opened.snapshot, opened.computed);
    const fresh = cellsOf(made.snapshot, made.computed);
    expect(Object.keys(inFile)).toEqual([...seasonBatches().map(({ sheetName }) => sheetName), "Season", "Kit", "Stores"]);
    expect(Object.keys(fresh)).toEqual(Object.keys(inFile));
    for (const [name, { contents, values }] of Object.entries(inFile)) {
      expect(Object.keys(contents).length, name).toBeGreaterThan(50);
      expect(values, name).toEqual(fresh[name]?.values);
      expect(contents, name).toEqual(fresh[name]?.contents);
    }
  });

  it("has batches in every state that lasts", () => {
    const states = Array.from({ length: 12 }, (_, index) => made.bench.valueAt("Season", `E${41 + index}`));
    for (const state of ["planned", "fermenting", "stalled", "finished", "conditioning", "ready", "drunk up"])
      expect(states).toContain(state);
    expect(states).not.toContain("error");
  });

  it("shows no error anywhere on the three sheets", () => {
    const fresh = cellsOf(made.snapshot, made.computed);
    for (const name of ["Season", "Kit", "Stores"])
      expect(Object.entries(fresh[name]?.values ?? {}).filter(([, value]) => typeof value === "string" && value.startsWith("#"))).toEqual(
        [],
      );
  });
});

describe("in LibreOffice", () => {
  it.skipIf(!soffice)(
    "the season sheet shows the figures that we show",
    async () => {
      const sheet = made.snapshot.sheetOrder.findIndex((id) => made.snapshot.sheets[id]?.name === "Season") + 1;
      const rows = shownByLibreOffice(await valuesOnlyBytes(made), sheet);
      let compared = 0;
      for (let row = 4; row <= 52; row += 1) {
        for (let column = 1; column <= 20; column += 1) {
          const ours = made.bench.valueAt("Season", `${String.fromCharCode(64 + column)}${row}`);
          const theirs = rows[row - 1]?.[column - 1] ?? "";
          if (typeof ours !== "number" || /^\d{4}-\d\d-\d\d/.test(theirs)) continue;
          expect(Math.abs(Number(theirs) - ours), `row ${row}, column ${column}: ${theirs} and ${ours}`).toBeLessThan(
            1e-6 * Math.max(1, Math.abs(ours)),
          );
          compared += 1;
        }
      }
      expect(compared).toBeGreaterThan(150);
    },
    patience,
  );
});
