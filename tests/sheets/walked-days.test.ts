import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { block, columnLetters } from "../../src/workbook/grid/plan/addresses";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet, type Shown } from "../support/batch-bench";
import { troubles, type Day, type Line } from "../support/kettle";

/* Made-up brew days, walked on the sheet as somebody with a kettle would: see tests/support/kettle.ts. */
const choices = { id: "walked", batchName: "Any", brewedOn: 46270, topUp: 0 } as const;

let bench: HeadlessBench;
const sheets: BatchSheet[] = [];
beforeAll(async () => {
  bench = await openBatchBench();
  for (const units of ["us", "metric"] as const) {
    for (const method of ["extract", "all-grain"] as const) {
      const batch = exampleBatch({ ...choices, sheetName: `${method} ${units}`, units, method, volume: units === "us" ? 5 : 20 });
      const hops = Array.from({ length: 6 }, (_, index) => ({
        ...batch.hops[0]!,
        hop: ["Alder", "Birch", "Cedar", "Dogwood", "Elder", "Fir"][index]!,
        minutes: 0,
      }));
      sheets.push(await insertOn(bench, { ...batch, hops, hopStand: { temperature: units === "us" ? 176 : 80, minutes: 20 } }));
    }
  }
}, benchTimeout);
afterAll(() => bench.dispose());

function cells({ sheetName, rangeOf }: BatchSheet, name: string): Shown[][] {
  const { from, to } = block(rangeOf(name));
  return Array.from({ length: to.row - from.row + 1 }, (_, down) =>
    Array.from({ length: to.column - from.column + 1 }, (__, right) =>
      bench.valueAt(sheetName, `${columnLetters(from.column + right)}${from.row + down}`),
    ),
  );
}

/** Characters that a printed line has room for: as in the lines of the checks, 125 in columns of 107 widths; here 38.5 and 65. */
const widest = { what: 45, caution: 76 };

/** Types into the column of minutes, one cell after the other. */
async function typeMinutes(sheet: BatchSheet, minutes: readonly (number | string)[]): Promise<void> {
  const { from } = block(sheet.rangeOf("hop_minutes"));
  await Excel.run(async (context) => {
    context.workbook.worksheets.getItem(sheet.sheetName).getRange(`D${from.row}:D${from.row + minutes.length - 1}`).values = minutes.map(
      (value) => [value],
    );
    await context.sync();
  });
  await bench.calculate();
}

function linesOf(sheet: BatchSheet): Line[] {
  const rows = cells(sheet, "timeline").filter(([, , what]) => what !== null && what !== "");
  const start = Number(rows[0]?.[0]);
  return rows.map(([time, boilMinute, what, , caution]) => ({
    minute: typeof time === "number" ? Math.round((time - start) * 1440 * 1000) / 1000 : undefined,
    boilMinute: typeof boilMinute === "number" ? boilMinute : undefined,
    what: String(what),
    caution: String(caution ?? ""),
  }));
}

const place = (boil: number) =>
  fc.oneof(
    { weight: 3, arbitrary: fc.integer({ min: 0, max: boil }) },
    { weight: 2, arbitrary: fc.constant(0) },
    { weight: 3, arbitrary: fc.constantFrom("first wort" as const, "stand" as const, "dry" as const) },
  );
const anyDay = fc.constantFrom(0, 1, 10, 15, 20, 30, 35, 60, 90, 240).chain((boil) =>
  fc.record({
    boilMinutes: fc.constant(boil),
    places: fc.array(place(boil), { minLength: 6, maxLength: 6 }),
    standMinutes: fc.constantFrom(0, 5, 30),
    dose: fc.constantFrom("", 0.2),
  }),
);

describe("a brew day on the sheet", () => {
  it.each([
    [0, "extract us"],
    [1, "all-grain us"],
    [2, "extract metric"],
    [3, "all-grain metric"],
  ])(
    "%i: can be walked without harm, whatever the boil and wherever the hops (%s)",
    async (at) => {
      const sheet = sheets[at]!;
      await fc.assert(
        fc.asyncProperty(anyDay, async ({ boilMinutes, places, standMinutes, dose }) => {
          const standing = places.includes("stand") ? Math.max(5, standMinutes) : standMinutes;
          await sheet.set({ boil_minutes: boilMinutes, stand_minutes: standing === 0 ? "" : standing, sanitiser_per_volume: dose });
          await typeMinutes(sheet, places);
          const lines = linesOf(sheet);
          const hops = cells(sheet, "hop_plan")
            .slice(0, 6)
            .map(([hop], index) => ({ hop: String(hop), added: places[index]! }));
          const day: Day = { boilMinutes, boilsAtC: 100, standMinutes: standing, hops };
          expect(troubles(lines, day)).toEqual([]);
          for (const { what, caution } of lines)
            expect([what.length <= widest.what, caution.length <= widest.caution], `${what}: ${caution}`).toEqual([true, true]);
          const steps = cells(sheet, "steps")
            .map(([what]) => String(what ?? ""))
            .filter((what) => what !== "");
          for (const step of steps) expect(lines.map(({ what }) => what)).toContain(step);
          const soak = lines.find(({ what }) => /^Soak/.test(what))?.what ?? "";
          expect(/\d/.test(soak), soak).toBe(dose !== "");
          expect(lines.map(({ what }) => what).join(" ")).not.toMatch(/ 0[.,]0|NaN|undefined| -\d/);
          // All is well with hops and clock; or, without a boil, first wort waits for its bitterness in so many words.
          const said = sheet.complaints().filter(({ label }) => /^(Clock|Hops)/.test(label));
          if (boilMinutes === 0 && places.includes("first wort"))
            expect(said.map(({ text }) => text)).toEqual([
              "A hop at first wort counts by the boil, and there is none: until then the bitterness stays empty.",
            ]);
          else expect(said.filter(({ text }) => !/lines, but only/.test(text))).toEqual([]);
        }),
        { numRuns: 14 },
      );
    },
    180_000,
  );

  it(
    "fits its printed lines with a usual bill",
    async () => {
      for (const [units, method] of [
        ["us", "extract"],
        ["metric", "all-grain"],
      ] as const) {
        const sheet = await insertOn(
          bench,
          exampleBatch({ ...choices, sheetName: `usual ${units}`, units, method, volume: units === "us" ? 5 : 20 }),
        );
        const lines = linesOf(sheet);
        expect(cells(sheet, "timeline")).toHaveLength(23);
        expect(lines.length).toBeLessThanOrEqual(23);
        expect(lines.at(-1)?.what).toBe("Brew day done");
      }
    },
    benchTimeout,
  );

  it(
    "says no 0.0 where nothing is filled in yet",
    async () => {
      for (const method of ["extract", "all-grain"] as const) {
        const sheet = await insertOn(bench, newBatch({ ...choices, sheetName: `blank ${method}`, units: "metric", volume: 20, method }));
        const what = linesOf(sheet).map((line) => line.what);
        expect(what.join("\n")).not.toMatch(/\b0[.,]0|to 0 °/);
        expect(what).toContain("Collect 23.60 L of chlorine-free water");
        expect([sheet.get("colour_plan"), sheet.get("swatch")]).toEqual(["", ""]);
      }
    },
    benchTimeout,
  );
});
