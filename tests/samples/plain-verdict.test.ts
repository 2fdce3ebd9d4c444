import type { Cell } from "hucre/xlsx";
import { writeXlsx } from "hucre/xlsx";
import { expect, it } from "vitest";
import { toFileFormula } from "../../src/bench/xlsx/formula-translation";
import { functionNamed } from "../../src/functions/registry";
import { position } from "../../src/workbook/plan/addresses";
import { normalOf, uniformDraws } from "../support/fermentation-truths";
import { shownByLibreOffice, soffice } from "../support/libre-office";
import { plainCase, type PlainCase } from "../support/plain-cases";

/** A log as a brewer or an instrument keeps it: at rest or falling, by lines or not, as days or dates, in any order. */
function drawnLog(uniform: () => number): unknown[] {
  const among = <T,>(...choices: readonly T[]): T => choices[Math.floor(uniform() * choices.length)]!;
  const start = among(0, 46000);
  const perDay = among(1, 1, 2, 4);
  const readings = 2 + Math.floor(uniform() * (perDay === 4 ? 28 : 9));
  const [fallPerDay, deviation, line] = [among(0, 0, 0.0005, 0.001, 0.004, 0.012), among(0, 0.0003, 0.0005, 0.001), among(0, 0.001)];
  const last = among(1.045, 1.01, 1.012, 1.014, 1.016) + 0.001 * uniform();
  const wrong = uniform() < 0.08 ? 0.004 : 0;
  const end = 2 + readings / perDay;
  const rows = Array.from({ length: readings }, (_, index) => {
    const day = 2 + index / perDay + among(0, 0.1) * uniform();
    const gravity = Math.min(last + fallPerDay * (end - day) + deviation * normalOf(uniform) + (index === readings - 1 ? wrong : 0), 1.19);
    return [start + day, line === 0 ? gravity : Math.round(gravity / line) * line] as const;
  });
  if (uniform() < 0.5) rows.unshift([start + 1, 1.05]);
  if (uniform() < 0.3) rows.reverse();
  return [rows.map(([day]) => [day]), rows.map(([, gravity]) => [gravity]), null, among(null, 1.011), among(null, 1.05), among(null, null, start + Math.max(0.5, end - 4 * uniform()))];
}

it.skipIf(soffice === undefined)("LibreOffice gives the verdict of GYLE.LOG.STEADY from its plain formula, over logs that look like logs", async () => {
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
  for (const word of ["not begun", "working", "nearly", "steady", "stalled", "rising"]) expect(wanted.filter((text) => text.endsWith(`: ${word}`)).length, word).toBeGreaterThan(5);
}, 120_000);
