import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { afterAll, describe, expect, it } from "vitest";
import { saveWorkbook, valuesOnlyCopy } from "../../../src/excel-stand-in/xlsx";
import { fullWorkbook } from "./support/full-workbook";

/** A second program opens the files. It calculates array formulas at once, so our functions show #NAME? in the full file; see the values-only copy. */
describe("LibreOffice", async () => {
  const folder = mkdtempSync(join(tmpdir(), "gyle-xlsx-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const { snapshot, computed } = fullWorkbook();
  writeFileSync(join(folder, "full.xlsx"), await saveWorkbook(snapshot, computed));
  writeFileSync(join(folder, "values.xlsx"), await saveWorkbook(valuesOnlyCopy(snapshot, computed), computed));
  execFileSync(
    "soffice",
    [
      `-env:UserInstallation=file://${folder}/profile`,
      "--headless",
      "--convert-to",
      "csv",
      "--outdir",
      folder,
      join(folder, "full.xlsx"),
      join(folder, "values.xlsx"),
    ],
    { stdio: "ignore", timeout: 120_000 },
  );
  const rows = (name: string): string[][] => parse(readFileSync(join(folder, `${name}.csv`), "utf8"), { relax_column_count: true });
  const full = rows("full");
  const values = rows("values");

  it("opens the values-only copy with every value", () => {
    expect(values[0]?.[0]).toBe('Batch "Pale No. 1" <&>');
    expect(values[1]?.slice(0, 2)).toEqual(["Original gravity", "1.052"]);
    expect(values[3]?.slice(0, 2)).toEqual(["Alcohol", "5.1"]);
    expect(values[4]?.slice(0, 3)).toEqual(["In words", "strong", "strong!"]);
    expect(values[5]?.slice(0, 3)).toEqual(["Nested", "10.2", "#VALUE!"]);
    expect(values[8]?.[1]).toBe("2026-03-01");
    expect(values[9]?.slice(1, 3)).toEqual(["pale", "007"]);
    expect(values.slice(10, 13).map((row) => row.slice(0, 2))).toEqual([
      ["heat", "20"],
      ["mash", "66"],
      ["", "#N/A"],
    ]);
    expect(values[18]?.[1]).toBe("5.5");
    expect(values.slice(19, 21).map((row) => row[1])).toEqual(["5.2", "2.3"]);
  });

  it("opens the full file, with the native results as they were saved", () => {
    expect(full[1]?.[1]).toBe("1.052");
    expect(full[18]?.[1]).toBe("5.5");
    expect(full[3]?.[1]).toBe("#NAME?");
  });
});
