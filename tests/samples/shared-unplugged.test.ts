import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook, type OpenedWorkbook } from "../../src/bench/xlsx";
import { findSoffice } from "../../src/build/find-programs.mjs";
import { makeWorkbook, type MadeWorkbook } from "../../src/build/make-sample";
import { sharedBatch, unplugForMembers } from "../../src/build/sample-unplugged";
import { registry } from "../../src/functions/registry";
import { gyleCalls } from "../../src/workbook/formulas";
import { loadHeadlessBench } from "../support/headless-bench";

const shipped = readFileSync(new URL("../../sample-workbooks/shared-unplugged.xlsx", import.meta.url));

let opened: OpenedWorkbook;
let made: MadeWorkbook;
beforeAll(async () => {
  opened = await openWorkbook(shipped, { functionNames: registry.map(({ id }) => id) });
  made = await makeWorkbook(await loadHeadlessBench(), [sharedBatch()], unplugForMembers);
}, 180_000);

type Shown = Map<string, unknown>;

/** Formula or constant of every cell of the only sheet. */
function contentsOf({ sheetOrder, sheets }: OpenedWorkbook["snapshot"]): Shown {
  const contents: Shown = new Map();
  for (const [row, columns] of Object.entries(sheets[sheetOrder[0] ?? ""]?.cellData ?? {})) {
    for (const [column, cell] of Object.entries(columns as Record<string, { f?: string | null; v?: unknown } | null>)) {
      const content = cell?.f ?? cell?.v;
      if (content !== undefined && content !== null && content !== "") contents.set(`${row},${column}`, typeof content === "string" ? content.replaceAll(" ", "") : Number(Number(content).toPrecision(9)));
    }
  }
  return contents;
}

describe("shared-unplugged.xlsx", () => {
  it("is what the present code makes, cell by cell", () => {
    const inFile = contentsOf(opened.snapshot);
    expect(inFile.size).toBeGreaterThan(300);
    expect(Object.fromEntries(inFile)).toEqual(Object.fromEntries(contentsOf(made.snapshot)));
  });

  it("has no GYLE formula left in any cell, keeps each in a note, and says nothing of prices or of who made it", () => {
    const formulas = [...contentsOf(opened.snapshot).values()].filter((content) => typeof content === "string" && content.startsWith("="));
    expect(formulas.length).toBeGreaterThan(60);
    expect(formulas.filter((formula) => gyleCalls(String(formula)).length > 0)).toEqual([]);
    const parts = Object.entries(unzipSync(new Uint8Array(shipped))).filter(([name]) => /\.xml$/.test(name));
    const text = (pattern: RegExp) => parts.filter(([name]) => pattern.test(name)).map(([, bytes]) => strFromU8(bytes)).join("");
    expect(text(/comments\d*\.xml$/)).toContain("GYLE.WORT.GRAVITY(");
    expect(text(/sheet\d+\.xml$/)).not.toContain("_xldudf_");
    expect(text(/core\.xml$/)).not.toMatch(/<dc:creator>[^<]+|<cp:lastModifiedBy>[^<]+/);
    expect(opened.snapshot.sheetOrder).toHaveLength(1);
  });
});

/** LibreOffice writes days and times of day into CSV as such; Excel's day numbers count from 1899-12-30. */
function numberIn(theirs: string): number {
  const american = /^(\d{2})\/(\d{2})\/(\d{4})(.*)$/.exec(theirs);
  if (american) return numberIn(`${american[3] ?? ""}-${american[1] ?? ""}-${american[2] ?? ""}${american[4] ?? ""}`);
  const date = /^(\d{4}-\d{2}-\d{2})(?: (\d{2}:\d{2}:\d{2}))?$/.exec(theirs);
  if (date) return (Date.parse(`${date[1] ?? ""}T${date[2] ?? "00:00:00"}Z`) - Date.UTC(1899, 11, 30)) / 86_400_000;
  const time = /^(\d{2}):(\d{2}):(\d{2})$/.exec(theirs);
  return time ? (Number(time[1]) * 3600 + Number(time[2]) * 60 + Number(time[3])) / 86_400 : theirs === "" ? NaN : Number(theirs.replace("%", "")) / (theirs.endsWith("%") ? 100 : 1);
}

describe("in LibreOffice", () => {
  const soffice = findSoffice();
  it.skipIf(!soffice)("calculates to what we show, from the formulas alone", async () => {
    const folder = mkdtempSync(path.join(tmpdir(), "gylebook-unplugged-"));
    // Saved without results: LibreOffice must calculate every formula by itself.
    writeFileSync(path.join(folder, "bare.xlsx"), await saveWorkbook(made.snapshot, {}, undefined, {}));
    execFileSync(soffice!, [`-env:UserInstallation=file://${folder}/profile`, "--headless", "--convert-to", "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false", "--outdir", folder, path.join(folder, "bare.xlsx")], { stdio: "pipe", timeout: 150_000 });
    const rows: string[][] = parse(readFileSync(path.join(folder, "bare.csv")), { relax_column_count: true });
    const values = made.computed[made.snapshot.sheetOrder[0] ?? ""]?.values ?? {};
    let numbers = 0;
    const different: string[] = [];
    for (const [row, columns] of Object.entries(values)) {
      for (const [column, value] of Object.entries(columns)) {
        const theirs = rows[Number(row)]?.[Number(column)] ?? "";
        if (typeof value === "number") {
          numbers += 1;
          if (!(Math.abs(numberIn(theirs) - value) <= 1e-6 * Math.max(1, Math.abs(value)))) different.push(`${row},${column}: ${theirs} for ${value}`);
        } else if (typeof value === "string" && !value.startsWith("#") && theirs !== value) different.push(`${row},${column}: ${theirs} for ${value}`);
      }
    }
    expect(numbers).toBeGreaterThan(60);
    expect(different).toEqual([]);
  }, 200_000);
});
