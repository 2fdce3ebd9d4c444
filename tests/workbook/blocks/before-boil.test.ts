import { describe, expect, it } from "vitest";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { figure, shownWords } from "../../../src/workbook/batch/figures/on-its-sheet";
import { withBlocks } from "../../../src/workbook/batch/new-batch";
import { allSaid, laidOver } from "../../../src/workbook/batch/rules/what-it-says";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { batchFigures } from "../../../src/workbook/sheets/kit/batch-figures";
import { chance, kilogramsPerPound, litresPerGallon, madeUpBatch, saysOf, trueKit, type Kind } from "../../sheets/follow-the-sheet/batches";
import { follow, type TrueKit } from "../../sheets/follow-the-sheet/brewer";
import { calculatedSheet } from "../../support/calculated-sheet";

/** Water at 20 and at 72 °C, kg/L (IAPWS: 998.2 and 976.6). */
const hotOverCold = 998.2 / 976.6;

/** What a brewer with a stick and a hydrometer notes of what really happened, in the units of the sheet. */
function noted(batch: BatchContents, kit: TrueKit): { readonly batch: BatchContents; readonly seen: ReturnType<typeof follow> } {
  const litre = batch.units === "us" ? litresPerGallon : 1;
  const shown = (name: string): number => figure(batch, name) ?? 0;
  const seen = follow(
    saysOf(batch, {
      collect: shown("water_collect"),
      mashWater: batch.method === "extract" ? 0 : shown("mash_water"),
      spargeWater: batch.method === "extract" ? 0 : shown("sparge_water"),
    }),
    kit,
  );
  const [plain] = [withBlocks({ ...batch, kit: { ...batch.kit, hydrometerCalibratedAt: batch.units === "us" ? 68 : 20 } }, ["beforeBoil"])];
  const temperature = batch.units === "us" ? 161.6 : 72;
  const isMash = batch.method === "all-grain" && shown("grain_mass") > 0;
  return {
    seen,
    batch: {
      ...plain,
      wort: {
        ...plain.wort,
        collected: isMash ? shown("mash_water") + shown("sparge_water") : shown("water_collect"),
        volume: seen.fermenterL / litre,
      },
      beforeBoil: {
        volume: (seen.beforeBoilL * hotOverCold) / litre,
        temperature,
        reading: seen.gravityBeforeBoil,
        scale: "SG",
        sampleTemperature: batch.units === "us" ? 68 : 20,
        afterVolume: seen.afterChillingL / litre,
        afterTemperature: "",
        tunLeft: isMash ? kit.deadSpaceL / litre : "",
      },
    },
  };
}

const kinds: readonly Kind[] = (["extract", "all-grain"] as const).flatMap((method) =>
  (["us", "metric"] as const).map((units) => ({ method, units })),
);

describe.each(kinds)("a kit that is not as its sheet says: $method, $units", (kind) => {
  const random = chance(417);
  const batches = Array.from({ length: 25 }, () => madeUpBatch(random, kind));

  it("is told from what was measured around the boil, by a brewer who weighs water and sugar", () => {
    let [mashed, boiled] = [0, 0];
    for (const made of batches) {
      const asPlanned = trueKit(made);
      const kit: TrueKit = {
        boilOffLPerHour: asPlanned.boilOffLPerHour * (0.8 + 0.5 * random()),
        kettleLossL: asPlanned.kettleLossL * (0.6 + random()),
        absorptionLPerKg: asPlanned.absorptionLPerKg * (0.85 + 0.3 * random()),
        deadSpaceL: asPlanned.deadSpaceL * (0.5 + random()),
        grainEfficiencyPercent: asPlanned.grainEfficiencyPercent * (0.9 + 0.1 * random()),
      };
      const mashWater = figure(made, "mash_water") ?? 0;
      if (mashWater > (figure(made, "water_collect") ?? 0)) continue;
      const { batch, seen } = noted(made, kit);
      const told = batchFigures(calculatedSheet(planBatch(batch)));
      const because = JSON.stringify({ kit, told, batch: batch.malt });
      const grainKg = (figure(batch, "grain_mass") ?? 0) * (batch.units === "us" ? kilogramsPerPound : 1);
      // Volumes add up to half a per cent of the wort: the share of it that the figure is made of decides.
      const within = 0.005 * seen.beforeBoilL;
      if (grainKg > 0 && told.absorption !== undefined) {
        expect(Math.abs(told.absorption - kit.absorptionLPerKg) * grainKg, because).toBeLessThan(within);
        mashed += 1;
      }
      if (kind.method === "all-grain" && grainKg > 0) expect(told.deadSpace, because).toBeCloseTo(kit.deadSpaceL, 9);
      if (batch.kit.boilMinutes > 0) {
        expect(Math.abs((told.boilOff ?? 0) - kit.boilOffLPerHour) * (batch.kit.boilMinutes / 60), because).toBeLessThan(within);
        boiled += 1;
      }
      if (kind.method === "all-grain" && batch.malt.every(({ handling }) => handling === "mash"))
        expect(Math.abs((told.grainEfficiencyPercent ?? 0) - kit.grainEfficiencyPercent), because).toBeLessThan(0.8);
      if (batch.topUp === 0) expect(told.kettleLoss, because).toBeCloseTo(kit.kettleLossL, 9);
    }
    expect(boiled).toBeGreaterThan(15);
    if (kind.method === "all-grain") expect(mashed).toBeGreaterThan(12);
  });

  it("is told early enough what gravity it is heading for", () => {
    let followed = 0;
    for (const made of batches) {
      const asPlanned = trueKit(made);
      // What goes into the kettle is another matter than planned; the boil itself is as planned.
      const { batch, seen } = noted(made, {
        ...asPlanned,
        absorptionLPerKg: asPlanned.absorptionLPerKg * 1.1,
        grainEfficiencyPercent: asPlanned.grainEfficiencyPercent * 0.92,
      });
      if ((figure(made, "mash_water") ?? 0) > (figure(made, "water_collect") ?? 0)) continue;
      followed += 1;
      expect(Math.abs((figure(batch, "og_forecast") ?? 0) - seen.gravity), JSON.stringify(batch.malt)).toBeLessThan(0.0011);
    }
    expect(followed).toBeGreaterThan(15);
  });
});

describe("the check of what stands before the boil", () => {
  const batch = withBlocks(
    exampleBatch({ id: "b", sheetName: "B", batchName: "B", brewedOn: 46270, volume: 20, units: "metric", topUp: 0, method: "all-grain" }),
    ["beforeBoil"],
  );
  const planned = { volume: figure(batch, "water_before_boil")!, gravity: figure(batch, "before_planned")! };
  const on = (typed: Partial<NonNullable<BatchContents["beforeBoil"]>>, collected: number | "" = ""): BatchContents => ({
    ...batch,
    wort: { ...batch.wort, collected },
    beforeBoil: { ...batch.beforeBoil!, sampleTemperature: 20, ...typed },
  });
  const rulesOf = (contents: BatchContents): string[] =>
    allSaid(laidOver(calculatedSheet(planBatch(contents)))).flatMap(({ line, rule }) => (line === "before-boil" ? [rule] : []));

  it.each<[string, Partial<NonNullable<BatchContents["beforeBoil"]>>, string[]]>([
    ["nothing noted", {}, []],
    ["all as planned", { volume: planned.volume, reading: planned.gravity }, []],
    ["read hot, taken for cold", { volume: planned.volume * 1.12 }, ["before-boil.volume-off"]],
    ["a weak wort", { volume: planned.volume, reading: planned.gravity - 0.008 }, ["before-boil.gravity-off"]],
    ["more sugar than there is", { volume: planned.volume, reading: planned.gravity * 1.03 }, ["before-boil.more-than-all"]],
    ["more wort than water", { volume: planned.volume + 8 }, ["before-boil.nothing-kept"]],
    ["more in the tun than is missing", { volume: planned.volume, tunLeft: 15 }, ["before-boil.more-left-than-missing"]],
    ["more after than before", { volume: 24, afterVolume: 25 }, ["before-boil.more-after"]],
    ["a reading that no scale has", { reading: 1.5 }, ["before-boil.gravity-unknown"]],
  ])("%s", (_, typed, said) => {
    expect(rulesOf(on(typed))).toEqual(said);
  });

  it("is printed in the block, in the words that the rules say", () => {
    const weak = on({ volume: planned.volume, reading: planned.gravity - 0.008 });
    const [said] = allSaid(laidOver(calculatedSheet(planBatch(weak)))).filter(({ line }) => line === "before-boil");
    expect(shownWords(weak, "before_boil_check")).toBe("look");
    expect(said?.words).toMatch(/^It is heading for 1\.039, planned was 1\.048: now it can still be corrected/);
  });

  it("blames the tun, not the boil-off, for a litre that stayed in the tun", () => {
    const collected = figure(batch, "water_collect")!;
    // A litre less in the kettle, and with it in the fermenter; the boil went as planned.
    const short = { ...on({ volume: planned.volume - 1, tunLeft: 1 }, collected), wort: { ...batch.wort, collected, volume: 19 } };
    const told = batchFigures(calculatedSheet(planBatch(short)));
    expect(told.boilOff).toBeCloseTo(batch.kit.boilOff, 1);
    expect(told.deadSpace).toBe(1);
    expect(told.absorption).toBeCloseTo(batch.kit.absorption, 1);
    const { beforeBoil: _, ...blamed } = short;
    expect(batchFigures(calculatedSheet(planBatch(blamed))).boilOff).toBeGreaterThan(batch.kit.boilOff + 0.8);
  });
});
