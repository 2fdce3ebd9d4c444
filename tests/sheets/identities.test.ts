import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { emptyTasting } from "../support/empty-tasting";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { gyleCalls } from "../../src/workbook/grid/formulas";
import { address, block } from "../../src/workbook/grid/plan/addresses";
import { plugIn, unpluggedCopies } from "../../src/workbook/exchange/unplug";
import { keptFormula } from "../../src/workbook/exchange/unplug/kept-formula";
import { anyBatch, batchOnItsWay, typedByHand, type Typed } from "../support/arbitrary-batch";
import { benchTimeout, insertOn, openBatchBench, sheetOf } from "../support/batch-bench";
import "../support/fixed-seed";
import { batchUnderWay, cellsOn, differentValues, notesOn, withoutAdded } from "../support/unplug-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => {
  bench.dispose();
});

const unpluggedName = "Batch unplugged";
type Cells = ReadonlyMap<string, unknown>;

/** Without numbers that nobody types, such as 1E-300 below zero. */
const typeable = (batch: BatchContents): BatchContents =>
  JSON.parse(JSON.stringify(batch), (_, value: unknown) => (typeof value === "number" ? Number(value.toFixed(7)) : value)) as BatchContents;

/** A workbook with this batch alone, and what hands typed over its input cells. */
async function openWith(contents: BatchContents, typed: readonly Typed[]): Promise<void> {
  await bench.load({
    id: `book-${crypto.randomUUID()}`,
    sheetOrder: ["one"],
    sheets: { one: { id: "one", name: "Sheet1", rowCount: 20, columnCount: 20 } },
  });
  await insertOn(bench, contents);
  const inputs = planBatch(contents).cells.filter(({ style }) => style === "input" || style === "inputText");
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem(contents.sheetName);
    for (const { place, content } of typed) sheet.getRange(inputs[place % inputs.length]?.address).formulas = [[content]];
    await context.sync();
  });
  await bench.calculate();
}

async function unplugAndLook(): Promise<{
  readonly before: Cells;
  readonly after: Cells;
  readonly formulas: Cells;
  readonly different: string[];
}> {
  const before = (await cellsOn("Batch")).values;
  await Excel.run((context) => unpluggedCopies(context, ["Batch"], { prices: true, standalone: false }));
  await bench.calculate();
  const { values: after, formulas } = await cellsOn(unpluggedName);
  const excused = await belowAnError(before);
  const different = withoutAdded(before, differentValues(before, after)).filter((text) => {
    const cell = text.split(":")[0] ?? "";
    return !excused.has(cell) && !roundedApart(String(before.get(cell) ?? ""), String(after.get(cell) ?? ""));
  });
  return { before, after, formulas, different };
}

/** Where an input of a call is an error the call has one answer, the error, in its first cell; the plain formulas below have it too. */
async function belowAnError(before: Cells): Promise<ReadonlySet<string>> {
  const cells = (await notesOn(unpluggedName)).flatMap((note) => {
    const { from, to } = block(keptFormula(note)?.block ?? "A1:A1");
    if (!String(before.get(`${from.row - 1},${from.column - 1}`)).startsWith("#")) return [];
    return Array.from({ length: to.row - from.row }, (_, row) =>
      before.has(`${from.row + row},${from.column - 1}`) ? "" : `${from.row + row},${from.column - 1}`,
    );
  });
  return new Set(cells.filter((cell) => cell !== ""));
}

/** Words with the same figures, of which one lies so near a half that the two sums, alike to 1e-6, were rounded apart. */
function roundedApart(was: string, is: string): boolean {
  const figure = /\d+(?:\.\d+)?/g;
  const [theirs, ours] = [was, is].map((text) => text.match(figure) ?? []);
  if (was === is || was.replace(figure, "0") !== is.replace(figure, "0") || /^#|^[\d.-]*$/.test(was)) return false;
  return (theirs ?? []).every(
    (number, index) => Math.abs(Number(number) - Number(ours?.[index])) <= 1.001 * 10 ** -(number.split(".")[1]?.length ?? 0),
  );
}

const plugBack = async () => {
  await Excel.run((context) => plugIn(context, unpluggedName, { leaveChanged: false }));
  await bench.calculate();
};

describe("any batch sheet, whatever was typed into it", () => {
  // Not made smaller when it fails: each try costs seconds.
  it(
    "shows the same unplugged, in its check lines too, and plugged in again it is what it was",
    async () => {
      let [figures, looks, errors] = [0, 0, 0];
      await fc.assert(
        fc.asyncProperty(
          fc.noShrink(fc.tuple(fc.oneof({ weight: 3, arbitrary: batchOnItsWay }, { weight: 1, arbitrary: anyBatch }), typedByHand)),
          async ([made, typed]) => {
            // What begins with "private" stays behind, as other tests hold.
            const contents = { ...typeable(made), sheetName: "Batch", tasting: { ...made.tasting, notes: "" } };
            await openWith(contents, typed);
            const [formulas, notes] = [(await cellsOn("Batch")).formulas, (await notesOn("Batch")).sort()];
            const seen = await unplugAndLook();
            expect(seen.different).toEqual([]);
            expect(
              [...seen.formulas.values()].filter(
                (formula) => typeof formula === "string" && formula.startsWith("=") && gyleCalls(formula).length > 0,
              ),
            ).toEqual([]);
            const { from, to } = block(sheetOf(bench, contents).rangeOf("check_states"));
            for (let row = from.row; row <= to.row; row += 1) {
              const [was, is] = ["Batch", unpluggedName].map((name) => bench.valueAt(name, address(row, from.column)));
              expect([row, is]).toEqual([row, was]);
              if (was !== "nothing found") looks += 1;
            }
            for (const value of seen.before.values()) {
              if (typeof value === "number") figures += 1;
              else if (String(value).startsWith("#")) errors += 1;
            }
            await plugBack();
            expect((await cellsOn(unpluggedName)).formulas).toEqual(formulas);
            expect((await notesOn(unpluggedName)).sort()).toEqual(notes);
          },
        ),
        { numRuns: Number(process.env["GYLEBOOK_RUNS"] ?? 10) },
      );
      // Figures, complaints and errors were among what was compared.
      expect(figures).toBeGreaterThan(1000);
      expect(looks).toBeGreaterThan(10);
      expect(errors).toBeGreaterThan(10);
    },
    Number(process.env["GYLEBOOK_RUNS"] ?? 10) * 30_000,
  );
});

/*
 * A call looks at its arguments one after the other: a wrong one before one that is not filled in is an error. The plain
 * formula once asked first whether all were filled in, so the check of the clock said "nothing found" where it had said "look".
 */
describe("a wrong figure before one that is not filled in", () => {
  it(
    "is an error unplugged as well, and the check line says so",
    async () => {
      const contents: BatchContents = { ...batchUnderWay("metric", "extract", "bottles"), sheetName: "Batch", tasting: emptyTasting };
      await openWith(contents, []);
      const sheet = sheetOf(bench, contents);
      await sheet.set({ pitch_temperature: 500, tap_temperature: "" });
      expect(sheet.get("chill_minutes")).toMatch(/^#/);
      const complaints = sheet.complaints();
      expect(complaints.map(({ label }) => label)).toContain("Clock of the brew day");
      expect((await unplugAndLook()).different).toEqual([]);
      expect(bench.valueAt(unpluggedName, sheet.cellOf("chill_minutes"))).toMatch(/^#/);
    },
    benchTimeout,
  );
});
