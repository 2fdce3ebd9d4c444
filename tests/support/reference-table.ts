import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { call } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import { functionNamed } from "../../src/functions/registry";
import { basisNames } from "../reference/bases";

/**
 * A table of published values under tests/reference. `arguments` is a JSON array as typed in a cell (null = left out,
 * nested arrays = a range); `expected` is a number, a text, or a JSON matrix for an answer that spills; `basis` says how
 * far the row proves anything (tests/reference/bases.ts).
 */
export interface ReferenceRow {
  readonly function: string;
  readonly arguments: string;
  readonly expected: string;
  readonly tolerance: string;
  readonly basis: string;
  readonly source: string;
}

const header = ["function", "arguments", "expected", "tolerance", "basis", "source"];

export function readReferenceTable(path: string): ReferenceRow[] {
  const text = readFileSync(new URL(`../reference/${path}`, import.meta.url), "utf8");
  const records: string[][] = parse(text, { skip_empty_lines: true });
  if (records[0]?.join() !== header.join()) throw new Error(`${path}: the header must be ${header.join()}`);
  return records
    .slice(1)
    .map((cells) => Object.fromEntries(header.map((name, index) => [name, cells[index] ?? ""])) as unknown as ReferenceRow);
}

/** Runs every row of `path` through the door that Excel uses; `rows` must be exact, so that an empty file cannot pass. */
export function checkReferenceTable(path: string, rows: number): void {
  describe(path, () => {
    const table = readReferenceTable(path);
    it(`holds ${rows} rows, each with a source and a known basis`, () => {
      expect(table).toHaveLength(rows);
      for (const row of table) {
        expect(basisNames, JSON.stringify(row)).toContain(row.basis);
        expect(row.source.length, JSON.stringify(row)).toBeGreaterThan(3);
        expect(Number(row.tolerance), JSON.stringify(row)).toBeGreaterThanOrEqual(0);
      }
    });
    it.each(table.map((row, index) => ({ ...row, line: index + 2 })))("line $line: $function $arguments = $expected", (row) => {
      const answer = call(functionNamed(row.function), JSON.parse(row.arguments) as unknown[]);
      if (!row.expected.startsWith("[")) return expectCell(answer[0]?.[0], row.expected, row);
      const expected = JSON.parse(row.expected) as (string | number)[][];
      expect(answer.map((cells) => cells.length)).toEqual(expected.map((cells) => cells.length));
      expected.forEach((cells, at) => cells.forEach((cell, column) => expectCell(answer[at]?.[column], String(cell), row)));
    });
  });
}

function expectCell(answer: unknown, wanted: string, row: ReferenceRow): void {
  if (answer instanceof CellError) expect.fail(`${row.function}${row.arguments}: ${answer.code} ${answer.message}`);
  const expected = Number(wanted);
  if (wanted === "" || Number.isNaN(expected)) expect(answer).toBe(wanted);
  else {
    expect(typeof answer).toBe("number");
    expect(Math.abs((answer as number) - expected), `${String(answer)} for ${wanted}`).toBeLessThanOrEqual(Number(row.tolerance));
  }
}
