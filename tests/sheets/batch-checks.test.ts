import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { handBatch } from "../support/hand-bill";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../support/batch-bench";

const choices = { id: "test", batchName: "Any", brewedOn: 46270, volume: 5, units: "us", topUp: 0, method: "extract" } as const;

let bench: HeadlessBench;
let whole: BatchSheet;
let part: BatchSheet;
let metric: BatchSheet;
let blank: BatchSheet;
let mashed: BatchSheet;
beforeAll(async () => {
  bench = await openBatchBench();
  whole = await insertOn(bench, handBatch({ ...choices, sheetName: "Whole" }));
  part = await insertOn(bench, handBatch({ ...choices, sheetName: "Part", topUp: 2.5, method: "extract" }));
  metric = await insertOn(bench, handBatch({ ...choices, sheetName: "Metric", units: "metric", volume: 18.92705892 }));
  mashed = await insertOn(bench, handBatch({ ...choices, sheetName: "Mashed", method: "all-grain" }));
  blank = await insertOn(bench, newBatch({ ...choices, sheetName: "Blank", units: "metric", volume: 20 }));
}, benchTimeout);
afterAll(() => bench.dispose());

describe("a new batch that is still blank", () => {
  it("shows blanks, not errors, and complains of nothing", () => {
    for (const name of ["og_plan", "fg_plan", "abv_plan", "ibu_plan", "colour_plan", "og", "fg", "verdict", "swatch", "packs_to_pitch"])
      expect(blank.get(name) ?? "", name).toBe("");
    expect(blank.complaints()).toEqual([]);
    expect(blank.number("water_collect")).toBeGreaterThan(20);
  });
});

describe("where nobody knows our functions", () => {
  it("the checks say that Gylebook is not here, and accuse no figure of the brewer's", async () => {
    const strange = await insertOn(bench, handBatch({ ...choices, sheetName: "Strange" }));
    bench.host.behave({ functionsUnknown: true });
    // As in a file that such an Excel opens and calculates.
    await Excel.run(async (context) => {
      const used = context.workbook.worksheets.getItem("Strange").getUsedRange().load("formulas,address");
      await context.sync();
      used.formulas = used.formulas as string[][];
      await context.sync();
    });
    await bench.calculate();
    bench.host.behave({});
    expect(strange.get("boils_at")).toBe("#NAME?");
    const said = strange.complaints();
    expect(said.length).toBeGreaterThan(10);
    for (const { state, text } of said) expect([state, text]).toEqual(["look", "Gylebook is not here: nothing can be checked."]);
  });
});

describe("an all-grain batch", () => {
  it("plans mash water, strike and sparge", () => {
    expect(mashed.number("grain_mass")).toBeCloseTo(9.25, 6);
    expect(mashed.number("mash_water")).toBeCloseTo(9.25 * 0.36, 6);
    expect(mashed.number("mash_water") + mashed.number("sparge_water")).toBeCloseTo(mashed.number("water_collect"), 6);
    // Palmer's rule (from memory), 0.2 / r × (T2 − T1) + T2 with r in quarts per pound: 0.2 / 1.44 × 84 + 152 = 163.7 °F.
    expect(Math.abs(mashed.number("strike_temperature") - 163.7)).toBeLessThan(1.5);
    // (8.5 × 0.80 + 0.75 × 0.74) × 46.2 × 0.70 = 237.9 points·gal over 5.2 US gal.
    expect(mashed.number("og_plan")).toBeCloseTo(1.0457, 3);
    expect(mashed.complaints()).toEqual([]);
  });
  it("collects what the wet grain keeps as well (0.12 US gal/lb, common practice)", () => {
    expect(mashed.number("water_collect")).toBeCloseTo(mashed.number("water_before_boil") + 9.25 * 0.12, 1);
  });
  it("shows the mash in its timeline and no error", () => {
    const first = Number(mashed.cellOf("happened").slice(1));
    const lines = Array.from({ length: 23 }, (_, index) => String(bench.valueAt("Mashed", `A${first + index}`) ?? ""));
    expect(lines.find((line) => line.startsWith("Mash for 60 min"))).toBeDefined();
    expect(lines.join()).not.toContain("#");
  });
  it("believes the reading and tells what the grain gave; a reading beyond all of it is doubted", async () => {
    await mashed.set({ og_reading: 1.05, og_temperature: 60 });
    expect(mashed.number("efficiency_reached")).toBeCloseTo((0.04996 / 0.0457) * 70, 0);
    expect(mashed.complaints()).toEqual([]);
    await mashed.set({ og_reading: 1.036 });
    expect(mashed.complaints().map(({ text }) => text)).toEqual([
      expect.stringMatching(/The grain gave 5\d % of its yield, planned were 70 %/),
    ]);
    await mashed.set({ og_reading: 1.104 });
    expect(
      mashed
        .complaints()
        .map(({ text }) => text)
        .join(),
    ).toContain("more than all the sugar of this malt can give");
    await mashed.set({ og_reading: "", og_temperature: "" });
  });
});

describe("five batches in one workbook", () => {
  it("each computes with its own names", () => {
    expect(whole.number("og_plan")).toBeCloseTo(1.0521, 3);
    expect(blank.get("og_plan") ?? "").toBe("");
  });
  it("the same recipe gives the same beer in US and metric units, to the rounding of the masses", () => {
    expect(Math.abs(metric.number("og_plan") - whole.number("og_plan"))).toBeLessThan(0.0007);
    expect(Math.abs(metric.number("ibu_plan") - whole.number("ibu_plan"))).toBeLessThan(1.5);
  });
});

describe("a partial boil", () => {
  it("boils less water; the gravity follows the whole volume, the bitterness the stronger kettle", () => {
    expect(part.number("water_collect")).toBeLessThan(whole.number("water_collect") - 2);
    // What stays in the kettle is stronger wort, so a little more of the sugar is lost with it.
    expect(Math.abs(part.number("og_plan") - whole.number("og_plan"))).toBeLessThan(0.003);
    expect(part.number("kettle_gravity")).toBeGreaterThan(whole.number("kettle_gravity") + 0.025);
    expect(part.number("ibu_plan")).toBeLessThan(whole.number("ibu_plan") * 0.85);
  });
});

describe("an original gravity that the malt cannot give", () => {
  beforeEach(() => part.set({ og_reading: "", og_temperature: "" }));

  it("too high: says so, names the usual cause, and says which figure to trust", async () => {
    const planned = part.number("og_plan");
    await part.set({ og_reading: 1.104, og_temperature: 60 });
    const [complaint] = part.complaints();
    expect(complaint?.label).toBe("Gravity against the malt");
    expect(complaint?.text).toContain("Reading 1.104 is more than the malt can give");
    expect(complaint?.text).toContain("before the top-up water was mixed in");
    expect(complaint?.text).toContain(`Trust ${planned.toFixed(3)}`);
    expect(part.number("og")).toBeCloseTo(planned, 9);
  });
  it("too low: the same", async () => {
    await part.set({ og_reading: 1.032, og_temperature: 60 });
    const [complaint] = part.complaints();
    expect(complaint?.text).toContain("Reading 1.032 is less than the malt gives");
    expect(complaint?.text).toContain("top-up water lying on top");
    expect(complaint?.text).toMatch(/Trust 1\.05\d/);
    expect(part.number("og")).toBeCloseTo(part.number("og_plan"), 9);
  });
  it("a reading a few points off is believed", async () => {
    await part.set({ og_reading: 1.05, og_temperature: 60 });
    expect(part.complaints()).toEqual([]);
    expect(part.number("og")).toBeCloseTo(1.05, 3);
  });
});

describe("where a check begins", () => {
  /** What is said about the values typed, after which the cells are as before. */
  const said = async (sheet: BatchSheet, typed: Readonly<Record<string, number>>): Promise<string> => {
    const before = Object.fromEntries(Object.keys(typed).map((name) => [name, sheet.get(name) ?? ""])) as Record<string, string | number>;
    await sheet.set(typed);
    const words = sheet
      .complaints()
      .map(({ state, text }) => `${state}: ${text}`)
      .join("\n");
    await sheet.set(before);
    return words;
  };

  it.each<[string, () => BatchSheet, string, number, number, RegExp]>([
    ["a steep above 170 °F", () => whole, "soak_temperature", 170, 170.5, /^look: Steeping above 170 °F/],
    ["a steep above 77 °C", () => metric, "soak_temperature", 77, 77.3, /^look: Steeping above 77 °C/],
    ["a steep of more than 45 minutes", () => whole, "soak_minutes", 45, 46, /^look: Steeped longer than needed/],
    ["a mash below 140 °F", () => mashed, "soak_temperature", 140, 139.5, /^look: A mash at 1(39|40) °F hardly/],
    ["a mash above 162 °F", () => mashed, "soak_temperature", 162, 162.5, /^look: A mash at 16[23] °F hardly/],
    ["an alpha acid above 25 %", () => whole, "hop_alpha", 25, 25.2, /^look: An alpha acid of 25\.2 %/],
    ["a hop that boils longer than the boil", () => whole, "hop_minutes", 60, 61, /^look: A hop is to boil longer/],
    ["fewer packs than the yeast needs", () => whole, "packs_in_hand", 2, 1.9, /^look: Too little yeast: 2 packs wanted, 1\.9 in hand/],
    ["top-up water as much as the batch", () => whole, "top_up", 4.9, 5, /nothing is left to boil/],
  ])("%s", async (_, sheet, name, inside, outside, words) => {
    expect(await said(sheet(), { [name]: inside })).not.toMatch(words);
    expect(await said(sheet(), { [name]: outside })).toMatch(words);
  });

  it("two degrees above what the yeast likes, or two below", async () => {
    const [low, high] = [whole.number("ferment_from"), whole.number("ferment_to")];
    for (const quiet of [high + 2, low - 2]) expect(await said(whole, { beer_temperatures: quiet })).toBe("");
    expect(await said(whole, { beer_temperatures: high + 2.1 })).toMatch(/^look: At \d+ °F it is too warm/);
    expect(await said(whole, { beer_temperatures: low - 2.1 })).toMatch(/^look: At \d+ °F it is so cold/);
  });

  it("where a kettle is less than a tenth larger than the hot wort, 4 % more than the cold; and where it is smaller", async () => {
    // 998.2 / 958.4 = 1.0415 (any steam table), rounded up.
    const hot = 1.042 * whole.number("water_before_boil");
    expect(await said(whole, { kettle_size: (hot / 0.9) * 1.002 })).toBe("");
    expect(await said(whole, { kettle_size: (hot / 0.9) * 0.998 })).toMatch(/^stop: Less than a tenth of the kettle is free/);
    expect(await said(whole, { kettle_size: hot * 1.002 })).toMatch(/^stop: Less than a tenth of the kettle is free/);
    expect(await said(whole, { kettle_size: hot * 0.998 })).toMatch(/^stop: Will not fit/);
  });

  it("0.008 from the gravity that extract and volume give, either way", async () => {
    await part.set({ og_reading: 1.05, og_temperature: 60 });
    const correction = part.number("og_reached") - 1.05;
    const expected = part.number("og_expected");
    await part.set({ og_reading: "", og_temperature: "" });
    for (const away of [-0.0079, 0.0079])
      expect(await said(part, { og_reading: expected + away - correction, og_temperature: 60 }), String(away)).toBe("");
    expect(await said(part, { og_reading: expected + 0.0082 - correction, og_temperature: 60 })).toMatch(
      /^look: Reading \S+ is more than the malt can give/,
    );
    expect(await said(part, { og_reading: expected - 0.0082 - correction, og_temperature: 60 })).toMatch(
      /^look: Reading \S+ is less than the malt gives/,
    );
  });

  it("ten hundredths from the efficiency that was planned", async () => {
    for (const [reading, efficiency, complaints] of [
      [1.0392, 59.7, 1],
      [1.0396, 60.3, 0],
      [1.05235, 79.7, 0],
      [1.05265, 80.3, 1],
    ] as const) {
      await mashed.set({ og_reading: reading, og_temperature: 60 });
      expect(mashed.number("efficiency_reached")).toBeCloseTo(efficiency, 0);
      expect(Math.abs(Math.abs(mashed.number("efficiency_reached") - 70) - 10), `${reading}`).toBeLessThan(0.4);
      expect(mashed.complaints()).toHaveLength(complaints);
    }
    await mashed.set({ og_reading: "", og_temperature: "" });
  });
});

describe("readings as the fermentation goes on", () => {
  const firstRow = () => Number(metric.cellOf("reading_times").slice(1));
  const write = async (range: string, values: (string | number)[][]) => {
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Metric").getRange(range).values = values;
      await context.sync();
    });
    await bench.calculate();
  };
  const read = async (lines: readonly (readonly [number, number])[]) => {
    const rows = Array.from({ length: 5 }, (_, index): (string | number)[] => {
      const line = lines[index];
      return line ? [line[0], line[1], "SG", 20] : ["", "", "", ""];
    });
    await write(`A${firstRow()}:D${firstRow() + 4}`, rows);
    return metric.get("verdict") ?? "";
  };

  it("goes from working to steady, and alcohol follows the gravity", async () => {
    expect(await read([[46273, 1.03]])).toBe("working");
    const early = Number(bench.valueAt("Metric", `H${firstRow()}`));
    expect(
      await read([
        [46273, 1.03],
        [46276, 1.014],
        [46277, 1.0125],
      ]),
    ).toBe("nearly");
    expect(
      await read([
        [46273, 1.03],
        [46276, 1.014],
        [46278, 1.012],
        [46279, 1.012],
      ]),
    ).toBe("steady");
    expect(early).toBeGreaterThan(2);
    expect(metric.number("abv_reached")).toBeGreaterThan(early + 1.5);
    expect(await read([])).toBe("");
  });
  it("a reading in °P is turned into gravity when its scale says so, and refused with a hint when it does not", async () => {
    const row = firstRow();
    await write(`A${row}:D${row}`, [[46273, 7.5, "P", 20]]);
    expect(Number(bench.valueAt("Metric", `F${row}`))).toBeCloseTo(1.0298, 3);
    await write(`C${row}`, [["SG"]]);
    expect(bench.valueAt("Metric", `F${row}`)).toBe("#VALUE!");
    const workbook = bench.univerAPI.getActiveWorkbook();
    const sheetId = workbook?.getSheetByName("Metric")?.getSheetId() ?? "";
    expect(bench.engine.errorMessageAt(workbook?.getId() ?? "", sheetId, row - 1, 5)).toContain("°P");
    await read([]);
  });
});
