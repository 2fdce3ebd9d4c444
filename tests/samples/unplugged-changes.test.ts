import fc from "fast-check";
import { writeXlsx, type Cell } from "hucre/xlsx";
import { beforeAll, describe, expect, it } from "vitest";
import { toFileFormula } from "../../src/excel-stand-in/xlsx/formula-translation";
import { CellError } from "../../src/functions/cell-error";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { block, position } from "../../src/workbook/grid/plan/addresses";
import type { SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";
import { batchOnItsWay } from "../support/arbitrary-batch";
import { cellsOfRange, drawnChange, madeFrom, type TypedCells } from "../support/drawn-changes";
import { uniformDraws } from "../support/fermentation-truths";
import { allShownByLibreOffice, isErrorShown, numberShown, soffice } from "../support/libre-office";
import { paperGrid } from "../support/paper-grid";
import { paperUnplugged } from "../support/paper-unplugged";

/*
 * Somebody without the add-in opens an unplugged sheet and changes it: two hundred times, in drawn sheets, each calculated anew by
 * LibreOffice. Every cell must show what the plugged sheet shows with the same things typed in, by our functions; what cannot follow
 * must say so at the top of the sheet, or be #N/A.
 */
const batches = fc.sample(batchOnItsWay, { numRuns: 20, seed: 47 });
const changesOfEach = 10;
const sheetsInAFile = 50;

interface Changed {
  readonly sheetName: string;
  readonly plan: SheetPlan;
  readonly copy: SheetPlan;
  readonly typed: TypedCells;
}

const changed: Changed[] = batches.flatMap((batch, index) => {
  const uniform = uniformDraws(200 + index);
  return Array.from({ length: changesOfEach }, (_, turn): Changed => {
    const plan = planBatch(batch);
    return { sheetName: `S${index}x${turn}`, plan, copy: plan, typed: drawnChange(plan, uniform) };
  });
});
let shown = new Map<string, string[][]>();

beforeAll(async () => {
  if (soffice === undefined) return;
  // One copy of each sheet, as somebody gets it; the changes come afterwards.
  const copies = batches.map((batch) => paperUnplugged(planBatch(batch)));
  changed.forEach((one, index) => Object.assign(one, { copy: copies[Math.floor(index / changesOfEach)] }));
  for (let from = 0; from < changed.length; from += sheetsInAFile) {
    const some = changed.slice(from, from + sheetsInAFile);
    const bytes = await writeXlsx({
      sheets: some.map(({ sheetName, copy, typed }) => ({ name: sheetName, rows: [], cells: cellsOf(copy, typed) })),
      namedRanges: some.flatMap(namesOf),
    });
    shown = new Map([...shown, ...allShownByLibreOffice(bytes)]);
  }
}, 900_000);

function cellsOf(plan: SheetPlan, typed: TypedCells): Map<string, Partial<Cell>> {
  const contents = new Map([...plan.cells.map(({ address, content }) => [address, content] as const), ...typed]);
  return new Map(
    [...contents].flatMap(([address, content]): [string, Partial<Cell>][] => {
      if (content === "") return [];
      const { row, column } = position(address);
      const cell: Partial<Cell> =
        typeof content === "number"
          ? { value: content, type: "number" }
          : content.startsWith("=")
            ? { formula: toFileFormula(content) }
            : { value: content.replace(/^'/, ""), type: "string" };
      return [[`${row - 1},${column - 1}`, cell]];
    }),
  );
}

type NamedRange = NonNullable<Parameters<typeof writeXlsx>[0]["namedRanges"]>[number];
const namesOf = ({ sheetName, plan }: Changed): NamedRange[] =>
  plan.names.map(({ name, range }) => ({
    name,
    range: `${sheetName}!${range.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2")}`,
    scope: sheetName,
  }));

/** Each plain formula is right to 1e-6 of its size; alcohol makes 130 times as much of a difference in gravity as the gravity itself. */
const tolerance = 1e-5;

/** How a cell differs, or "". */
function difference(ours: unknown, theirs: string): string {
  const agrees =
    ours instanceof CellError
      ? isErrorShown(theirs)
      : typeof ours === "number"
        ? Math.abs(numberShown(theirs) - ours) <= tolerance * Math.max(1, Math.abs(ours))
        : theirs === (typeof ours === "boolean" ? String(ours).toUpperCase() : (ours ?? ""));
  return agrees ? "" : `${ours instanceof CellError ? ours.code : String(ours)} became ${theirs}`;
}

describe.skipIf(soffice === undefined)("changes in unplugged sheets, calculated by LibreOffice", () => {
  let [cells, old] = [0, 0];

  it.each(batches.map((_, index) => index))("sheet %i", (index) => {
    for (const { sheetName, plan, typed } of changed.slice(index * changesOfEach, (index + 1) * changesOfEach)) {
      const ours = paperGrid(plan, typed);
      const theirs = shown.get(sheetName) ?? [];
      const isOld = (theirs[0]?.[6] ?? "").startsWith("Out of date");
      old += isOld ? 1 : 0;
      const still = isOld ? madeFrom(plan, ["curve", "forecast"]) : new Set<string>();
      // The ± of an alcohol that bends too much: the call draws a thousand values then, the copy says #N/A.
      const refuses = madeFrom(plan, ["abv_spread"]);
      const differences = plan.cells
        .flatMap(({ address, spillsTo }) => (spillsTo === undefined ? [address] : cellsOfRange(`${address}:${spillsTo}`)))
        .filter((address) => address !== "G1" && !still.has(address))
        .flatMap((address) => {
          const { row, column } = block(address).from;
          cells += 1;
          const found = difference(ours.at(address), theirs[row - 1]?.[column - 1] ?? "");
          return found === "" || (refuses.has(address) && found.endsWith("became #N/A")) ? [] : [`${address}: ${found}`];
        });
      expect([sheetName, [...typed], differences]).toEqual([sheetName, [...typed], []]);
    }
  });

  it("are two hundred, of hundreds of thousands of cells; some make a forecast out of date, and not all", () => {
    expect(changed).toHaveLength(200);
    expect(cells).toBeGreaterThan(200_000);
    expect(old).toBeGreaterThan(10);
    expect(old).toBeLessThan(190);
  });
});
