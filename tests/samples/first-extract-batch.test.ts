import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook, type ComputedValues, type OpenedWorkbook } from "../../src/excel-stand-in/xlsx";
import { findCalibri } from "../../src/build/find-programs.mjs";
import { makeWorkbook, valuesOnlyBytes, type MadeWorkbook } from "../../src/build/make-sample";
import { registry } from "../../src/functions/registry";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { block, columnNumber } from "../../src/workbook/grid/plan/addresses";
import { benchTimeout } from "../support/batch-bench";
import { loadHeadlessBench } from "../support/headless-bench";
import { convertedByLibreOffice, shownByLibreOffice, soffice } from "../support/libre-office";

const shipped = readFileSync(new URL("../../sample-workbooks/first-extract-batch.xlsx", import.meta.url));
const functionNames = registry.map(({ id }) => id);

let opened: OpenedWorkbook;
let made: MadeWorkbook;
beforeAll(async () => {
  opened = await openWorkbook(shipped, { functionNames });
  made = await makeWorkbook(await loadHeadlessBench(), [firstExtractBatch()]);
}, benchTimeout);

type Cells = Record<string, unknown>;

/** Formula or constant, and value, of every cell by its address. */
function cellsOf(snapshot: OpenedWorkbook["snapshot"], computed: ComputedValues): { contents: Cells; values: Cells } {
  const [sheetId = ""] = snapshot.sheetOrder;
  const contents: Cells = {};
  const values: Cells = {};
  for (const [row, columns] of Object.entries(snapshot.sheets[sheetId]?.cellData ?? {})) {
    for (const [column, cell] of Object.entries(columns as Record<string, { f?: string | null; v?: unknown } | null>)) {
      const content = cell?.f ?? cell?.v;
      if (content !== undefined && content !== null && content !== "") contents[`${row},${column}`] = content;
    }
  }
  for (const [row, columns] of Object.entries(computed[sheetId]?.values ?? {})) {
    for (const [column, value] of Object.entries(columns))
      if (value !== "" && value !== null) values[`${row},${column}`] = typeof value === "number" ? Number(value.toPrecision(10)) : value;
  }
  return { contents, values };
}

describe("first-extract-batch.xlsx", () => {
  it("is what the present code makes, cell by cell", () => {
    const inFile = cellsOf(opened.snapshot, opened.computed);
    const fresh = cellsOf(made.snapshot, made.computed);
    expect(Object.keys(inFile.contents).length).toBeGreaterThan(400);
    expect(inFile.values).toEqual(fresh.values);
    for (const [cell, content] of Object.entries(inFile.contents)) {
      const wanted = fresh.contents[cell];
      if (typeof content === "number") expect(content, cell).toBeCloseTo(Number(wanted), 9);
      else expect(String(content).replaceAll(" ", ""), cell).toBe(String(wanted).replaceAll(" ", ""));
    }
  });

  it("is so with metric instruments, too, every figure of which its brewer could have read off", async () => {
    const metric = readFileSync(new URL("../../sample-workbooks/first-extract-batch-metric.xlsx", import.meta.url));
    const inFile = await openWorkbook(metric, { functionNames });
    const fresh = await makeWorkbook(await loadHeadlessBench(), [firstExtractBatch("metric")]);
    expect(cellsOf(inFile.snapshot, inFile.computed).values).toEqual(cellsOf(fresh.snapshot, fresh.computed).values);
    expect(fresh.bench.valueAt("Batch 1", "B9")).toBe(19);
  });

  it("saved and opened again, it is the same", async () => {
    const again = await openWorkbook(await saveWorkbook(opened.snapshot, opened.computed, opened.carry), { functionNames });
    expect(cellsOf(again.snapshot, again.computed)).toEqual(cellsOf(opened.snapshot, opened.computed));
  });

  it("shows in the grid in the font that its columns were measured for", () => {
    const sheetFonts = opened.snapshot.sheetOrder.map((id) => opened.snapshot.sheets[id]?.defaultStyle);
    expect(sheetFonts).toEqual([{ ff: "Calibri", fs: 11 }]);
  });

  it("holds its formulas as Excel writes them, with their last values, and nothing that nags people without the add-in", () => {
    const parts = unzipSync(shipped);
    const sheet = strFromU8(parts["xl/worksheets/sheet1.xml"] ?? new Uint8Array());
    const workbook = strFromU8(parts["xl/workbook.xml"] ?? new Uint8Array());
    expect(sheet).toMatch(
      /<c r="G5"[^>]* cm="1"[^>]*><f t="array" ref="G5">_xldudf_GYLE_WORT_GRAVITY\(malt,gravity_volume,grain_efficiency,units\)<\/f><v>1\.051\d+<\/v>/,
    );
    expect(sheet).not.toContain("GYLE.");
    expect(Object.keys(parts)).toContain("xl/metadata.xml");
    expect(Object.keys(parts).filter((name) => /webextension/i.test(name))).toEqual([]);
    expect(workbook).not.toContain("fullCalcOnLoad");
    expect(workbook).toMatch(/<definedName name="og" localSheetId="0">'Batch 1'!\$H\$\d+<\/definedName>/);
  });
});

/**
 * LibreOffice recalculates array formulas on opening and does not know our functions, so the file as Excel would write
 * it shows #NAME? there; what it can show is the copy in which every GYLE call is its value.
 */
describe("in LibreOffice", () => {
  let values: Uint8Array;
  beforeAll(async () => {
    values = await valuesOnlyBytes(made);
  }, benchTimeout);

  it.skipIf(!soffice)("shows every value of the card and the checks as we do", () => {
    const rows = shownByLibreOffice(values);
    const plan = planBatch(firstExtractBatch());
    let compared = 0;
    for (const { name, range } of plan.names) {
      const { from, to } = block(range);
      for (let row = from.row; row <= to.row; row += 1) {
        for (let column = from.column; column <= to.column; column += 1) {
          const ours = made.bench.valueAt("Batch 1", `${String.fromCharCode(64 + column)}${row}`);
          if (typeof ours !== "number" || column > columnNumber("I")) continue;
          const theirs = rows[row - 1]?.[column - 1] ?? "";
          if (/^\d{4}-\d\d-\d\d|^\d+:\d\d/.test(theirs)) continue; // dates and times come out as such
          expect(Math.abs(Number(theirs.replace(" %", "")) - ours), `${name} ${range}: ${theirs} and ${ours}`).toBeLessThan(
            1e-6 * Math.max(1, Math.abs(ours)),
          );
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(80);
  });

  it.skipIf(!soffice || !findCalibri())("prints on three pages, none of its columns on an extra one", () => {
    const pdf = convertedByLibreOffice(values, "pdf").toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(3);
  });

  it("is there to be asked (set GYLEBOOK_SOFFICE or install libreoffice-calc)", ({ skip }) => {
    if (!soffice) skip("LibreOffice was not found");
    expect(soffice).toBeTruthy();
  });
});
