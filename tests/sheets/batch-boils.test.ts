import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { gainedInChilling } from "../support/chilled-hops";
import { handBatch } from "../support/hand-bill";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../support/batch-bench";

/*
 * A small kettle, a high place and a mash with extract beside it, against sums made by hand.
 *
 * Points: J. Palmer, How to Brew, 2006: a pound of sucrose in a US gallon gives 46.2. Bitterness: G. Tinseth's formula,
 * 1.65 × 0.000125^(gravity − 1) × (1 − e^(−0.04 min)) / 4.15, and 7490 mg/L for an ounce in a US gallon.
 */
const choices = { id: "boils", batchName: "Any", brewedOn: 46270, volume: 5, units: "us", topUp: 0 } as const;

/** 0.75 lb of crystal at 74 % and half of that won, 6 lb of syrup at 78 %, 1 lb of dry extract at 91 %. */
const points = 46.2 * (0.75 * 0.74 * 0.5 + 6 * 0.78 + 1 * 0.91);
const bitterness = (gravityInKettle: number, sharedVolume: number, chillMinutes = 0): number => {
  const share = (minutes: number): number => (1.65 * 0.000125 ** (gravityInKettle - 1) * (1 - Math.exp(-0.04 * minutes))) / 4.15;
  const alpha = (ounces: number, percent: number): number => ((7490 / sharedVolume) * ounces * percent) / 100;
  const gained =
    chillMinutes === 0
      ? 0
      : gainedInChilling({ minutes: chillMinutes, toC: (66 - 32) / 1.8, gravity: gravityInKettle }, [
          [alpha(0.9, 8.5), 60],
          [alpha(1, 5.5), 15],
          [alpha(1, 5.5), 5],
        ]);
  return alpha(0.9, 8.5) * share(60) + alpha(1, 5.5) * share(15) + alpha(1, 5.5) * share(5) + gained;
};

let bench: HeadlessBench;
let whole: BatchSheet;
let part: BatchSheet;
let mashed: BatchSheet;
beforeAll(async () => {
  bench = await openBatchBench();
  whole = await insertOn(bench, handBatch({ ...choices, sheetName: "Whole", method: "extract" }));
  part = await insertOn(bench, handBatch({ ...choices, sheetName: "Part", topUp: 2.5, method: "extract" }));
  mashed = await insertOn(bench, exampleBatch({ ...choices, sheetName: "Mashed", method: "all-grain" }));
}, benchTimeout);
afterAll(() => bench.dispose());

describe("a boil of half the volume, topped up", () => {
  it("gravity follows the whole volume: 2.7 gal hold the sugar, 2.5 of them end up in 5", () => {
    expect(part.number("gravity_volume")).toBeCloseTo((5 * 2.7) / 2.5, 9);
    expect(part.number("og_plan")).toBeCloseTo(1 + points / 5.4 / 1000, 3);
    // 2.6615 kg of sugar in 20.441 L: 130.2 g/L, 1.04823 kg/L in the table of sucrose solutions (follow-the-sheet), over 0.99823.
    expect(Math.abs(part.number("og_plan") - 1.0501)).toBeLessThan(0.0001);
  });
  it("the kettle's gravity is that of the mean of 3.4 gal before and 2.7 after the boil", () => {
    expect([part.number("water_before_boil"), part.number("water_chilled")].map((volume) => Number(volume.toFixed(2)))).toEqual([3.4, 2.7]);
    // 2.6615 kg in 11.546 L: 230.5 g/L, between 21 % (227.9 g/L, 1.0854 kg/L) and 22 % (239.8 g/L, 1.0899): 1.0864 over 0.99823; points added up come to 0.0006 more.
    expect(Math.abs(part.number("kettle_gravity") - 1.0883)).toBeLessThan(0.0002);
  });
  it("bitterness follows the kettle: 25.9 IBU where the whole volume boiled gives 38.4", () => {
    expect(Math.abs(part.number("ibu_plan") - bitterness(1.0883, 5.4, part.number("chill_minutes")))).toBeLessThan(0.3);
    expect(Math.abs(whole.number("ibu_plan") - bitterness(1.0488, 5.2, whole.number("chill_minutes")))).toBeLessThan(0.3);
    // Not by the gravity in the fermenter: that would promise a third more.
    expect(bitterness(1.0501, 5.4) - part.number("ibu_plan")).toBeGreaterThan(9);
  });
  it("the step says to top up and stir, and only there", () => {
    const texts = ({ sheetName, cellOf }: BatchSheet) =>
      Array.from({ length: 23 }, (_, index) => String(bench.valueAt(sheetName, `A${Number(cellOf("happened").slice(1)) + index}`) ?? ""));
    expect(texts(part)).toContain("Into the fermenter; top up and stir it hard");
    expect(texts(whole)).toContain("Into the fermenter, splashing");
  });
});

describe("brewing high up", () => {
  it("at 5000 ft water boils near 203 °F, hops give less, and the gravity does not change", async () => {
    const [ibu, gravity] = [whole.number("ibu_plan"), whole.number("og_plan")];
    await whole.set({ altitude: 5000 });
    // Standard atmosphere (ICAO): 84.3 kPa at 1524 m; water boils there at 94.9 °C.
    expect(Math.abs(whole.number("boils_at") - 202.9)).toBeLessThan(0.5);
    expect(whole.number("ibu_plan")).toBeLessThan(0.95 * ibu);
    expect(whole.number("ibu_plan")).toBeGreaterThan(0.5 * ibu);
    expect(whole.number("og_plan")).toBe(gravity);
    await whole.set({ altitude: 0 });
    expect(whole.number("ibu_plan")).toBeCloseTo(ibu, 9);
  });
});

describe("extract beside a mash", () => {
  it("the efficiency counts for the grain alone", async () => {
    const row = Number(mashed.cellOf("malt").slice(1));
    await Excel.run(async (context) => {
      const cells = context.workbook.worksheets.getItem("Mashed");
      cells.getRange(`B${row}:E${row + 2}`).values = [
        [3, 80, "mash", 2.5],
        [0.75, 74, "mash", 60],
        [3.3, 78, "extract", 4],
      ];
      await context.sync();
    });
    await bench.calculate();
    const [grain, extract] = [46.2 * (3 * 0.8 + 0.75 * 0.74), 46.2 * 3.3 * 0.78];
    for (const [efficiency, gravity] of [
      [70, 1.0412],
      [50, 1.036],
    ] as const) {
      await mashed.set({ grain_efficiency: efficiency });
      expect(mashed.number("og_plan")).toBeCloseTo(1 + (grain * (efficiency / 100) + extract) / 5.2 / 1000, 3);
      expect(mashed.number("og_plan")).toBeCloseTo(gravity, 3);
    }
    await mashed.set({ grain_efficiency: 70 });
    expect(mashed.number("grain_mass")).toBeCloseTo(3.75, 9);
    const lines = Array.from({ length: 23 }, (_, index) =>
      String(bench.valueAt("Mashed", `A${Number(mashed.cellOf("happened").slice(1)) + index}`) ?? ""),
    );
    expect(lines).toContain("Flame off; stir in 3.30 lb of extract");
    expect(lines).not.toContain("Note volume and gravity before the boil");
  });
  it("a mash alone has its gravity noted before the boil instead", async () => {
    const row = Number(mashed.cellOf("malt").slice(1));
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Mashed").getRange(`B${row + 2}:E${row + 2}`).values = [["", "", "", ""]];
      await context.sync();
    });
    await bench.calculate();
    const lines = Array.from({ length: 23 }, (_, index) =>
      String(bench.valueAt("Mashed", `A${Number(mashed.cellOf("happened").slice(1)) + index}`) ?? ""),
    );
    expect(lines).toContain("Note volume and gravity before the boil");
  });
});
