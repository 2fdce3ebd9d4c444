import { describe, expect, it } from "vitest";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import type { BlockKey } from "../../../src/workbook/batch/fields/blocks";
import { figure, shownWords } from "../../../src/workbook/batch/figures/on-its-sheet";
import { withBlocks } from "../../../src/workbook/batch/new-batch";
import { allSaid, laidOver } from "../../../src/workbook/batch/rules/what-it-says";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { packagingFigures } from "../../../src/workbook/brewing/companion/packaging/packaging-figures";
import { packagingIn } from "../../../src/workbook/brewing/companion/packaging/packaging-form";
import { packagingSafety } from "../../../src/workbook/brewing/companion/packaging/packaging-safety";
import { calculatedSheet } from "../../support/calculated-sheet";

const example = (units: BatchContents["units"], ...blocks: readonly BlockKey[]): BatchContents =>
  withBlocks(
    exampleBatch({
      id: "b",
      sheetName: "B",
      batchName: "B",
      brewedOn: 46270,
      volume: units === "us" ? 5 : 20,
      units,
      topUp: 0,
      method: "all-grain",
    }),
    blocks,
  );
const rulesOf = (batch: BatchContents, id: string): string[] =>
  allSaid(laidOver(calculatedSheet(planBatch(batch)))).flatMap(({ line, rule, state }) => (line === id ? [`${state} ${rule}`] : []));

describe("late and dry hops", () => {
  const batch = example("metric", "lateHops");
  const withHops = (hops: BatchContents["hops"], typed: Partial<NonNullable<BatchContents["lateHops"]>> = {}): BatchContents => ({
    ...batch,
    hops,
    hopStand: { temperature: 80, minutes: 20 },
    lateHops: { ...batch.lateHops!, ...typed },
  });
  const hop = (minutes: BatchContents["hops"][number]["minutes"], mass: number) =>
    ({ hop: "Hop", mass, alphaPercent: 6, minutes, form: "", cost: "" }) as const;

  it("rests on readings from after the planned stay of the dry hops, until their day is noted", () => {
    const hopped = (dryAfter: number | "", days: readonly number[], dryHoppedOn: number | "" = ""): BatchContents => {
      const typed = withHops([...batch.hops, hop("dry", 80)], { dryAfter, dryFor: dryAfter === "" ? "" : 4 });
      return {
        ...typed,
        dryHoppedOn,
        yeast: { ...typed.yeast, attenuationPercent: 75 },
        wort: { ...typed.wort, reading: 1.048, sampleTemperature: 20, volume: 20 },
        readings: days.map((day) => ({
          when: 46270.75 + day,
          reading: 1.012,
          scale: "SG" as const,
          sampleTemperature: 20,
          beerTemperature: 19,
        })),
      };
    };
    const verdict = (one: BatchContents) => shownWords(one, "verdict");
    // Without planned days two readings a day apart are enough, as they are without dry hops.
    expect(verdict(hopped("", [6, 7]))).toBe("steady");
    for (const days of [
      [6, 7],
      [8, 9],
      [6, 7, 8, 9, 10],
    ]) {
      expect(verdict(hopped(8, days)), days.join()).not.toBe("steady");
      expect(shownWords(hopped(8, days), "next_step"), days.join()).not.toContain("package it");
      const packaged = hopped(8, days);
      expect(rulesOf({ ...packaged, packaging: { ...packaged.packaging, into: "bottles", packagedOn: 46282 } }, "finished")).toEqual([
        "stop finished.too-early-after-hops",
      ]);
    }
    expect(shownWords(hopped(8, [6, 7]), "next_step")).toContain("Dry hops can wake");
    // In on the eighth day, out on the twelfth: two from after that agree.
    expect(verdict(hopped(8, [7, 14, 15]))).toBe("steady");
    // What is noted counts before what was planned.
    expect(verdict(hopped(8, [6, 7, 8], 46274))).toBe("steady");
  });

  it("goes by the model that was chosen: card, shares and all", () => {
    const figures = (["tinseth", "rager", "kinetic"] as const).map((model) => {
      const chosen = withHops([hop(60, 30), hop(20, 30), hop("stand", 20)], { model });
      expect(figure(chosen, "ibu_plan")).toBeCloseTo(figure(chosen, `ibu_${model}`)!, 9);
      return figure(chosen, "ibu_plan")!;
    });
    expect(new Set(figures.map((ibu) => ibu.toFixed(1))).size).toBe(3);
    // Without the block it is Tinseth's.
    const { lateHops: _, ...plain } = withHops([hop(60, 30), hop(20, 30), hop("stand", 20)]);
    expect(figure(plain, "ibu_plan")).toBeCloseTo(figures[0]!, 9);
  });

  it("adds up what stands and what lies in the beer, and tells its days", () => {
    const typed = withHops([hop(60, 30), hop("stand", 20), hop("dry", 60), hop("dry", 40)], { dryAfter: 7, dryFor: 3 });
    expect([figure(typed, "stand_mass"), figure(typed, "dry_mass"), figure(typed, "dry_rate")]).toEqual([20, 100, 5]);
    const all = figure(typed, "ibu_plan")!;
    const boiled = figure(withHops([hop(60, 30)]), "ibu_plan")!;
    // What is boiled gains nothing from hops beside it.
    expect(figure(typed, "stand_bitterness")).toBeCloseTo(all - boiled, 6);
    // Brewed on day 46270, pitched the same evening.
    expect([figure(typed, "dry_in"), figure(typed, "dry_out")]).toEqual([46277, 46280]);
  });

  it.each<[string, BatchContents, string[]]>([
    ["nothing dry", withHops([hop(60, 30)]), []],
    ["a usual amount", withHops([hop("dry", 100)]), []],
    ["more than brings scent", withHops([hop("dry", 300)]), ["look late-hops.much-dry"]],
    [
      "planned into working beer",
      {
        ...withHops([hop("dry", 100)], { dryAfter: 3 }),
        readings: [{ when: 46273.5, reading: 1.03, scale: "SG", sampleTemperature: 20, beerTemperature: 20 }],
      },
      ["look late-hops.dry-before-finished"],
    ],
  ])("%s", (_, typed, said) => {
    expect(rulesOf(typed, "late-hops")).toEqual(said);
  });

  it("tells what dry hops do to the bitterness, and that they can wake the beer up", () => {
    const boiled = (mass: number) => withHops([hop(60, mass), hop("dry", 154.8)]);
    const mass = (30 * 48) / figure(boiled(30), "ibu_plan")!;
    expect(figure(boiled(mass), "ibu_plan")).toBeCloseTo(48, 6);
    // Maye and Smith 2016 (from memory): 48 mg/L fall to 30 while 24 of humulinones come in, of which 0.66 taste: 45.8.
    expect(Math.abs(figure(boiled(mass), "dry_bitterness")! - 45.8)).toBeLessThan(0.8);
    const sheet = calculatedSheet(planBatch(boiled(mass)));
    expect([...sheet.filled()].some(({ address, value }) => address.startsWith("A") && /wake the yeast/.test(String(value)))).toBe(true);
  });

  it("says g/L and oz/US gal of the same dry hops alike", () => {
    const us = { ...example("us", "lateHops"), hops: [{ ...hop("dry", 8), hop: "Hop" }] };
    // 8 oz in 5 US gal: 226.8 g in 18.93 L, 12 g/L.
    expect(figure(us, "dry_rate")! * 7.489).toBeCloseTo(226.8 / 18.927, 2);
    expect(rulesOf(us, "late-hops")).toEqual(["look late-hops.much-dry"]);
  });
});

describe("a starter", () => {
  const on = (
    units: BatchContents["units"],
    yeast: Partial<BatchContents["yeast"]>,
    typed: Partial<NonNullable<BatchContents["starter"]>> = {},
  ): BatchContents => {
    const batch = example(units, "starter");
    return { ...batch, yeast: { ...batch.yeast, ...yeast }, starter: { ...batch.starter!, ...typed } };
  };
  const liquid = { name: "Clean ale yeast, liquid", packsInHand: 1, cellsPerPack: 100, viabilityPercent: 100 } as const;

  it("grows a pack to what the batch wants, by the table", () => {
    const plain = on("metric", liquid);
    // White and Zainasheff, Yeast, 2010 (from memory): 205 billion from a pack of 100 in 2 L of 1.036. The rate asks for just so many here.
    const rate = (0.75 * 205) / figure(plain, "cells_wanted")!;
    const asked = on("metric", { ...liquid, pitchRate: rate });
    expect(figure(asked, "cells_wanted")).toBeCloseTo(205, 6);
    expect(Math.abs(figure(asked, "starter_volume")! - 2)).toBeLessThan(0.15);
    // Common practice: 100 g of dry extract to the litre.
    expect(Math.abs(figure(asked, "starter_extract")! / figure(asked, "starter_volume")! - 0.1)).toBeLessThan(0.01);
    expect(figure(asked, "starter_by")).toBe(46268);
    const us = on("us", { ...liquid, pitchRate: (0.75 * 205) / figure(on("us", liquid), "cells_wanted")! });
    expect(figure(us, "starter_volume")! * 3.785411784).toBeCloseTo(figure(asked, "starter_volume")!, 6);
    expect(figure(us, "starter_extract")! * 0.45359237).toBeCloseTo(figure(asked, "starter_extract")!, 4);
  });

  it.each<[string, BatchContents, string[]]>([
    ["one pack", on("metric", { ...liquid, viabilityPercent: 90 }), []],
    ["no cells known", on("metric", { cellsPerPack: "" }), ["look starter.cells-missing"]],
    ["dry yeast", on("metric", { ...liquid, name: "Clean ale yeast, dry", viabilityPercent: 90 }), ["look starter.dry-yeast"]],
    ["almost dead", on("metric", { ...liquid, viabilityPercent: 10 }), ["look starter.cannot"]],
    ["cells enough", on("metric", { ...liquid, cellsPerPack: 400 }), ["look starter.none-needed"]],
    ["too small a flask", on("metric", { ...liquid, viabilityPercent: 90 }, { vessel: 0.5 }), ["look starter.vessel-too-small"]],
    ["two packs of one", on("metric", { ...liquid, viabilityPercent: 60 }, { packs: 2 }), ["look starter.more-packs-than-in-hand"]],
    ["made on the day", on("metric", { ...liquid, viabilityPercent: 90 }, { madeOn: 46270 }), ["look starter.too-late"]],
  ])("%s", (_, typed, said) => {
    expect(rulesOf(typed, "starter")).toEqual(said);
  });

  it.each([
    [1, 0.5, "The starter takes 1 pack; in hand: 0.5."],
    [2, 1, "The starter takes 2 packs; in hand: 1."],
  ])("says one pack and several: %s", (packs, packsInHand, words) => {
    const typed = on("metric", { ...liquid, viabilityPercent: 60, packsInHand }, { packs });
    const shown = [...calculatedSheet(planBatch(typed)).filled()].map(({ value }) => String(value));
    expect(shown.filter((value) => value.startsWith("The starter takes"))).toEqual([words]);
  });

  it("is smaller where it is stirred", () => {
    const [still, stirred] = (["still", "stirred"] as const).map((culture) => figure(on("metric", liquid, { culture }), "starter_volume")!);
    expect(stirred).toBeGreaterThan(0);
    expect(stirred).toBeLessThan(0.7 * still!);
  });

  it("stands in for packs that nobody has to buy", () => {
    const short = on("metric", { ...liquid, viabilityPercent: 90 });
    expect(rulesOf(short, "yeast")).toEqual([]);
    const { starter: _, ...without } = short;
    expect(rulesOf(without, "yeast")).toEqual(["look yeast.too-few-packs"]);
  });
});

describe("keg and line", () => {
  const on = (
    units: BatchContents["units"],
    packaging: Partial<BatchContents["packaging"]>,
    typed: Partial<NonNullable<BatchContents["kegLine"]>> = {},
  ): BatchContents => {
    const batch = example(units, "kegLine");
    return { ...batch, packaging: { ...batch.packaging, ...packaging }, kegLine: { ...batch.kegLine!, ...typed } };
  };

  it("tells at which gravity to close it, while it ferments", () => {
    const fermenting = (plate: number | "", reading = 1.025): BatchContents => {
      const batch = on("metric", { into: "keg", co2Volumes: 2.4, kegTemperature: 4 }, { plate });
      return {
        ...batch,
        yeast: { ...batch.yeast, attenuationPercent: 75, fermentTo: 18 },
        wort: { ...batch.wort, reading: 1.048, sampleTemperature: 20, volume: 20 },
        readings: [{ when: 46272.5, reading, scale: "SG", sampleTemperature: 20, beerTemperature: 18 }],
      };
    };
    // By hand (see GYLE.PACK.SPUND): 2.4 − 0.863 = 1.537 volumes, 0.183 in the space above; 1.72 / 0.5 = 3.44 points above the end.
    const expected = figure(fermenting(4), "fg_expected")!;
    expect(expected).toBeCloseTo(1.012, 3);
    expect(Math.abs(figure(fermenting(4), "spund_at")! - expected - 0.00344)).toBeLessThan(0.0001);
    expect(rulesOf(fermenting(4), "keg-line")).toEqual([]);
    // No plate, no figure; a plate that bears too little, none either.
    expect(figure(fermenting(""), "spund_at")).toBeUndefined();
    expect(figure(fermenting(1.6), "spund_at")).toBeUndefined();
    expect(rulesOf(fermenting(1.6), "keg-line")).toEqual(["look keg-line.spund"]);
  });

  it("counts the kegs and cuts the line", () => {
    const kegged = on("metric", { into: "keg", co2Volumes: 2.4, kegTemperature: 4 }, { height: 0.5 });
    // 19.5 L into kegs of 19; into two of 10.
    expect([figure(kegged, "kegs_ready"), figure(on("metric", { into: "keg" }, { holds: 10 }), "kegs_ready")]).toEqual([2, 2]);
    // Darcy and Weisbach by hand for 5 mm, 3 L/min: v = 2.546 m/s, Re = 5143, f = 0.316 / 5143^0.25 = 0.03731; 1010 × 2.546² × 0.03731 / (2 × 0.005) Pa/m = 0.2444 bar/m.
    const bar = figure(kegged, "keg_pressure")!;
    expect(figure(kegged, "line_length")).toBeCloseTo((bar - (1010 * 9.80665 * 0.5) / 1e5) / 0.2444, 2);
    expect(figure(on("metric", { into: "bottles" }), "line_length")).toBeUndefined();
  });

  it.each<[string, BatchContents, string[]]>([
    ["bottles", on("metric", { into: "bottles" }), []],
    ["a keg that bears it", on("metric", { into: "keg" }, { plate: 9 }), []],
    ["a plate that says less", on("metric", { into: "keg", kegTemperature: 20 }, { plate: 1 }), ["stop keg-line.above-the-plate"]],
    ["in psi", on("us", { into: "keg", kegTemperature: 68 }, { plate: 15 }), ["stop keg-line.above-the-plate"]],
    [
      "a tap that the beer does not reach",
      on("metric", { into: "keg", kegTemperature: 0, co2Volumes: 1.8 }, { height: 9 }),
      ["look keg-line.line"],
    ],
    ["more than there is", on("metric", { into: "keg" }, { filled: 25 }), ["look keg-line.more-than-beer"]],
  ])("%s", (_, typed, said) => {
    expect(rulesOf(typed, "keg-line")).toEqual(said);
  });

  it.each<["metric" | "us", number, number, number]>([
    // 2.5 volumes at 20 °C take 2.087 bar (worked by hand beside GYLE.PACK.PRESSURE); 30.27 psi at 68 °F.
    ["metric", 20, 2.0, 2.1],
    ["us", 68, 30, 31],
  ])("gives no pressure above the plate, wherever it stands (%s)", (units, kegTemperature, tooLittle, enough) => {
    const kegged = (plate: number | "") => on(units, { into: "keg", co2Volumes: 2.5, kegTemperature }, { plate });
    for (const plate of [enough, ""] as const) {
      expect(figure(kegged(plate), "keg_pressure")).toBeGreaterThan(tooLittle);
      expect(shownWords(kegged(plate), "pressure_verdict")).toMatch(/^within:/);
      expect(rulesOf(kegged(plate), "pressure")).toEqual([]);
    }
    const batch = kegged(tooLittle);
    expect(figure(batch, "keg_pressure")).toBeUndefined();
    expect(shownWords(batch, "pressure_verdict")).toMatch(/^over: .*above the pressure on its plate.*Do not/);
    expect(rulesOf(batch, "pressure")).toEqual(["stop pressure.refused"]);
    const sheet = calculatedSheet(planBatch(batch));
    const form = packagingIn(sheet);
    expect(packagingFigures(sheet, form).pressure.value).toBeUndefined();
    expect(packagingSafety(sheet, form)).toMatchObject({ level: "refuse" });
    expect(packagingSafety(sheet, form).instead).toContain("Chill the beer.");
    // The same of a part that goes into a keg; the one in bottles has no plate.
    const halves = withBlocks({ ...batch, packaging: { ...batch.packaging, into: "bottles" } }, ["partsOfWort"]);
    const parts = halves.partsOfWort!;
    const inParts = {
      ...halves,
      partsOfWort: {
        ...parts,
        one: { ...parts.one, volume: 2, into: "keg", warmestPlace: kegTemperature },
        two: { ...parts.two, volume: 2, into: "bottles" },
      },
    };
    expect(figure(inParts, "part_one_pressure")).toBeUndefined();
    expect(shownWords(inParts, "part_one_verdict")).toContain("above the pressure on its plate");
    expect(shownWords(inParts, "part_two_verdict")).not.toContain("plate");
    expect(rulesOf(inParts, "pressure")).toEqual(["stop pressure.part-refused"]);
    expect(rulesOf(inParts, "keg-line")).toEqual(["stop keg-line.above-the-plate"]);
  });
});
