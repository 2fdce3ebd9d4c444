import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { blockKeys } from "../../../src/workbook/batch/fields/blocks";
import { withBlocks } from "../../../src/workbook/batch/new-batch";
import { dayLines } from "../../../src/workbook/brewing/companion/brew-day/day-lines";
import { judgeMeasured, writeMeasured, type Typed } from "../../../src/workbook/brewing/companion/brew-day/judge-measured";
import { askedByDay, reachedBy, type Measurement } from "../../../src/workbook/brewing/companion/brew-day/measurements";
import { carryOut } from "../../../src/workbook/brewing/companion/outcome";
import { dayNumber } from "../../../src/workbook/grid/words/day-number";
import type { NamedCells } from "../../../src/workbook/grid/read/named-cells";
import { benchTimeout } from "../../support/batch-bench";
import {
  contentOf,
  expectNothingMeanwhile,
  expectRefusals,
  expectSame,
  openCompanion,
  type CompanionBench,
} from "../../support/companion-bench";

/* What the brew-day card asks for, on a grain batch with everything on its sheet and on a beginner's sheet. */
const batch = (method: "all-grain" | "extract") =>
  exampleBatch({
    id: method,
    sheetName: "Batch 1",
    batchName: "One",
    brewedOn: dayNumber("2026-09-05"),
    volume: 20,
    units: "metric",
    topUp: 0,
    method,
  });

let companion: CompanionBench;
let seen: NamedCells;
beforeAll(async () => {
  companion = await openCompanion(withBlocks(batch("all-grain"), blockKeys));
  seen = await companion.read();
}, benchTimeout);
afterAll(() => companion.bench.dispose());

const asked = (sheet: NamedCells): [Measurement["id"], string][] => {
  const lines = dayLines(sheet);
  return askedByDay(sheet, lines).map(({ measurement, row }) => [measurement.id, lines[row]?.what ?? ""]);
};
const called = (sheet: NamedCells, id: Measurement["id"]): Measurement =>
  askedByDay(sheet, dayLines(sheet)).find(({ measurement }) => measurement.id === id)!.measurement;
const typed = (figures: Typed["figures"], scale: Typed["scale"] = "SG"): Typed => ({ figures, scale });
const judge = (id: Measurement["id"], figures: Typed["figures"], scale?: Typed["scale"]) =>
  judgeMeasured(seen, called(seen, id), typed(figures, scale));

describe("what a brew day asks to be measured", () => {
  it("stands at the steps that speak of it", () => {
    expect(asked(seen)).toEqual([
      ["mash-ph", expect.stringMatching(/^Rests /)],
      ["before-boil", "Note volume and gravity before the boil"],
      ["after-boil", expect.stringMatching(/^Flame out/)],
      ["volume", "Into the fermenter, splashing"],
      ["original", "Draw a sample; note gravity and temperature"],
    ]);
  });

  it("is asked once: the volume with the gravity, where it was not noted before", () => {
    const all = askedByDay(seen, dayLines(seen));
    const row = (id: Measurement["id"]) => all.find(({ measurement }) => measurement.id === id)!.row;
    const ids = (upTo: number) => reachedBy(all, upTo).map(({ measurement }) => measurement.id);
    expect(ids(row("before-boil") - 1)).toEqual(["mash-ph"]);
    expect(ids(row("volume"))).toEqual(["mash-ph", "before-boil", "after-boil", "volume"]);
    expect(ids(row("original"))).toEqual(["mash-ph", "before-boil", "after-boil", "original"]);
  });

  it(
    "is found in a teacher's words, and at the last step that it could belong to where they do not speak of it",
    async () => {
      await companion.reset();
      const lines = dayLines(seen);
      const { from } = seen.area("steps");
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Batch 1");
        for (let row = 0; row < seen.block("steps").length; row += 1) {
          const what = String(seen.block("steps")[row]?.[0] ?? "");
          const words = /^Note volume/.test(what) ? "Look into the kettle" : /^Draw a sample/.test(what) ? "Hydrometer now!" : undefined;
          if (words) sheet.getCell(from.row + row - 1, from.column - 1).values = [[words]];
        }
        await context.sync();
      });
      const teachers = await companion.read();
      const before = lines.findIndex(({ kind }) => kind === "boil begins") - 1;
      expect(asked(teachers).slice(1)).toEqual([
        ["before-boil", lines[before]?.what],
        ["after-boil", expect.stringMatching(/^Flame out/)],
        ["volume", "Into the fermenter, splashing"],
        ["original", "Hydrometer now!"],
      ]);
      await companion.reset();
    },
    benchTimeout,
  );
});

describe("figures typed on the card", () => {
  it("give the gravity at the hydrometer's own temperature", () => {
    // Water of 30 °C is thinner than that of 20 °C by 0.995647/0.998203 (CRC Handbook), and the glass floats larger by 10 × 25·10⁻⁶.
    const expected = (1.05 * 0.998203 * (1 - 0.00025)) / 0.995647;
    const { gravity, problem, changes } = judge("original", { volume_reached: 20, og_reading: 1.05, og_temperature: 30 });
    expect(problem).toBe("");
    expect(Math.abs(gravity! - expected)).toBeLessThan(0.0006);
    // The sheet gets what was read, and corrects it itself.
    expect(changes.map(({ name, content }) => [name, content])).toEqual([
      ["volume_reached", 20],
      ["og_reading", 1.05],
      ["og_temperature", 30],
      ["og_scale", "SG"],
    ]);
    // 12.4 °P are 1.050 (ASBC tables).
    expect(judge("original", { og_reading: 12.4, og_temperature: 20 }, "P").gravity).toBeCloseTo(1.05, 3);
  });

  it("are not written while something is missing or cannot be", () => {
    const refused = (id: Measurement["id"], figures: Typed["figures"]) => {
      const { problem, doubts } = judge(id, figures);
      expect(doubts).toEqual([]);
      return problem;
    };
    expect(judge("before-boil", {})).toMatchObject({ changes: [], problem: "" });
    expect(refused("before-boil", { before_reading: 1.04 })).toMatch(/^How warm was the sample/);
    expect(refused("before-boil", { before_temperature: 80 })).toBe("The volume before the boil is missing.");
    expect(refused("volume", { volume_reached: 0 })).toBe("The volume must be above 0.");
    expect(refused("volume", { volume_reached: -3 })).toMatch(/less than nothing cannot be/);
    expect(refused("volume", { volume_reached: 20000 })).toMatch(/^Volume 20000 L\? It may be from 0 to 10000\.$/);
    expect(refused("original", { og_reading: 50, og_temperature: 20 })).toMatch(/^Write 1\.050 instead of 50\./);
    expect(refused("before-boil", { before_reading: 50, before_sample: 20 })).not.toBe("");
  });

  it("are doubted where they can hardly be: by the other unit, by the plan", () => {
    expect(judge("before-boil", { before_volume: 24, before_temperature: 176 }).doubts[0]).toBe(
      "Wort before the boil at 176 °C? That looks like °F; this sheet is in °C.",
    );
    expect(judge("volume", { volume_reached: 8 }).doubts[0]).toMatch(/^In the fermenter are 8, planned were 20 L/);
    expect(judge("volume", { volume_reached: 20 }).doubts).toEqual([]);
    expect(judge("mash-ph", { mash_measured: 6.4 }).doubts.length).toBeGreaterThan(0);
    expect(judge("original", { volume_reached: 20, og_reading: 1.12, og_temperature: 20 }).doubts[0]).toMatch(
      /^Reading 1\.120 is more than/,
    );
  });
});

describe("writing them", () => {
  const figures = { before_volume: 26, before_temperature: 70, before_reading: 1.038, before_sample: 25 };
  const writer = (sheet: NamedCells) => (context: Excel.RequestContext) =>
    writeMeasured(context, sheet, judgeMeasured(sheet, called(sheet, "before-boil"), typed(figures)));

  it(
    "fills the empty cells, which are then asked for no more; what somebody has typed meanwhile stays",
    async () => {
      await companion.reset();
      seen = await companion.read();
      expect(await carryOut(writer(seen))).toEqual({ kind: "written" });
      const after = await companion.read();
      for (const [cell, figure] of Object.entries(figures)) expect(after.value(cell), cell).toBe(figure);
      expect(after.number("before_gravity")).toBeCloseTo(1.039, 3);
      expect(asked(after).map(([id]) => id)).not.toContain("before-boil");
      const before = contentOf(companion.bench);
      expect(await carryOut(writer(seen))).toMatchObject({
        kind: "unchanged",
        message: expect.stringContaining("Somebody has just changed"),
      });
      expectSame(companion.bench, before);
    },
    benchTimeout,
  );

  it(
    "leaves alone what stood on the sheet before: only the rest is asked for",
    async () => {
      await companion.reset();
      await companion.batch.set({ before_volume: 25, before_sample: 22 });
      const sheet = await companion.read();
      const measurement = called(sheet, "before-boil");
      expect(measurement.parts.map(({ main }) => main.cell)).toEqual(["before_reading"]);
      // A temperature typed on the card before it came onto the sheet does not go over it.
      const { changes } = judgeMeasured(sheet, measurement, typed({ before_reading: 1.038, before_sample: 60 }));
      expect(changes.map(({ name }) => name)).toEqual(["before_reading", "before_scale"]);
    },
    benchTimeout,
  );

  it(
    "changes nothing on a protected sheet, in a cell's edit, on a deleted sheet, before or meanwhile",
    async () => {
      await companion.reset();
      const sheet = await companion.read();
      await expectRefusals(companion, writer(sheet));
      await expectNothingMeanwhile(companion, writer(sheet));
    },
    benchTimeout,
  );
});

it(
  "a beginner's sheet asks for the volume and the gravity before the yeast alone",
  async () => {
    const first = companion;
    const beginners = await openCompanion(batch("extract"));
    try {
      expect(asked(await beginners.read())).toEqual([
        ["volume", "Into the fermenter, splashing"],
        ["original", "Draw a sample; note gravity and temperature"],
      ]);
    } finally {
      beginners.bench.dispose();
      Object.assign(globalThis, { Excel: first.bench.Excel, Office: first.bench.Office });
    }
  },
  benchTimeout,
);
