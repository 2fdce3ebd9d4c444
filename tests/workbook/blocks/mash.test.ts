import { describe, expect, it } from "vitest";
import { callScalar } from "../../../src/functions/call";
import { functionNamed } from "../../../src/functions/registry";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { liftedBy } from "../../../src/workbook/batch/fields/blocks/mash";
import { figure, shownWords } from "../../../src/workbook/batch/figures/on-its-sheet";
import { withBlocks } from "../../../src/workbook/batch/new-batch";
import { allSaid, laidOver } from "../../../src/workbook/batch/rules/what-it-says";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { batchFigures } from "../../../src/workbook/sheets/kit/batch-figures";
import { chance, kilogramsPerPound, litresPerGallon } from "../../sheets/follow-the-sheet/batches";
import { decocted, doughedIn, gravityOf, poured, roomL, runOff, type Tun } from "../../sheets/follow-the-sheet/mash-tun";
import { calculatedSheet } from "../../support/calculated-sheet";

type Units = BatchContents["units"];
type Typed = NonNullable<BatchContents["mashRunOff"]>;
const unused: Typed["second"] = { temperature: "", minutes: "", by: "boiling water" };
const unread: Typed["first"] = { volume: "", temperature: "", reading: "", sampleTemperature: "" };

function mashed(units: Units, typed: Partial<Typed>, kit: Partial<BatchContents["kit"]> = {}): BatchContents {
  const us = units === "us";
  const batch = withBlocks(
    exampleBatch({
      id: "b",
      sheetName: "B",
      batchName: "B",
      brewedOn: 46270,
      volume: us ? 5 : 20,
      units,
      topUp: 0,
      method: "all-grain",
    }),
    ["mashRunOff"],
  );
  const kilogram = us ? 1 / kilogramsPerPound : 1;
  return {
    ...batch,
    malt: [
      { ingredient: "Pale malt", mass: 4.4 * kilogram, yieldPercent: 80, handling: "mash", colour: 4, cost: "" },
      { ingredient: "Dry extract", mass: 0.3 * kilogram, yieldPercent: 95, handling: "extract", colour: 4, cost: "" },
    ],
    kit: {
      ...batch.kit,
      soakTemperature: us ? 127 : 53,
      mashThickness: us ? 0.3 : 2.5,
      hydrometerCalibratedAt: us ? 68 : 20,
      tunSize: us ? 12 : 45,
      ...kit,
    },
    mashRunOff: { ...batch.mashRunOff!, ...typed },
  };
}
const shown = (batch: BatchContents, name: string): number => figure(batch, name) ?? NaN;
const rulesOf = (batch: BatchContents, line = "mash-run-off"): string[] =>
  allSaid(laidOver(calculatedSheet(planBatch(batch)))).flatMap((said) => (said.line === line ? [said.rule] : []));
const celsius = (value: number, units: Units): number => (units === "us" ? (value - 32) / 1.8 : value);

describe.each(["metric", "us"] as const)("a step mash (%s)", (units) => {
  const [litre, pound] = units === "us" ? [litresPerGallon, kilogramsPerPound] : [1, 1];
  const random = chance(902);
  const rests = ["second", "third", "fourth"] as const;
  const drawn = Array.from({ length: 24 }, () => {
    let warm = units === "us" ? 127 : 53;
    const steps = rests.map(() => {
      warm += Math.round((units === "us" ? 7 : 4) + random() * (units === "us" ? 9 : 5));
      return { temperature: warm, minutes: 15, by: liftedBy[Math.floor(random() * liftedBy.length)] ?? "heating" } as const;
    });
    const used = steps.slice(0, 1 + Math.floor(random() * 3));
    return mashed(units, Object.fromEntries(used.map((step, index) => [rests[index], step])));
  });

  // Whatever was drawn: what was poured in for one rest must be warmed for the next.
  const [one, two, three] = units === "us" ? [136, 147, 158] : [58, 64, 70];
  const waterOnly = [one, two, three].map((temperature) => ({ temperature, minutes: 15, by: "boiling water" }) as const);
  drawn.push(
    mashed(
      units,
      { second: waterOnly[0]!, third: waterOnly[1]!, fourth: waterOnly[2]! },
      units === "us" ? { tunSize: 20 } : { tunSize: 70 },
    ),
  );

  it("comes to each of its rests, by kilojoules, with what the sheet asks for", () => {
    let [infused, drew] = [0, 0];
    for (const batch of drawn) {
      const boilsAt = celsius(shown(batch, "boils_at"), units);
      let tun: Tun = doughedIn(
        shown(batch, "grain_mass") * pound,
        shown(batch, "mash_water") * litre,
        celsius(batch.kit.soakTemperature, units),
      );
      for (const name of rests) {
        const { temperature, by } = batch.mashRunOff![name];
        if (temperature === "") continue;
        const amount = shown(batch, `${name}_amount`) * litre;
        if (by === "boiling water") tun = poured(tun, amount, boilsAt);
        else if (by === "decoction") tun = decocted(tun, amount, boilsAt);
        else tun = { ...tun, temperature: celsius(temperature, units) };
        infused += by === "boiling water" ? 1 : 0;
        drew += by === "decoction" ? 1 : 0;
        expect(Math.abs(tun.temperature - celsius(temperature, units)), JSON.stringify(batch.mashRunOff)).toBeLessThan(0.35);
        tun = { ...tun, temperature: celsius(temperature, units) };
      }
      // The water of the mash and of the sparge is the water that is collected.
      const full = shown(batch, "mash_full");
      expect(Math.abs(tun.waterKg / 0.99823 / litre - full)).toBeLessThan(0.001 * full);
      const collected = shown(batch, "water_collect");
      if (full <= collected) expect(full + shown(batch, "sparge_water")).toBeCloseTo(collected, 9);
      else expect(rulesOf(batch)).toEqual(["mash-run-off.no-water-left"]);
    }
    expect(infused).toBeGreaterThan(8);
    expect(drew).toBeGreaterThan(8);
  });

  it("asks for what GYLE.WATER.STEP and GYLE.MASH.BOILED answer", () => {
    const answer = (id: string, ...typed: unknown[]) => callScalar(functionNamed(id), typed);
    const [one, two] = units === "us" ? [140, 152] : [60, 67];
    const batch = mashed(units, {
      second: { temperature: one, minutes: 10, by: "boiling water" },
      third: { temperature: two, minutes: 10, by: "decoction" },
    });
    const [grain, water, boils] = ["grain_mass", "mash_water", "boils_at"].map((name) => shown(batch, name)) as [number, number, number];
    const first = shown(batch, "second_amount");
    expect(first).toBeCloseTo(Number(answer("WATER.STEP", grain, water, batch.kit.soakTemperature, one, boils, units)), 5);
    const room = Number(answer("MASH.ROOM", grain, water + first, units));
    expect(shown(batch, "third_amount")).toBeCloseTo(Number(answer("MASH.BOILED", room, one, two, boils, units)), 3);
  });

  it("plans what runs off, and tells conversion, efficiency and what the grain keeps from what ran off", () => {
    for (let trial = 0; trial < 12; trial += 1) {
      const conversion = 80 + 20 * random();
      const absorption = 0.8 + 0.4 * random();
      const planned = mashed(
        units,
        { conversionPercent: conversion },
        { absorption: (absorption * pound) / litre, mashThickness: units === "us" ? 0.36 : 3, deadSpace: 0.4 / litre },
      );
      const grainKg = shown(planned, "grain_mass") * pound;
      const sugarKg = (grainKg * 0.8 * conversion) / 100;
      const keptL = grainKg * absorption + 0.4;
      const tun = doughedIn(grainKg, shown(planned, "mash_water") * litre, 66);
      const [first, later] = runOff(tun, sugarKg, keptL, [shown(planned, "sparge_water") * litre]);
      const sheet = calculatedSheet(planBatch(planned));
      const [, , firstPlan, laterPlan] = sheet.block("runnings_planned").map((cells) => cells.map(Number));
      expect(Math.abs(firstPlan![1]! * litre - first!.volumeL)).toBeLessThan(0.02);
      expect(Math.abs(firstPlan![2]! - gravityOf(first!))).toBeLessThan(0.0006);
      expect(Math.abs(laterPlan![1]! * litre - later!.volumeL)).toBeLessThan(0.03);
      expect(Math.abs(laterPlan![2]! - gravityOf(later!))).toBeLessThan(0.0006);
      const read = (ran: typeof first): Typed["first"] => ({
        // Read at 72 °C: water takes 998.2 / 976.6 of its room there (steam table).
        volume: (ran!.volumeL * (998.2 / 976.6)) / litre,
        temperature: units === "us" ? 161.6 : 72,
        reading: gravityOf(ran!),
        sampleTemperature: units === "us" ? 68 : 20,
      });
      const noted = { ...planned, mashRunOff: { ...planned.mashRunOff!, first: read(first), later: read(later) } };
      const reached = (100 * (first!.sugarKg + later!.sugarKg)) / (grainKg * 0.8);
      expect(Math.abs(shown(noted, "runnings_efficiency") - reached)).toBeLessThan(0.5);
      expect(Math.abs(shown(noted, "runnings_expected") - reached)).toBeLessThan(0.5);
      expect(Math.abs(shown(noted, "conversion_seen") - conversion)).toBeLessThan(0.6);
      expect(Math.abs((shown(noted, "runnings_kept") * litre) / pound - absorption)).toBeLessThan(0.03);
      expect(rulesOf(noted)).toEqual(conversion < 84.4 ? ["mash-run-off.poor-mash"] : conversion > 85.6 ? [] : rulesOf(noted));
      // The kit learns both from the runnings, where nothing was noted before the boil.
      const told = batchFigures(calculatedSheet(planBatch(noted)));
      expect(told.grainEfficiencyPercent).toBeCloseTo(shown(noted, "runnings_efficiency"), 9);
      expect(Math.abs(told.absorption! - absorption)).toBeLessThan(0.03);
    }
  });
});

describe("a mash that its tun does not hold", () => {
  const step = { temperature: 72, minutes: 20, by: "boiling water" } as const;
  const roomy = mashed("metric", { second: step }, { soakTemperature: 62 });
  const grain = { grainKg: 4.4, waterKg: shown(roomy, "mash_full") * 0.99823, temperature: 72 };
  const needed = roomL(grain);

  it("is not poured full: the amount is withheld, and both checks say why", () => {
    const small = mashed("metric", { second: step }, { soakTemperature: 62, tunSize: needed * 0.97 });
    expect(shown(roomy, "second_amount")).toBeGreaterThan(2);
    expect(rulesOf(roomy)).toEqual([]);
    expect(rulesOf(roomy, "room")).toEqual([]);
    expect(shownWords(small, "second_amount")).toBe("");
    expect(figure(small, "second_amount")).toBeUndefined();
    expect(rulesOf(small)).toEqual(["mash-run-off.second-too-full"]);
    expect(rulesOf(small, "room")).toEqual(["room.tun-too-small"]);
    // By decoction nothing more goes in.
    const decoction = mashed("metric", { second: { ...step, by: "decoction" } }, { soakTemperature: 62, tunSize: needed * 0.97 });
    expect(shown(decoction, "second_amount")).toBeGreaterThan(1);
    expect(rulesOf(decoction)).toEqual([]);
  });

  it("goes by the kettle where the mash stands in it", () => {
    const inKettle = mashed("metric", { second: step }, { soakTemperature: 62, tunSize: 0, kettleSize: needed * 0.97 });
    expect(figure(inKettle, "second_amount")).toBeUndefined();
    expect(rulesOf(inKettle)).toEqual(["mash-run-off.second-too-full"]);
  });
});

describe("the checks of a mash", () => {
  const at = (temperature: number | "", by: Typed["second"]["by"] = "boiling water"): Typed["second"] => ({ temperature, minutes: 20, by });
  const read = (volume: number | "", reading: number | "", sampleTemperature: number | "" = 20): Typed["first"] => ({
    ...unread,
    volume,
    reading,
    sampleTemperature,
  });
  it.each<[string, Partial<Typed>, string[]]>([
    ["nothing typed", {}, []],
    ["a rest left out", { second: unused, third: at(67) }, ["mash-run-off.third-out-of-turn"]],
    ["colder than before", { second: at(67), third: at(63) }, ["mash-run-off.third-not-warmer"]],
    ["as strong as nothing is", { first: read(6.6, 1.16), later: read(18, 1.02) }, ["mash-run-off.more-than-all"]],
    ["one for the other", { first: read(6.6, 1.02), later: read(18, 1.08) }, ["mash-run-off.later-is-stronger"]],
    ["a slow tap", { first: read(3, 1.095) }, ["mash-run-off.volume-off"]],
    ["a poor crush", { first: read(6.6, 1.07) }, ["mash-run-off.poor-mash"]],
    ["read hot", { first: read(7.2, 1.096), later: read(27, 1.01) }, ["mash-run-off.more-than-water"]],
    ["a reading that no scale has", { first: read(6.6, 1.5) }, ["mash-run-off.reading-unknown"]],
  ])("%s", (_, typed, said) => {
    expect(rulesOf(mashed("metric", typed))).toEqual(said);
  });

  it("needs malt: rests of nothing are told", () => {
    const sugared = (typed: Partial<Typed>): BatchContents => {
      const batch = mashed("metric", typed);
      return { ...batch, malt: batch.malt.filter(({ handling }) => handling !== "mash") };
    };
    expect(rulesOf(sugared({ second: at(67) }))).toEqual(["mash-run-off.no-malt"]);
    expect(rulesOf(sugared({}))).toEqual([]);
  });

  it("asks of all rests together whether starch turns into sugar", () => {
    expect(rulesOf(mashed("metric", {}), "mash")).toEqual(["mash.temperature"]);
    expect(rulesOf(mashed("metric", { second: at(64, "heating") }), "mash")).toEqual([]);
    expect(rulesOf(mashed("metric", { second: at(58, "heating") }), "mash")).toEqual(["mash.temperature"]);
  });
});

describe.each(["metric", "us"] as const)("after the last rest (%s)", (units) => {
  const [boils, first, last] = units === "us" ? [212, 127, 169] : [100, 53, 76];
  const rested = (second: Partial<Typed["second"]>) => mashed(units, { second: { ...unused, ...second }, third: unused, fourth: unused });

  it("the way to the boil begins where the mash ended", () => {
    // The same water over the same flame: minutes go by the degrees that are left to the boil.
    const [plain, lifted] = [
      figure(rested({}), "boil_up_minutes")!,
      figure(rested({ temperature: last, minutes: 10, by: "heating" }), "boil_up_minutes")!,
    ];
    expect(Math.abs(lifted / plain - (boils - last) / (boils - first))).toBeLessThan(0.02);
  });

  it("a tun that has less than a tenth free is told before it slops over", () => {
    const said = (size: number) =>
      allSaid(
        laidOver(calculatedSheet(planBatch(mashed(units, { second: unused, third: unused, fourth: unused }, { tunSize: size })))),
      ).flatMap(({ rule }) => (rule.startsWith("room.tun") ? [rule] : []));
    const litre = units === "us" ? 1 / litresPerGallon : 1;
    const full = [..."0".repeat(60)]
      .map((_, index) => (8 + index * 0.5) * litre)
      .filter((size) => said(size).includes("room.tun-too-small"))
      .at(-1)!;
    expect(said(full * 1.06)).toEqual(["room.tun-nearly-full"]);
    expect(said(full * 1.25)).toEqual([]);
    expect(said(0)).toEqual([]);
  });
});
