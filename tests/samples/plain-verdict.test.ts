import type { Cell } from "hucre/xlsx";
import { writeXlsx } from "hucre/xlsx";
import { expect, it } from "vitest";
import { toFileFormula } from "../../src/excel-stand-in/xlsx/formula-translation";
import { functionNamed } from "../../src/functions/registry";
import { position } from "../../src/workbook/grid/plan/addresses";
import { drawnLog } from "../support/drawn-log";
import { uniformDraws } from "../support/fermentation-truths";
import { shownByLibreOffice, soffice } from "../support/libre-office";
import { plainCase, type PlainCase } from "../support/plain-cases";

it.skipIf(soffice === undefined)(
  "LibreOffice gives the verdict of GYLE.LOG.STEADY from its plain formula, over logs that look like logs",
  async () => {
    const uniform = uniformDraws(3);
    const steady = functionNamed("LOG.STEADY");
    const cells = new Map<string, Partial<Cell>>();
    const cases: (PlainCase & { readonly row: number })[] = [];
    let row = 1;
    for (let index = 0; index < 500; index += 1) {
      const made = plainCase(steady, drawnLog(uniform), `log ${index}`, row, index % 2 === 0);
      cases.push({ ...made, row });
      for (const [address, value] of made.cells) {
        const at = position(address);
        cells.set(`${at.row - 1},${at.column - 1}`, { value, type: typeof value === "number" ? "number" : "string" });
      }
      cells.set(`${row - 1},20`, { formula: toFileFormula(made.formulas[0]?.text ?? "") });
      row += made.height;
    }
    const shown = shownByLibreOffice(await writeXlsx({ sheets: [{ name: "Plain", rows: Array.from({ length: row }, () => []), cells }] }));
    const wanted = cases.map(({ label, formulas }) => `${label}: ${String(formulas[0]?.wanted)}`);
    expect(cases.map(({ label, row: at }) => `${label}: ${shown[at - 1]?.[20] ?? ""}`)).toEqual(wanted);
    // Every word comes up, so that none of them is right by never being asked.
    for (const word of ["not begun", "working", "nearly", "steady", "stalled", "rising"])
      expect(wanted.filter((text) => text.endsWith(`: ${word}`)).length, word).toBeGreaterThan(5);
  },
  120_000,
);
