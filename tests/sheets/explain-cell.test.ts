import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { CellError } from "../../src/functions/cell-error";
import { checkWorkbook } from "../../src/workbook/care/check/check-workbook";
import { explainActiveCell } from "../../src/workbook/care/explain/explain-cell";
import { evaluate, OnlyTheSheetKnows } from "../../src/workbook/grid/evaluate/evaluate";
import { parsed } from "../../src/workbook/grid/evaluate/parse";
import { sheetsByName, worldOfSheets } from "../../src/workbook/grid/evaluate/sheets-world";
import { readAllSheets } from "../../src/workbook/grid/read/read-sheets";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../support/batch-bench";

const mashed = exampleBatch({
  id: "a",
  sheetName: "Mashed",
  batchName: "Mashed",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
});
let bench: HeadlessBench;
let batch: BatchSheet;
beforeAll(async () => {
  bench = await openBatchBench();
  batch = await insertOn(bench, firstExtractBatch());
  await insertOn(bench, mashed);
}, benchTimeout);
afterAll(() => bench.dispose());

/** Types formulas and values into the free sheet. */
async function type(cells: Readonly<Record<string, string | number>>): Promise<void> {
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    for (const [address, content] of Object.entries(cells)) sheet.getRange(address).formulas = [[content]];
    await context.sync();
  });
  await bench.calculate();
}

const explain = (sheet: string, address: string) =>
  Excel.run(async (context) => {
    const target = context.workbook.worksheets.getItem(sheet);
    target.activate();
    target.getRange(address).select();
    await context.sync();
    return explainActiveCell(context);
  });

describe("working out what the engine works out", () => {
  it("agrees with the engine in every formula of the batch sheets that it understands, and understands most", async () => {
    const sheets = await Excel.run(readAllSheets);
    let agreed = 0;
    let left = 0;
    for (const sheet of sheets) {
      for (const { address, value, formula } of sheet.filled()) {
        const tree = typeof formula === "string" && formula.startsWith("=") ? parsed(formula) : undefined;
        if (!tree) continue;
        try {
          const [[first = null] = []] = evaluate(tree, worldOfSheets(sheetsByName(sheets), new Map(), sheet.sheetName));
          const own = first instanceof CellError ? first.code : (first ?? 0);
          if (typeof own === "number") expect(own, `${sheet.sheetName}!${address} ${formula}`).toBeCloseTo(Number(value), 8);
          else expect(own, `${sheet.sheetName}!${address} ${formula}`).toBe(value);
          agreed += 1;
        } catch (problem) {
          if (!(problem instanceof OnlyTheSheetKnows)) throw problem;
          left += 1;
        }
      }
    }
    expect(agreed).toBeGreaterThan(300);
    expect(left).toBeLessThan(agreed / 4);
  });
});

describe("explaining a cell", () => {
  it("shows each argument with its unit and present value, the answer and its ±", async () => {
    const { kind, names, calls, problem } = await explain("Batch 1", batch.cellOf("abv_plan"));
    expect([kind, names, problem]).toEqual(["gyle", ["abv_plan"], undefined]);
    const [abv] = calls;
    expect(abv?.id).toBe("BEER.ABV");
    expect(abv?.arguments.map(({ name, unit, typed }) => [name, unit, typed])).toEqual([
      ["original_gravity", "SG", "og_plan"],
      ["final_gravity", "SG", "fg_plan"],
      ["method", "", ""],
      ["primed", "volumes CO2", ""],
    ]);
    expect(Number(abv?.arguments[0]?.shown)).toBeCloseTo(batch.number("og_plan"), 4);
    expect(abv?.arguments[0]?.place).toEqual({ sheet: "Batch 1", range: batch.cellOf("og_plan") });
    expect(abv?.arguments[2]?.shown).toMatch(/^not given/);
    expect(abv?.answer).toBeCloseTo(batch.number("abv_plan"), 9);
    // 131.25 × √2 × 0.002 is the ± of the simplest equation; the one used differs a little.
    expect(abv?.spread?.value).toBeCloseTo(0.371, 1);
    expect(abv?.spread?.assumed).toEqual(["original_gravity ± 0.002 SG", "final_gravity ± 0.002 SG"]);
  });

  it("finds calls within native formulas and within one another, and tells tables", async () => {
    const energy = await explain("Batch 1", batch.cellOf("energy_now"));
    expect(energy.calls.map(({ id }) => id)).toEqual(["BEER.ENERGY"]);
    const unit = await explain("Batch 1", batch.cellOf("abv_spread"));
    expect(unit.calls[0]).toMatchObject({ id: "GAUGE.SPREAD", answer: expect.closeTo(0.37, 1) });
    expect(unit.calls[0]?.arguments[1]?.shown).toContain("1.0");
    const gravity = await explain("Batch 1", batch.cellOf("og_plan"));
    expect(gravity.calls[0]?.arguments[0]?.table?.length).toBe(4);
    expect(gravity.calls[0]?.answer).toBeCloseTo(batch.number("og_plan"), 9);
    await type({ A1: "=LET(p,GYLE.WORT.SG(12.4),GYLE.BEER.ABV(p,GYLE.YEAST.FINISH(p,75)))" });
    const nested = await explain("Sheet1", "A1");
    expect(nested.calls.map(({ id, depth, shown }) => [id, depth, shown])).toEqual([
      ["WORT.SG", 1, "1.0501"],
      ["BEER.ABV", 1, expect.stringMatching(/^5\./)],
      ["YEAST.FINISH", 2, expect.stringMatching(/^1\.012/)],
    ]);
    expect(nested.calls[1]?.answer).toBeCloseTo(Number(bench.valueAt("Sheet1", "A1")), 9);
  });

  it("shows the formula as a German Excel writes it, and works from what it keeps", async () => {
    await type({ A1: "=IF(TRUE,GYLE.BEER.ABV(1.048,1.010),0.5)" });
    bench.host.behave({ locale: "de-DE" });
    const { written, formula, shown, calls } = await explain("Sheet1", "A1");
    bench.host.behave({});
    expect([written, formula]).toEqual(["=WENN(WAHR;GYLE.BEER.ABV(1,048;1,010);0,5)", "=IF(TRUE,GYLE.BEER.ABV(1.048,1.010),0.5)"]);
    expect([shown.slice(0, 3), calls[0]?.arguments[0]?.typed]).toEqual(["5,0", "1.048"]);
  });

  it("speaks of the cell itself where a spill beside it is blocked", async () => {
    await type({ K1: "=GYLE.WORT.PLATO(L1:L3)", L1: 1.05, L2: 1.04, L3: 1.03, K3: 7 });
    expect(bench.valueAt("Sheet1", "K1")).toBe("#SPILL!");
    const blocking = await explain("Sheet1", "K3");
    expect([blocking.kind, blocking.shown, blocking.formula]).toEqual(["constant", "7", ""]);
    const within = await explain("Sheet1", "K2");
    expect([within.kind, within.formula, within.spilledFrom]).toEqual(["empty", "", undefined]);
    const blocked = await explain("Sheet1", "K1");
    expect(blocked.problem?.what).toContain("more cells than are empty");
    // Another formula of one's own in its way is explained as such.
    await type({ K2: "=GYLE.WORT.PLATO(1.05)" });
    const ours = await explain("Sheet1", "K2");
    expect([ours.formula, ours.spilledFrom, ours.problem]).toEqual(["=GYLE.WORT.PLATO(1.05)", undefined, undefined]);
    await type({ K1: "", K2: "", K3: "" });
  });

  it.each([
    ["=GYLE.BEER.ABV(1,048;1,010)", "=GYLE.BEER.ABV(1.048, 1.010)"],
    ["=GYLE.BEER.ABV(1.048;1.010)", "=GYLE.BEER.ABV(1.048, 1.010)"],
  ])("names exchanged commas and semicolons as the cause: %s", async (formula, asTyped) => {
    await type({ K1: formula });
    const { problem, calls } = await explain("Sheet1", "K1");
    expect(problem?.what).toContain("Commas and semicolons are exchanged");
    // What the arguments seem to be, misread as they are, would only lead astray.
    expect(calls).toMatchObject([{ id: "BEER.ABV", exists: true, arguments: [], shown: "" }]);
    expect(calls[0]?.problem).toBeUndefined();
    expect(problem?.remedy).toBe(`Type ${asTyped}`);
    const report = await Excel.run((context) => checkWorkbook(context, {}, 46300));
    const found = report.sheets.flatMap(({ findings }) => findings).filter(({ sheet, address }) => sheet === "Sheet1" && address === "K1");
    expect(found.map(({ words }) => words)).toEqual([`${problem?.what} ${problem?.remedy}`]);
    await type({ K1: "" });
  });

  it("explains a cell that an answer spills into by its own row", async () => {
    const first = batch.cellOf("gravities");
    const third = first.replace(/\d+/, (row) => String(Number(row) + 2));
    const { spilledFrom, calls } = await explain("Batch 1", third);
    expect(spilledFrom).toBe(first);
    expect(calls[0]?.arguments[0]?.shown).toMatch(/^1\.013 in this row/);
    expect(calls[0]?.answer).toBeCloseTo(Number(bench.valueAt("Batch 1", third)), 9);
    expect(calls[0]?.spread?.value).toBeGreaterThan(0.0019);
  });

  it("says what is wrong and what to do about it", async () => {
    await type({
      A1: 12.4,
      A2: 1.01,
      A3: "=GYLE.BEER.ABV(A1,A2)",
      A4: "=GYLE.BEER.ABV(A3,A2)",
      A5: "5 gal",
      A6: "=GYLE.CLEAN.DOSE(A5,4)",
      A7: "=GYLE.BEER.ABW(A9)",
    });
    const plato = await explain("Sheet1", "A3");
    expect(plato.calls[0]?.problem).toMatchObject({
      what: expect.stringMatching(/^original_gravity is 12\.4.*looks like °P.*\.$/),
      place: { sheet: "Sheet1", range: "A1" },
    });
    expect(plato.calls[0]?.arguments.map(({ isWrong }) => isWrong)).toEqual([true, false, false, false]);
    expect((await explain("Sheet1", "A4")).calls[0]?.problem).toMatchObject({
      what: expect.stringContaining("original_gravity shows #VALUE! itself"),
      place: { range: "A3" },
    });
    expect((await explain("Sheet1", "A6")).calls[0]?.problem?.remedy).toContain("in the unit that is asked for");
    expect((await explain("Sheet1", "A7")).calls[0]?.problem?.what).toContain("not filled in yet");
  });

  it("knows what #NAME? means: a name that is not there, a function that is not there, or a formula entered too early", async () => {
    await type({ A1: "=GYLE.BEER.ABV(ogg,1.01)", A2: "=GYLE.BEER.ABC(1.05,1.01)", A3: "=_xldudf_GYLE_BEER_ABV(1.05,1.01)" });
    expect((await explain("Sheet1", "A1")).problem?.what).toContain("no name ogg");
    const [unknown] = (await explain("Sheet1", "A2")).calls;
    expect(unknown).toMatchObject({ exists: false, problem: { remedy: "Did you mean GYLE.BEER.ABV?" } });
    const early = await explain("Sheet1", "A3");
    expect(early.calls[0]).toMatchObject({ id: "BEER.ABV", exists: true, answer: expect.closeTo(5.3, 1) });
    expect(early.problem?.remedy).toContain("F2");
  });

  it("says plainly what has no GYLE formula", async () => {
    await type({ A1: 5, A2: "=A1*2", A3: "" });
    expect([(await explain("Sheet1", "A1")).kind, (await explain("Sheet1", "A2")).kind, (await explain("Sheet1", "A3")).kind]).toEqual([
      "constant",
      "native",
      "empty",
    ]);
  });

  it("reads columns of tables, and needs at most three round trips", async () => {
    await type({
      D1: "Volume",
      E1: "Dose",
      D2: 20,
      D3: 10,
      E2: "=GYLE.CLEAN.DOSE([@Volume],4)",
      F1: "=GYLE.CLEAN.DOSE(Buckets[Volume],4)",
    });
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").tables.add("D1:D3", true).name = "Buckets";
      await context.sync();
    });
    await bench.calculate();
    const before = bench.host.faults.syncCount;
    const { calls } = await explain("Sheet1", "F1");
    expect(bench.host.faults.syncCount - before).toBeLessThanOrEqual(4);
    expect(calls[0]?.arguments[0]?.shown).toContain("20");
    expect(calls[0]?.answer).toBe(80);
  });
});

describe("a line of the printed checks", () => {
  it(
    "is explained by the rule that speaks, in the sheet's own words",
    async () => {
      await batch.set({ top_up: 90 });
      const at = batch
        .rangeOf("check_states")
        .split(":")[0]!
        .replace(/\d+/, (row) => String(Number(row) + 1));
      const { kind, check } = await explain(batch.sheetName, at);
      expect(kind).toBe("native");
      expect(check).toMatchObject({ label: "Volumes", state: "look", rule: "volumes.top-up-whole" });
      expect(check?.words).toBe(batch.complaints().find(({ label }) => label === "Volumes")?.text);
      expect(check?.cells.map(({ name, shown }) => [name, shown])).toEqual([
        ["top_up", "90"],
        ["volume", "5"],
      ]);
      await batch.set({ top_up: 2.5 });
    },
    benchTimeout,
  );
});
