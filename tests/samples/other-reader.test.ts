import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { openWorkbook } from "../../src/excel-stand-in/xlsx";
import { seasonBatches } from "../../src/build/sample-season";
import { findPythonWith } from "../../src/build/find-programs.mjs";
import { registry } from "../../src/functions/registry";

/** A reader written by others: the Python library openpyxl, besides LibreOffice and our own. */
const python = findPythonWith("openpyxl");
if (python === undefined) console.warn("Skipped: the samples read by openpyxl, which is not here (Debian: apt install python3-openpyxl).");

const script = `
import json, sys, openpyxl
book = openpyxl.load_workbook(sys.argv[1])
values = openpyxl.load_workbook(sys.argv[1], data_only=True)
print(json.dumps([{
  "sheet": sheet.title,
  "tables": sorted(sheet.tables.keys()),
  "charts": len(sheet._charts),
  "numbers": {f"{cell.row - 1},{cell.column - 1}": cell.value for row in values[sheet.title].iter_rows() for cell in row if isinstance(cell.value, (int, float)) and not isinstance(cell.value, bool)},
} for sheet in book.worksheets]))
`;

const planned = seasonBatches().flatMap(({ sheetName, readings }) => (readings.length === 0 ? [sheetName] : []));

interface Seen {
  readonly sheet: string;
  readonly tables: readonly string[];
  readonly charts: number;
  readonly numbers: Readonly<Record<string, number>>;
}

it
  .skipIf(python === undefined)
  .each(["first-extract-batch-metric.xlsx", "first-extract-batch.xlsx", "season.xlsx", "shared-unplugged.xlsx"])(
  "%s shows openpyxl the sheets, tables, charts and numbers that we show",
  async (name) => {
    const file = fileURLToPath(new URL(`../../sample-workbooks/${name}`, import.meta.url));
    const { stdout, status, stderr } = spawnSync(python ?? "", ["-W", "ignore", "-c", script, file], {
      encoding: "utf8",
      maxBuffer: 64_000_000,
    });
    expect(stderr).toBe("");
    expect(status).toBe(0);
    const seen = JSON.parse(stdout) as Seen[];
    const { snapshot, computed } = await openWorkbook(readFileSync(file), { functionNames: registry.map(({ id }) => id) });
    expect(seen.map(({ sheet }) => sheet)).toEqual(snapshot.sheetOrder.map((id) => snapshot.sheets[id]?.name));
    for (const [index, { sheet, tables, charts, numbers }] of seen.entries()) {
      const ours = computed[snapshot.sheetOrder[index] ?? ""]?.values ?? {};
      const compared = Object.entries(numbers).flatMap(([cell, theirs]) => {
        const [row = 0, column = 0] = cell.split(",").map(Number);
        const value = ours[row]?.[column];
        return typeof value === "number" ? [[cell, theirs, value] as const] : [];
      });
      if (!["Season", "Kit", "Stores"].includes(sheet)) {
        expect(tables.length, sheet).toBe(4);
        // A batch that is only planned has no readings to draw.
        expect(charts, sheet).toBe(planned.includes(sheet) ? 0 : 1);
        expect(compared.length, sheet).toBeGreaterThan(60);
      }
      expect(
        compared.filter(([, theirs, value]) => Math.abs(theirs - value) > 1e-9 * Math.max(1, Math.abs(value))),
        sheet,
      ).toEqual([]);
    }
  },
  120_000,
);
