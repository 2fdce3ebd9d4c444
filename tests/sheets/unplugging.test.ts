import fc from "fast-check";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { registry } from "../../src/functions/registry";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { gyleCalls } from "../../src/workbook/grid/formulas";
import { address, position } from "../../src/workbook/grid/plan/addresses";
import { batchContents } from "../../src/workbook/batch/read/batch-contents";
import { readBatchSheet } from "../../src/workbook/batch/read/batch-sheets";
import { PlugInRefused, plugIn, unpluggedCopies, UnplugRefused, type UnpluggedSheet } from "../../src/workbook/exchange/unplug";
import { arbitraryCall, typedCall } from "../support/arbitrary-call";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";
import "../support/fixed-seed";
import { batchUnderWay, cellsOn, differentValues, notesOn, withoutAdded } from "../support/unplug-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());
// An empty workbook for each, in one grid: starting the grid takes longer than most of what follows.
beforeEach(() => bench.load({ id: `book-${crypto.randomUUID()}`, sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } }));

const choices = { prices: true, standalone: false };
const unplug = async (names: readonly string[] = ["Batch 1"], chosen = choices): Promise<UnpluggedSheet[]> => {
  const made = await Excel.run((context) => unpluggedCopies(context, names, chosen));
  await bench.calculate();
  return made;
};
const plugBack = async (sheetName: string, leaveChanged = false) => {
  const result = await Excel.run((context) => plugIn(context, sheetName, { leaveChanged }));
  await bench.calculate();
  return result;
};
const type = async (sheetName: string, cells: Readonly<Record<string, string | number>>) => {
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem(sheetName);
    for (const [cell, value] of Object.entries(cells)) sheet.getRange(cell).formulas = [[value]];
    await context.sync();
  });
  await bench.calculate();
};
const copyName = "Batch 1 unplugged";
const withGyle = (formulas: ReadonlyMap<string, unknown>) =>
  [...formulas].filter(([, formula]) => typeof formula === "string" && formula.startsWith("=") && gyleCalls(formula).length > 0);

/** Named figures that a member's typing must move, on every kind of batch. */
const follows = [
  "timeline",
  "ibu_plan",
  "og_plan",
  "fg_plan",
  "abv_plan",
  "colour_plan",
  "og_reached",
  "og",
  "fg",
  "fg_expected",
  "abv_reached",
  "energy",
  "water_collect",
  "boils_at",
  "kettle_gravity",
  "chill_minutes",
  "boil_up_minutes",
  "sanitiser_dose",
  "cells_wanted",
  "packs_to_pitch",
  "gravities",
  "verdict",
  "residual_gas",
  "sugar_mass",
  "keg_pressure",
  "bottle_pressure",
  "bottles_ready",
  "first_taste",
  "pressure_verdict",
];
/** Six digits of a number; texts as they are. */
const shown = (value: unknown): unknown => (typeof value === "number" ? Number(value.toPrecision(6)) : (value ?? ""));
const formulaIn = (formulas: ReadonlyMap<string, unknown>, cell: string): unknown => {
  const { row, column } = position(cell);
  return formulas.get(`${row - 1},${column - 1}`);
};

describe.each([
  ["us", "extract", "bottles"],
  ["metric", "all-grain", "keg"],
  ["metric", "extract", "bottles"],
  ["us", "all-grain", "keg"],
] as const)("a %s %s batch for %s", (units, method, into) => {
  it(
    "unplugged shows the same, calculates on, and plugged in again is what it was",
    async () => {
      const sheet = await insertOn(bench, batchUnderWay(units, method, into));
      const before = await cellsOn("Batch 1");
      const notesBefore = await notesOn("Batch 1");
      const [made] = await unplug();
      expect(await cellsOn("Batch 1")).toEqual(before);
      expect(made?.plain).toBeGreaterThan(25);

      const after = await cellsOn(copyName);
      expect(withGyle(after.formulas)).toEqual([]);
      // The private note in the notes' cell stays behind; all else shows what it showed.
      const missing = withoutAdded(before.values, differentValues(before.values, after.values));
      expect(missing.filter((text) => !text.includes("Aunt Hilda"))).toEqual([]);
      expect(missing).toHaveLength(1);

      // What a member types goes through both sheets alike, wherever a formula still calculates.
      const typed = {
        [sheet.cellOf("og_reading")]: 1.058,
        [sheet.cellOf("altitude")]: 700,
        [sheet.cellOf("boil_off")]: 3.1,
        [sheet.cellOf("attenuation")]: 71,
        [sheet.cellOf("carbonation")]: 2.7,
      };
      const back = Object.fromEntries(Object.keys(typed).map((cell) => [cell, bench.valueAt("Batch 1", cell) as number]));
      await type("Batch 1", typed);
      await type(copyName, typed);
      for (const name of follows) {
        const [first = "", last = first] = sheet.rangeOf(name).split(":");
        for (const cell of [first, last])
          expect([name, shown(bench.valueAt(copyName, cell))]).toEqual([name, shown(bench.valueAt("Batch 1", cell))]);
      }
      // What has no plain form stands still, each with its reason, and the sheet says so.
      expect(bench.valueAt(copyName, "G1")).toMatch(/^Out of date, unplugged since 20\d\d-\d\d-\d\d: .*curve/);
      const ids = (made?.values ?? []).flatMap(({ cell }) => gyleCalls(String(formulaIn(before.formulas, cell))).map(({ id }) => id));
      expect([...new Set(ids)].filter((id) => !["BEER.HEX", "GAUGE.SPREAD", "LOG.FORECAST", "LOG.CURVE", "BEER.SRM"].includes(id))).toEqual(
        [],
      );

      await type(copyName, back);
      await plugBack(copyName);
      const plugged = await cellsOn(copyName);
      const privateCell =
        [...before.formulas].find(([, content]) => typeof content === "string" && content.includes("Aunt Hilda"))?.[0] ?? "";
      expect(privateCell).not.toBe("");
      before.formulas.delete(privateCell);
      expect(plugged.formulas).toEqual(before.formulas);
      expect((await notesOn(copyName)).sort()).toEqual(notesBefore.sort());
    },
    benchTimeout,
  );
});

describe("unplugging", () => {
  beforeEach(async () => {
    await insertOn(bench, batchUnderWay("metric", "extract", "bottles"));
  }, benchTimeout);

  it(
    "needs five round trips for a sheet, and four to plug it in, of which the last clears away",
    async () => {
      const { faults } = bench.host;
      const start = faults.syncCount;
      await unplug();
      expect(faults.syncCount - start).toBe(5);
      const middle = faults.syncCount;
      await plugBack(copyName);
      expect(faults.syncCount - middle).toBe(4);
    },
    benchTimeout,
  );

  it(
    "leaves private notes and prices behind, and marks the copy as no batch of its own",
    async () => {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Batch 1");
        sheet.notes.add("A5", "PRIVATE ask Bert about his yeast");
        sheet.notes.add("B6", "Everybody may read this");
        await context.sync();
      });
      const [made] = await unplug(["Batch 1"], { prices: false, standalone: false });
      expect(made?.privateNotes).toBe(1);
      const notes = await notesOn(copyName);
      expect(notes).toContain("Everybody may read this");
      expect(notes.filter((text) => text.includes("Bert"))).toEqual([]);
      expect(await notesOn("Batch 1")).toContain("PRIVATE ask Bert about his yeast");
      const { names, costs } = await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem(copyName);
        sheet.names.load("items/name");
        const ranges = ["malt_cost", "hop_cost", "yeast_cost", "cost_plan", "cost_each"].map((name) => sheet.getRange(name).load("values"));
        await context.sync();
        return { names: sheet.names.items.map(({ name }) => name), costs: ranges.flatMap(({ values }) => (values as unknown[][]).flat()) };
      });
      expect(costs.every((value) => value === "")).toBe(true);
      expect(names).toContain("gylebook_unplugged");
      expect(names).not.toContain("gylebook");
    },
    benchTimeout,
  );

  it(
    "leaves private words of the batch sheet's cells behind wherever they show: in a step, on the clock, under tasting",
    async () => {
      const sheet = await Excel.run((context) => readBatchSheet(context, "Batch 1"));
      if (!sheet) throw new Error("no batch");
      const contents = batchContents(sheet);
      const words = (secret: string): Partial<BatchContents> => ({
        steps: [{ what: secret, part: "before", minutes: 5, caution: `- ${secret}`, why: `(${secret})` }, ...(contents.steps ?? [])],
        tasting: { ...contents.tasting, looks: { score: 4, words: secret }, notes: "Privateer ale next" },
        salts: ` ${secret.toUpperCase()}`,
      });
      await insertOn(bench, { ...contents, ...words("Private 7781 from my uncle"), id: "p1", sheetName: "Secret" });
      const shows = async (name: string) => [...(await cellsOn(name)).values.values()].filter((value) => String(value).includes("7781"));
      // Five cells were typed, and the clock repeats two of them.
      expect((await shows("Secret")).length).toBeGreaterThan(5);
      // A formula that says such words is the brewer's own, too.
      await type("Secret", { [sheet.range("style").split(":")[0] ?? ""]: '="Private: "&"7781"' });
      await unplug(["Secret"]);
      expect(await shows("Secret unplugged")).toEqual([]);
      expect([...(await cellsOn("Secret unplugged")).formulas.values()].filter((value) => String(value).includes("7781"))).toEqual([]);
      expect([...(await cellsOn("Secret unplugged")).values.values()]).toContain("Privateer ale next");
      expect((await notesOn("Secret unplugged")).filter((text) => text.includes("7781"))).toEqual([]);
    },
    benchTimeout,
  );

  it(
    "names the cell that was typed over, and leaves it when told to",
    async () => {
      await unplug();
      const gyle = withGyle((await cellsOn("Batch 1")).formulas).length;
      const [spilled, single] = await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Batch 1");
        const ranges = ["gravities", "boils_at"].map((name) => sheet.getRange(name).load("address"));
        await context.sync();
        return ranges.map(({ address }) => address.slice(address.lastIndexOf("!") + 1));
      });
      const inSpill = `F${Number(/\d+/.exec(spilled ?? "")?.[0]) + 2}`;
      await type(copyName, { [inSpill]: 1.0181, [single ?? ""]: 99 });
      const before = await cellsOn(copyName);
      const refused = await plugBack(copyName).catch((problem: unknown) => problem);
      expect(refused).toBeInstanceOf(PlugInRefused);
      expect((refused as PlugInRefused).conflicts.map(({ cell }) => cell).sort()).toEqual([inSpill, single].sort());
      expect((refused as PlugInRefused).message).toContain(`${inSpill} was typed over`);
      expect(await cellsOn(copyName)).toEqual(before);

      const done = await plugBack(copyName, true);
      expect(done.restored).toBe(gyle - 2);
      expect(bench.valueAt(copyName, inSpill)).toBe(1.0181);
      expect(bench.valueAt(copyName, single ?? "")).toBe(99);
    },
    benchTimeout,
  );

  it(
    "refuses formulas whose cells have moved",
    async () => {
      await unplug();
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem(copyName).getRange("3:3").insert("Down");
        await context.sync();
      });
      await bench.calculate();
      await expect(plugBack(copyName)).rejects.toThrow("is no longer where it was");
    },
    benchTimeout,
  );

  it(
    "refuses a sheet that is not there, and a sheet with nothing to plug in",
    async () => {
      await expect(unplug(["Batch 9"])).rejects.toBeInstanceOf(UnplugRefused);
      await expect(plugBack("Sheet1")).rejects.toThrow("has no formulas to plug in");
    },
    benchTimeout,
  );
});

describe("a sheet of somebody's own", () => {
  it(
    "lifted calls, calls within native formulas, spills that others use",
    async () => {
      await type("Sheet1", {
        A1: "OG",
        B1: "FG",
        A2: 1.05,
        A3: 1.06,
        A4: 1.045,
        B2: 1.01,
        B3: 1.012,
        B4: "",
        C2: "=GYLE.BEER.ABV(A2:A4,B2:B4)",
        E2: "=SUM(C2#)",
        F2: '=IF(A2>1.04,"strong: "&TEXT(GYLE.BEER.ABV(A2,B2),"0.0"),"")',
        G2: "=GYLE.BEER.ABV(GYLE.WORT.SG(12.4),GYLE.WORT.SG(A9))",
        A9: 2.5,
        H2: "=GYLE.BEER.HEX(8)",
        I2: "=SUM(GYLE.BEER.ABV(A2:A4,B2:B4))",
        J2: "=gyle.wort.mix(K2:K3,A2:A3)",
        K2: 10,
        K3: 12,
        L2: '=GYLE.BEER.ABV(A2,"")',
        M2: '=GYLE.PACK.PRIMING(19,2.4,20,"sugar")',
      });
      const before = await cellsOn("Sheet1");
      const [made] = await unplug(["Sheet1"]);
      const after = await cellsOn("Sheet1 unplugged");
      // The bench's own engine does not know C2#; Excel does.
      expect(
        withoutAdded(before.values, differentValues(before.values, after.values)).filter((text) => !text.startsWith("1,4: #")),
      ).toEqual([]);
      expect(withGyle(after.formulas)).toEqual([]);
      expect(after.formulas.get("1,4")).toBe("=SUM(C2:C4)");
      expect(made?.values.map(({ cell }) => cell)).toEqual(["I2"]);
      await type("Sheet1 unplugged", { B4: 1.011 });
      expect(bench.valueAt("Sheet1 unplugged", "C4")).toBeCloseTo(4.5, 0);
      const says = async () =>
        [...(await cellsOn("Sheet1 unplugged")).values.values()].find((text) => /^(Unplugged|Out of date)/.test(String(text)));
      expect(await says()).toMatch(/^Out of date, unplugged since 20\d\d-\d\d-\d\d: I2$/);
      await type("Sheet1 unplugged", { B4: "" });
      expect(await says()).toMatch(/^Unplugged; stands still since 20\d\d-\d\d-\d\d: I2$/);
      await plugBack("Sheet1 unplugged");
      expect((await cellsOn("Sheet1 unplugged")).formulas).toEqual(before.formulas);
    },
    benchTimeout,
  );
});

/** Where chance puts a call: by itself, or within a native formula; in capitals and not; as somebody types it. */
const wrapped = fc.constantFrom(
  (call: string) => `=${call}`,
  (call: string) => `=${call.toLowerCase()}`,
  (call: string) => `=IF(1>0, ${call} ,"")`,
  (call: string) => `=IFERROR(${call},"none")`,
  (call: string) => `=TEXT(${call},"0.00")&" of "&${call}`,
  (call: string) => `=SUM(${call},1)`,
);

/** A sheet on which every function is called once, with arguments by chance, in cells and written in, each with room to spill. */
const anySheet = fc
  .tuple(
    ...registry.map((descriptor, index) =>
      fc.tuple(arbitraryCall(descriptor), fc.constantFrom("us", "metric"), fc.boolean(), wrapped).map(([core, units, isInline, wrap]) => {
        const row = 1 + 40 * index;
        const cells: Record<string, string | number> = {};
        let column = 30;
        const written = typedCall(descriptor, core, units).map((value) => {
          if (value === null) return "";
          if (!Array.isArray(value) && isInline) return typeof value === "number" ? String(value) : `"${String(value)}"`;
          const lines = (Array.isArray(value) ? value : [[value]]) as (number | string | null)[][];
          const at = (right: number, below: number) => address(row + below, column + right);
          lines.forEach((line, below) =>
            line.forEach((cell, right) => {
              if (cell !== null && cell !== "") cells[at(right, below)] = cell;
            }),
          );
          const reference =
            lines.length * (lines[0]?.length ?? 1) > 1 ? `${at(0, 0)}:${at((lines[0]?.length ?? 1) - 1, lines.length - 1)}` : at(0, 0);
          column += lines[0]?.length ?? 1;
          return reference;
        });
        return { ...cells, [`A${row}`]: wrap(`GYLE.${descriptor.id}(${written.join(",").replace(/,+$/, "")})`) };
      }),
    ),
  )
  .map((sheets): Record<string, string | number> => Object.assign({}, ...sheets) as Record<string, string | number>);

describe("unplugging and plugging in again", () => {
  // Not made smaller when it fails: each try costs seconds, and the formula that differs is in the message anyway.
  it(
    "is the identity on any sheet, whichever functions stand on it and however they were typed",
    async () => {
      let [plain, values] = [0, 0];
      await fc.assert(
        fc.asyncProperty(fc.noShrink(anySheet), async (cells) => {
          await bench.load({
            id: `book-${crypto.randomUUID()}`,
            sheetOrder: ["one"],
            sheets: { one: { id: "one", name: "Sheet1", rowCount: 5000, columnCount: 60 } },
          });
          await type("Sheet1", cells);
          const before = await cellsOn("Sheet1");
          expect(withGyle(before.formulas)).toHaveLength(registry.length);
          const [made] = await unplug(["Sheet1"]);
          const after = await cellsOn("Sheet1 unplugged");
          expect(withGyle(after.formulas)).toEqual([]);
          plain += made?.plain ?? 0;
          values += made?.values.length ?? 0;
          await plugBack("Sheet1 unplugged");
          const back = await cellsOn("Sheet1 unplugged");
          expect(back.formulas).toEqual(before.formulas);
          expect(await notesOn("Sheet1 unplugged")).toEqual([]);
          expect((await cellsOn("Sheet1")).formulas).toEqual(before.formulas);
        }),
        { numRuns: 2 },
      );
      // Both ways of unplugging were tried many times over.
      expect(plain).toBeGreaterThan(60);
      expect(values).toBeGreaterThan(10);
    },
    benchTimeout * 2,
  );
});
