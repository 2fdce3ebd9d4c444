import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { parse } from "csv-parse/sync";
import type { IWorkbookData } from "@univerjs/core";
import type { ComputedValues } from "../../src/excel-stand-in/xlsx";
import { findSoffice } from "../../src/build/find-programs.mjs";

/** Undefined where this computer has no LibreOffice: tests that need it are skipped then. */
export const soffice = findSoffice();

/**
 * A workbook as LibreOffice writes it in another format, with a profile of its own.
 *
 * @param filter "pdf", or "csv:" and what follows
 */
export function convertedByLibreOffice(workbook: Uint8Array, filter: string): Buffer {
  const [written] = filesByLibreOffice(workbook, filter).values();
  if (written === undefined) throw new Error(`LibreOffice wrote no ${filter}`);
  return written;
}

/** Every file that LibreOffice writes, by its name: a CSV file for each sheet where the filter asks for all. */
function filesByLibreOffice(workbook: Uint8Array, filter: string, locale?: string): Map<string, Buffer> {
  const folder = mkdtempSync(path.join(tmpdir(), "gylebook-libre-office-"));
  try {
    const file = path.join(folder, "book.xlsx");
    writeFileSync(file, workbook);
    if (locale !== undefined) speak(locale, path.join(folder, "profile/user"));
    execFileSync(
      soffice ?? "",
      [`-env:UserInstallation=file://${folder}/profile`, "--headless", "--convert-to", filter, "--outdir", folder, file],
      { stdio: "pipe", timeout: 300_000 },
    );
    const written = readdirSync(folder).filter((name) => name.endsWith(`.${filter.slice(0, 3)}`));
    return new Map(written.map((name) => [name, readFileSync(path.join(folder, name))]));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The regional settings of a computer in another country; the words of the program stay English. */
function speak(locale: string, user: string): void {
  mkdirSync(user, { recursive: true });
  const setting = (name: string, value: string) =>
    `<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="${name}" oor:op="fuse"><value>${value}</value></prop></item>`;
  writeFileSync(
    path.join(user, "registrymodifications.xcu"),
    `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
${setting("ooSetupSystemLocale", locale)}${setting("ooLocale", "en-US")}</oor:items>`,
  );
}

/**
 * What every cell of a workbook shows on a computer with the regional settings of `locale`, by sheet: texts, and numbers as
 * they look there. Cells that the file holds no result of are calculated there.
 */
export function shownInLocale(workbook: Uint8Array, locale: string): Map<string, string[][]> {
  // Token 9 = true: cells as they look; token 12 = -1: a file for each sheet, called "book-Sheet name.csv".
  const files = filesByLibreOffice(workbook, "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1", locale);
  return new Map(
    [...files].map(([name, bytes]) => [
      name.slice("book-".length, -".csv".length),
      parse(bytes, { relax_column_count: true }) as string[][],
    ]),
  );
}

/**
 * What LibreOffice shows in every cell of one sheet, as text. Cells that the file holds no result of it calculates by itself.
 *
 * @param sheet counted from 1
 */
export function shownByLibreOffice(workbook: Uint8Array, sheet = 1): string[][] {
  // Token 9 = false: cells as they are, not as they look, so that numbers keep their digits; token 12: which sheet.
  return parse(convertedByLibreOffice(workbook, `csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,${sheet}`), {
    relax_column_count: true,
  });
}

/** The same of every sheet, by its name, in one go: numbers with all their digits. */
export function allShownByLibreOffice(workbook: Uint8Array): Map<string, string[][]> {
  const files = filesByLibreOffice(workbook, "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1");
  return new Map(
    [...files].map(([name, bytes]) => [
      name.slice("book-".length, -".csv".length),
      parse(bytes, { relax_column_count: true }) as string[][],
    ]),
  );
}

export const isErrorShown = (text: string): boolean => /^(#|Err:)/.test(text);

/** LibreOffice writes days and times of day into CSV as such; Excel's day numbers count from 1899-12-30. */
export function numberShown(text: string): number {
  const american = /^(\d{2})\/(\d{2})\/(\d{4})(.*)$/.exec(text);
  if (american) return numberShown(`${american[3] ?? ""}-${american[1] ?? ""}-${american[2] ?? ""}${american[4] ?? ""}`);
  const date = /^(\d{4}-\d{2}-\d{2})(?: (\d{2}:\d{2}:\d{2}))?$/.exec(text);
  if (date) return (Date.parse(`${date[1] ?? ""}T${date[2] ?? "00:00:00"}Z`) - Date.UTC(1899, 11, 30)) / 86_400_000;
  const time = /^(\d{2}):(\d{2}):(\d{2})( [AP]M)?$/.exec(text);
  const hours = time && (time[4] === undefined ? Number(time[1]) : (Number(time[1]) % 12) + (time[4] === " PM" ? 12 : 0));
  return time
    ? (Number(hours) * 3600 + Number(time[2]) * 60 + Number(time[3])) / 86_400
    : text === ""
      ? NaN
      : Number(text.replace("%", "")) / (text.endsWith("%") ? 100 : 1);
}

type Cells = Readonly<Record<number, Readonly<Record<number, unknown>>>>;

/** What the first sheet of a workbook of ours shows: its constants, and what its formulas come to. */
export function shownByUs({
  snapshot: { sheetOrder, sheets },
  computed,
}: {
  readonly snapshot: IWorkbookData;
  readonly computed: ComputedValues;
}): Cells {
  const id = sheetOrder[0] ?? "";
  const shown: Record<number, Record<number, unknown>> = {};
  for (const [row, columns] of Object.entries(sheets[id]?.cellData ?? {})) {
    for (const [column, cell] of Object.entries(columns as Record<string, { v?: unknown } | null>))
      (shown[Number(row)] ??= {})[Number(column)] = cell?.v ?? "";
  }
  for (const [row, columns] of Object.entries(computed[id]?.values ?? {})) Object.assign((shown[Number(row)] ??= {}), columns);
  return shown;
}

export interface Comparison {
  readonly numbers: number;
  readonly texts: number;
  readonly errors: number;
  readonly different: readonly string[];
}

/** Every cell that either side shows: numbers to 1e-6 of their size (absolute below 1), texts exactly, an error where we have one. */
export function compared(ours: Cells, theirs: readonly (readonly string[])[]): Comparison {
  const counts = { numbers: 0, texts: 0, errors: 0 };
  const different: string[] = [];
  const rows = Math.max(theirs.length, ...Object.keys(ours).map((row) => Number(row) + 1));
  for (let row = 0; row < rows; row += 1) {
    const columns = Math.max(theirs[row]?.length ?? 0, ...Object.keys(ours[row] ?? {}).map((column) => Number(column) + 1));
    for (let column = 0; column < columns; column += 1) {
      const value = ours[row]?.[column] ?? "";
      const shown = theirs[row]?.[column] ?? "";
      const isError = typeof value === "string" && value.startsWith("#") && !/^#[0-9A-F]{6}$/i.test(value);
      counts[typeof value === "number" ? "numbers" : isError ? "errors" : "texts"] += value === "" ? 0 : 1;
      const agrees =
        typeof value === "number"
          ? Math.abs(numberShown(shown) - value) <= 1e-6 * Math.max(1, Math.abs(value))
          : isError
            ? isErrorShown(shown)
            : shown === (typeof value === "boolean" ? String(value).toUpperCase() : value);
      if (!agrees) different.push(`${row},${column}: ${shown} for ${String(value)}`);
    }
  }
  return { ...counts, different };
}
