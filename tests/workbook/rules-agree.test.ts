import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { allSaid, laidOver, linesOf } from "../../src/workbook/batch/rules/what-it-says";
import { readingCells, type NewReading } from "../../src/workbook/brewing/companion/reading/reading-line";
import { corrected } from "../../src/workbook/brewing/companion/reading/corrected";
import { linesOfOriginal, originalGravity } from "../../src/workbook/brewing/companion/reading/original-gravity";
import { linesOfReadings, readingDoubts, readingProblem } from "../../src/workbook/brewing/companion/reading/reading-doubts";
import { packagingFigures } from "../../src/workbook/brewing/companion/packaging/packaging-figures";
import { packagingCells, packagingIn, type PackagingInput } from "../../src/workbook/brewing/companion/packaging/packaging-form";
import { packagingSafety } from "../../src/workbook/brewing/companion/packaging/packaging-safety";
import { courseOfReadings } from "../../src/workbook/care/check/course";
import { checkSheet } from "../../src/workbook/care/check/check-sheet";
import { saidOf } from "../../src/workbook/care/check/own-lines";
import { sheetsByName, worldOfSheets } from "../../src/workbook/grid/evaluate/sheets-world";
import type { NamedCells } from "../../src/workbook/grid/read/named-cells";
import { allDrawn } from "../support/drawn";
import { batchOnItsWay } from "../support/arbitrary-batch";
import "../support/fixed-seed";
import { paperSheet, type TypedOver } from "../support/paper-sheet";

/*
 * One rule, one verdict: what the printed line says (worked out whole, with what was typed in its cells), what the pane doubts or refuses
 * beforehand (asked of the sheet as it was, with the proposal laid over it), and what Check finds.
 */

/** What the printed checks show, by line. */
function printed(sheet: NamedCells): { line: string; state: string; words: string }[] {
  const texts = sheet.block("check_texts");
  const ids = linesOf(sheet).map(({ id }) => id);
  return sheet.block("check_states").map(([state], index) => ({
    line: ids[index] ?? "",
    state: String(state),
    words: String(texts[index]?.[0]),
  }));
}
const speaking = (sheet: NamedCells) => printed(sheet).filter(({ state }) => state !== "nothing found");
const check = (sheet: NamedCells) => checkSheet(sheet, worldOfSheets(sheetsByName([sheet]), new Map(), sheet.sheetName), 46400);

const slips: fc.Arbitrary<TypedOver> = fc.dictionary(
  fc.constantFrom(
    "kettle_loss",
    "boil_off",
    "top_up",
    "attenuation",
    "volume_reached",
    "altitude",
    "headspace",
    "bottling_loss",
    "og_temperature",
    "pitch_temperature",
    "malt.0.1",
    "hop_alpha.0",
    "packs_in_hand",
    "bottle_volume",
    "dry_hopped_on",
  ),
  fc.constantFrom<(string | number)[]>("", "some", "2,8", 0, -1, 0.74, 5, 30, 120, 46280),
  { maxKeys: 2 },
);
const reading = fc.record({
  gravity: fc.integer({ min: 995, max: 1090 }).map((points) => points / 1000),
  scale: fc.constantFrom("SG" as const, "SG" as const, "P" as const),
  sample: fc.constantFrom(15, 20, 60, 70),
  when: fc.constantFrom(46265, 46280.5, 46290.25),
  beer: fc.constantFrom<(number | "")[]>("", 19, 66, 90),
});
const packed: fc.Arbitrary<Partial<PackagingInput>> = fc.record({
  into: fc.constantFrom("bottles" as const, "keg" as const),
  packagedOn: fc.constantFrom<(number | "")[]>(46295, 46295, 46295, 46260),
  co2Volumes: fc.constantFrom<(number | "")[]>(2.3, 2.3, 2.7, 3.4, 0.6, ""),
  warmestSinceFermentation: fc.constantFrom<(number | "")[]>(20, 20, 20, 30, ""),
  sugar: fc.constantFrom("sucrose", "dextrose"),
  bottleKind: fc.constantFrom("ordinary", "heavy", "sparkling"),
  warmestStorage: fc.constantFrom<(number | "")[]>(12, 18, 22, ""),
  bottlingLoss: fc.constantFrom(0.1, 0.1, 0.1, -1),
  kegTemperature: fc.constantFrom<(number | "")[]>(4, 8, 25),
});
const typedPackaging = (sheet: NamedCells, input: PackagingInput): TypedOver =>
  Object.fromEntries(packagingCells(sheet, input).map(({ name, content }) => [name, content as string | number]));

/** °C as the sheet's thermometers show them. */
const shownAs = (form: Partial<PackagingInput>, { units }: BatchContents): Partial<PackagingInput> =>
  units === "metric"
    ? form
    : Object.fromEntries(
        Object.entries(form).map(([key, value]) => [
          key,
          /warmest|Temperature/.test(key) && typeof value === "number" ? Math.round(value * 1.8 + 32) : value,
        ]),
      );

/** Two readings at the end, so that a good half of the beers rest. */
const rested = (batch: BatchContents, ends: number | undefined): BatchContents =>
  ends === undefined
    ? batch
    : {
        ...batch,
        readings: [46280, 46282, 46284].map((when) => ({
          when,
          reading: ends,
          scale: "SG" as const,
          sampleTemperature: batch.units === "us" ? 68 : 20,
          beerTemperature: "" as const,
        })),
      };

describe("sheet, pane, Check and packaging", () => {
  it("say the same of a sheet as it stands", () => {
    fc.assert(
      fc.property(batchOnItsWay, slips, (batch, typed) => {
        const sheet = paperSheet(batch, typed);
        expect(allSaid(laidOver(sheet)).map(({ line, state, words }) => ({ line, state, words }))).toEqual(speaking(sheet));
      }),
      { numRuns: 60 },
    );
  }, 120_000);

  it("say the same of a reading before it is written and after", () => {
    let doubted = 0;
    fc.assert(
      fc.property(batchOnItsWay, slips, reading, (batch, typed, { gravity, scale, sample, when, beer }) => {
        const log = { ...batch, readings: batch.readings.slice(0, 3) };
        const before = paperSheet(log, typed);
        const shown = scale === "P" ? Number(((gravity - 1) * 250).toFixed(1)) : gravity;
        const { ready } = corrected(
          before,
          { instrument: "hydrometer", reading: shown, scale, sampleTemperature: sample, originalBrix: "" },
          "beer",
        );
        if (!ready) return;
        const taken: NewReading = { ...ready, when, beerTemperature: beer };
        const row = log.readings.length;
        const asTyped = Object.fromEntries(
          readingCells(taken, row).map(({ name, column = 0, content }) => [`${name}.${row}.${column}`, content as string | number]),
        );
        const after = paperSheet(log, { ...typed, ...asTyped });
        const known = new Set(speaking(before).map(({ line, words }) => `${line} ${words}`));
        const newly = speaking(after).filter(({ line, words }) => !known.has(`${line} ${words}`));
        // A rise is doubted again even where the sheet said so of an earlier reading.
        const ofReadings = newly.filter(({ line }) => linesOfReadings.some((one) => one === line)).map(({ words }) => words);
        const doubts = readingDoubts(before, taken, 46400);
        expect(doubts).toEqual(expect.arrayContaining(ofReadings));
        const printedAfter = speaking(after).map(({ words }) => words);
        for (const doubt of doubts)
          if (!printedAfter.includes(doubt)) {
            // Said of the newest reading though another of the line's rules is printed before it.
            expect(doubt).toMatch(/^Gravity (rose|now is above)/);
            expect(speaking(after).map(({ line }) => line)).toContain("course");
          }
        doubted += doubts.length > 0 ? 1 : 0;
        // What the sheet says now Check finds by the same rule; what it finds of the log is of a day on which the sheet said so.
        const rules = new Set(check(after).map(({ rule }) => rule));
        const said = saidOf(after) ?? [];
        for (const { rule } of said) expect(rules, rule).toContain(rule);
        const lines = new Set(said.map(({ rule }) => rule));
        const others = [...rules].filter((rule) => rule !== undefined && !lines.has(rule));
        for (const rule of others) expect(rule).toMatch(/^(course\.|finished\.|hops\.alpha)/);
      }),
      { numRuns: 60 },
    );
    if (allDrawn) expect(doubted).toBeGreaterThan(5);
  }, 240_000);

  it("say the same of the reading before the yeast, whatever of the sheet follows from it", () => {
    let doubted = 0;
    fc.assert(
      fc.property(batchOnItsWay, slips, reading, (batch, typed, { gravity, sample }) => {
        // A log that is there already goes by the original gravity, over several formulas.
        const open = { ...batch, wort: { ...batch.wort, reading: "" as const, sampleTemperature: "" as const, volume: "" as const } };
        const before = paperSheet(open, typed);
        const { ready } = originalGravity(before, {
          instrument: "hydrometer",
          reading: gravity,
          scale: "SG",
          sampleTemperature: sample,
          originalBrix: "",
          volume: batch.volume,
          sampled: "after",
          topUp: "",
        });
        if (!ready) return;
        const after = paperSheet(open, {
          ...typed,
          og_reading: ready.reading,
          og_scale: ready.scale,
          og_temperature: ready.sampleTemperature,
          volume_reached: ready.volume,
        });
        const known = new Set(speaking(before).map(({ line, words }) => `${line} ${words}`));
        const newly = speaking(after).filter(
          ({ line, words }) => linesOfOriginal.some((one) => one === line) && !known.has(`${line} ${words}`),
        );
        expect(ready.doubts).toEqual(newly.map(({ words }) => words));
        doubted += newly.length > 0 ? 1 : 0;
      }),
      { numRuns: 60 },
    );
    if (allDrawn) expect(doubted).toBeGreaterThan(5);
  }, 240_000);

  it("say the same of a packaging before it is written and after, and show the same figures", () => {
    const levels = new Map<string, number>();
    fc.assert(
      fc.property(
        batchOnItsWay,
        fc.oneof(fc.constant({}), slips),
        packed,
        fc.constantFrom(undefined, 1.01, 1.01, 1.011),
        (batch, typed, form, ends) => {
          const beer = rested(batch, ends);
          const before = paperSheet(beer, typed);
          const input = { ...packagingIn(before), ...shownAs(form, batch) };
          const after = paperSheet(beer, { ...typed, ...typedPackaging(before, input) });
          const [finished, pressure] = ["finished", "pressure"].map((id) => printed(after).find(({ line }) => line === id)!);
          const { level, check: verdict } = packagingSafety(before, input);
          levels.set(level, (levels.get(level) ?? 0) + 1);
          expect(level === "clear", `${finished?.words} | ${pressure?.words}`).toBe(
            finished?.state === "nothing found" && pressure?.state === "nothing found",
          );
          if (pressure?.state === "stop") expect(level).toBe("refuse");
          const shown = (name: string) => (typeof after.value(name) === "number" ? after.value(name) : undefined);
          const figures = packagingFigures(before, input);
          const keg = input.into === "keg";
          const agree = (one: number | undefined, other: unknown) =>
            one === undefined ? expect(other).toBeUndefined() : expect(other).toBeCloseTo(one, 9);
          agree(figures.pressure.value, shown(keg ? "keg_pressure" : "bottle_pressure"));
          if (!keg) agree(figures.sugar.value, shown("sugar_mass"));
          const isShown = keg
            ? shown("keg_pressure") !== undefined
            : shown("sugar_mass") !== undefined && shown("bottle_pressure") !== undefined;
          if (!isShown) expect(level).toBe("refuse");
          if (!String(after.value("pressure_verdict")).startsWith("#")) expect(verdict).toBe(after.value("pressure_verdict"));
        },
      ),
      { numRuns: 120 },
    );
    if (allDrawn) for (const level of ["clear", "confirm", "refuse"]) expect(levels.get(level) ?? 0, level).toBeGreaterThan(2);
  }, 240_000);
});

describe("faults that there were", () => {
  const allGrain = (more: Partial<BatchContents> = {}): BatchContents => ({
    ...exampleBatch({
      id: "m",
      sheetName: "Mashed",
      batchName: "Mashed",
      brewedOn: 46270,
      volume: 20,
      units: "metric",
      topUp: 0,
      method: "all-grain",
    }),
    wort: { collected: "", reading: "", scale: "SG", sampleTemperature: "", volume: "" },
    readings: [],
    ...more,
  });

  it("a mash sheet with a bill of extract alone is judged as extract by the pane, too", () => {
    const bill = [{ ingredient: "Extract", mass: 3, yieldPercent: 78, handling: "extract" as const, colour: 6, cost: "" as const }];
    const sheet = paperSheet(allGrain({ malt: bill }));
    const expected = Number(sheet.value("og_plan"));
    const doubts = (reading: number) =>
      originalGravity(sheet, {
        instrument: "hydrometer",
        reading,
        scale: "SG",
        sampleTemperature: 20,
        originalBrix: "",
        volume: 20,
        sampled: "after",
        topUp: "",
      }).ready?.doubts;
    expect(doubts(Number((expected - 0.0004).toFixed(4)))).toEqual([]);
    expect(doubts(Number((expected + 0.02).toFixed(4)))).toEqual([expect.stringMatching(/is more than the malt can give/)]);
  });

  it("1.020 and then 1.0218 is no rise anywhere, and 1.0222 is one everywhere", () => {
    const base = firstExtractBatch();
    const log = (second: number): BatchContents => ({
      ...base,
      wort: { collected: "", reading: 1.052, scale: "SG", sampleTemperature: 60, volume: 5 },
      readings: [1.02, second].map((reading, index) => ({
        when: base.brewedOn + 5 + index,
        reading,
        scale: "SG",
        sampleTemperature: 60,
        beerTemperature: 66,
      })),
    });
    const taken = (reading: number): NewReading => ({
      when: base.brewedOn + 6,
      reading,
      scale: "SG",
      sampleTemperature: 60,
      gravity: reading,
      beerTemperature: 66,
    });
    for (const [second, rises] of [
      [1.0218, false],
      [1.0222, true],
    ] as const) {
      const sheet = paperSheet(log(second));
      const before = paperSheet({ ...log(second), readings: log(second).readings.slice(0, 1) });
      const says = [
        speaking(sheet).some(({ words }) => words.includes("rose")),
        readingDoubts(before, taken(second), 46400).some((words) => words.includes("rose")),
        courseOfReadings(sheet, saidOf(sheet)).some(({ rule }) => rule === "course.rising"),
      ];
      expect(says).toEqual([rises, rises, rises]);
    }
  });

  it("two readings at one moment are asked about in the pane, printed, and found by Check; a minute apart they are not", () => {
    const base = firstExtractBatch();
    const reading = (minutes: number): NewReading => ({
      ...{ when: base.brewedOn + 6 + minutes / 1440, reading: 1.02, scale: "SG", sampleTemperature: 60 },
      ...{ gravity: 1.02, beerTemperature: 66 },
    });
    const log = (...minutes: number[]): BatchContents => ({
      ...base,
      wort: { collected: "", reading: 1.052, scale: "SG", sampleTemperature: 60, volume: 5 },
      readings: minutes.map((one) => {
        const { gravity: _, ...line } = reading(one);
        return line;
      }),
    });
    for (const [apart, same] of [
      [0, true],
      [1, false],
    ] as const) {
      const after = paperSheet(log(0, apart));
      const says = [
        speaking(after).some(({ words }) => words.startsWith("Two readings at one moment")),
        readingDoubts(paperSheet(log(0)), reading(apart), 46400).some((words) => words.startsWith("Two readings at one moment")),
        (saidOf(after) ?? []).some(({ rule }) => rule === "course.same-moment"),
      ];
      expect(says).toEqual([same, same, same]);
    }
  });

  it("a usual slip in a reading is told by the reading screen in the sheet's words", () => {
    const sheet = paperSheet(firstExtractBatch());
    const measured = { instrument: "hydrometer", reading: 48, scale: "SG", sampleTemperature: 68, originalBrix: "" } as const;
    const { problem } = corrected(sheet, measured, "beer");
    expect(readingProblem(sheet, measured, problem ?? "", 46400)).toBe("A reading is no gravity: write 1.012 for 12 points.");
    const before = originalGravity(
      paperSheet({ ...firstExtractBatch(), wort: { collected: "", reading: "", scale: "SG", sampleTemperature: "", volume: "" } }),
      {
        ...measured,
        volume: "",
        sampled: "after",
        topUp: "",
      },
    );
    expect(before.problem).toContain("Write 1.048 instead of 48.");
  });

  it("water to grain typed as a text is told by every line beside which an error stands", () => {
    const sheet = paperSheet(allGrain(), { mash_thickness: "2,8" });
    expect(String(sheet.value("sparge_water"))).toMatch(/^#/);
    expect(speaking(sheet).map(({ line }) => line)).toEqual(expect.arrayContaining(["volumes", "mash", "figures"]));
  });
});
