import type { Cell } from "hucre/xlsx";
import { writeXlsx } from "hucre/xlsx";
import { beforeAll, describe, expect, it } from "vitest";
import { toFileFormula } from "../../src/excel-stand-in/xlsx/formula-translation";
import { registry } from "../../src/functions/registry";
import { position } from "../../src/workbook/grid/plan/addresses";
import { plainForms } from "../../src/workbook/exchange/unplug/plain";
import { NoPlainForm } from "../../src/workbook/exchange/unplug/plain/no-plain-form";
import { isValueOnly } from "../../src/workbook/exchange/unplug/plain/plain-form";
import { isErrorShown, shownByLibreOffice, soffice } from "../support/libre-office";
import { plainCase, typedCalls, type PlainCase } from "../support/plain-cases";

/**
 * Another program's arithmetic: LibreOffice calculates every plain formula, with its inputs in cells and with them
 * written in, in both unit systems, at and beyond every limit, with every argument left blank or holding a word. What it
 * shows must be what the call itself answers: numbers to 1e-6 of their size (absolute below 1), words exactly, an error
 * where the call has one.
 */
const tolerance = 1e-6;
/** Drawn calls of each function in each unit system. */
const draws = 7;

interface Placed extends PlainCase {
  readonly id: string;
  readonly row: number;
}

const cases: Placed[] = [];
const without = new Map<string, number>();
let shown: string[][] = [];

/** Inputs stand in the columns before it, the plain formulas from it on. */
const firstFormula = 20;

beforeAll(async () => {
  let row = 1;
  for (const descriptor of registry) {
    const form = plainForms.get(descriptor.id);
    if (form === undefined || isValueOnly(form)) continue;
    for (const inline of [false, true]) {
      for (const { label, typed } of typedCalls(descriptor, draws, 7)) {
        try {
          const made = plainCase(descriptor, typed, label, row, inline);
          cases.push({ ...made, id: descriptor.id, row });
          row += made.height;
        } catch (problem) {
          if (!(problem instanceof NoPlainForm)) throw problem;
          without.set(descriptor.id, (without.get(descriptor.id) ?? 0) + 1);
        }
      }
    }
  }
  if (soffice === undefined) return;
  shown = shownByLibreOffice(
    await writeXlsx({ sheets: [{ name: "Plain", rows: Array.from({ length: row }, () => []), cells: cellsOf(cases) }] }),
  );
}, 400_000);

function cellsOf(placed: readonly Placed[]): Map<string, Partial<Cell>> {
  const cells = new Map<string, Partial<Cell>>();
  for (const { cells: inputs, formulas, workings, row } of placed) {
    for (const [address, value] of inputs) {
      const at = position(address);
      cells.set(`${at.row - 1},${at.column - 1}`, { value, type: typeof value === "number" ? "number" : "string" });
    }
    for (const [address, text] of workings) {
      const at = position(address);
      cells.set(
        `${at.row - 1},${at.column - 1}`,
        text.startsWith("=") ? { formula: toFileFormula(text) } : { value: text, type: "string" },
      );
    }
    formulas.forEach(({ text }, index) => cells.set(`${row - 1},${firstFormula + index}`, { formula: toFileFormula(text) }));
  }
  return cells;
}

/** "" when what LibreOffice shows agrees, else both. */
function difference({ label, formulas, row }: Placed): string {
  const first = formulas[0]?.wanted;
  return (
    formulas
      .map(({ wanted }, index) => {
        const got = shown[row - 1]?.[firstFormula + index] ?? "";
        const isError = isErrorShown(got);
        if (typeof wanted === "object") return isError ? "" : `${label}: cell ${index + 1} shows ${got}, an error was wanted`;
        // A grid whose call has an error in its first cell has nothing to show in the others.
        if (index > 0 && typeof first === "object" && isError) return "";
        const agrees =
          typeof wanted === "number"
            ? got !== "" && !isError && Math.abs(Number(got) - wanted) <= tolerance * Math.max(1, Math.abs(wanted))
            : got === wanted;
        return agrees ? "" : `${label}: cell ${index + 1} shows ${got}, not ${String(wanted)}`;
      })
      .find((text) => text !== "") ?? ""
  );
}

describe.skipIf(soffice === undefined)("LibreOffice calculates the plain formulas", () => {
  it("in thousands", () => {
    expect(cases.reduce((sum, { formulas }) => sum + formulas.length, 0)).toBeGreaterThan(8000);
    expect(cases.filter(({ formulas }) => formulas.some(({ wanted }) => typeof wanted === "number")).length).toBeGreaterThan(2500);
    // Calls without a plain form here are those of lists and tables that do not fit, which the call refuses as well, and of a ± whose arguments stand in cells,
    // and of hops in a stand, which are followed minute by minute.
    expect([...without.keys()].sort()).toEqual([
      "GAUGE.SPREAD",
      "HOPS.WEIGH",
      "LOG.STEADY",
      "WATER.BLEND",
      "WATER.BUDGET",
      "WORT.KETTLE",
      "WORT.MIX",
    ]);
  });

  it.each(registry.filter(({ id }) => !isValueOnly(plainForms.get(id) ?? { value: "" }) && id !== "GAUGE.SPREAD").map(({ id }) => id))(
    "%s",
    (id) => {
      const mine = cases.filter((one) => one.id === id);
      expect(mine.length).toBeGreaterThan(20);
      const differences = mine.map(difference).filter((text) => text !== "");
      // A reading without a time is day 0 to the call and no reading to the plain formula: on the safe side.
      const excused = id === "LOG.STEADY" ? /times (empty|hole)/ : /^$/;
      expect(differences.filter((text) => !excused.test(text))).toEqual([]);
      expect(differences.filter((text) => /shows (steady|nearly)/.test(text))).toEqual([]);
    },
  );
});
