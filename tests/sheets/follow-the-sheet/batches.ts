import type { BatchContents, MaltLine } from "../../../src/workbook/batch/contents";
import { newBatch } from "../../../src/workbook/batch/new-batch";
import type { TrueKit, WhatTheSheetSays } from "./brewer";

/** Exact by definition (NIST SP 811). */
export const [litresPerGallon, kilogramsPerPound] = [3.785411784, 0.45359237] as const;

/** Numbers from 0 to 1, the same ones for the same seed (mulberry32, public domain). */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export interface Kind {
  readonly method: BatchContents["method"];
  readonly units: BatchContents["units"];
}

/** A made-up batch as somebody might type it: 2 to 200 L, weak to strong, whole and part boils, with or without a tun. */
export function madeUpBatch(random: () => number, { method, units }: Kind): BatchContents {
  const between = (from: number, to: number): number => from + (to - from) * random();
  const likely = (share: number): boolean => random() < share;
  const volumeL = 2 * 100 ** random();
  const inUnits = (value: number, factor: number): number => Number((value / factor).toPrecision(4));
  const [gallon, pound] = units === "us" ? [litresPerGallon, kilogramsPerPound] : [1, 1];
  const litres = (value: number): number => inUnits(value, gallon);
  const kilograms = (value: number): number => inUnits(value, pound);
  const perKilogram = (value: number): number => inUnits(value, gallon / pound);

  const topUpShare = likely(method === "extract" ? 0.5 : 0.15) ? between(0.1, 0.6) : 0;
  const strength = between(0.085, topUpShare > 0.3 ? 0.16 : 0.27);
  const efficiency = method === "extract" ? between(25, 75) : between(55, 92);
  const sugarKg = volumeL * strength;
  const grainShare = method === "extract" ? (likely(0.3) ? 0 : between(0.01, 0.2)) : likely(0.6) ? 1 : between(0.3, 0.9);
  const dryShare = random();
  const line = (ingredient: string, handling: MaltLine["handling"], yieldPercent: number, extractKg: number): MaltLine => ({
    ingredient,
    handling,
    yieldPercent: Number(yieldPercent.toFixed(1)),
    mass: kilograms(extractKg / (yieldPercent / 100)),
    colour: 5,
    cost: "",
  });
  const rest = sugarKg * (1 - grainShare);
  const malt = [
    ...(grainShare > 0
      ? [line("Grain", method === "extract" ? "steep" : "mash", between(65, 82), (sugarKg * grainShare) / (efficiency / 100))]
      : []),
    ...(rest > 0
      ? [
          line("Liquid extract", "extract", between(74, 83), rest * (1 - dryShare) * 0.9),
          line("Dry extract", "extract", between(88, 97), rest * dryShare * 0.9),
          line("Sugar", "sugar", 100, rest * 0.1),
        ]
      : []),
  ].filter(({ mass }) => mass > 0);

  const wholeMash = likely(0.3);
  const grainKg = malt
    .filter(({ handling }) => handling === "mash" || handling === "steep")
    .reduce((sum, { mass }) => sum + mass * pound, 0);
  const batch = newBatch({
    id: "follow",
    sheetName: `Follow ${method} ${units}`,
    batchName: "Follow",
    brewedOn: 46270,
    volume: litres(volumeL),
    units,
    topUp: litres(volumeL * topUpShare),
    method,
  });
  const tunSizeL = method === "all-grain" && likely(0.6) ? between(0.8, 1.5) * Math.max(1, grainKg) * 4 : 0;
  return {
    ...batch,
    malt,
    yeast: { ...batch.yeast, attenuationPercent: 75 },
    kit: {
      ...batch.kit,
      boilMinutes: likely(0.1) ? 0 : Math.round(between(15, 120)),
      boilOff: litres(volumeL ** 0.7 * between(0.15, 0.5)),
      kettleLoss: likely(0.2) ? 0 : litres(volumeL * (1 - topUpShare) * between(0.01, 0.1)),
      kettleSize: litres(volumeL * between(0.6, 2)),
      altitude: Math.round(between(0, 2500) / (units === "us" ? 0.3048 : 1)),
      grainEfficiencyPercent: Math.round(efficiency),
      absorption: perKilogram(between(0.5, 1.3)),
      deadSpace: likely(0.5) ? 0 : litres(volumeL * between(0.01, 0.08)),
      tunSize: litres(tunSizeL),
      mashThickness: perKilogram(wholeMash ? between(3.5, 6) : between(2.2, 3.5)),
    },
  };
}

/** The kit's true figures: those on the sheet, in litres and kilograms. */
export function trueKit({ kit, units }: BatchContents): TrueKit {
  const [gallon, pound] = units === "us" ? [litresPerGallon, kilogramsPerPound] : [1, 1];
  return {
    boilOffLPerHour: kit.boilOff * gallon,
    kettleLossL: kit.kettleLoss * gallon,
    absorptionLPerKg: (kit.absorption * gallon) / pound,
    deadSpaceL: kit.deadSpace * gallon,
    grainEfficiencyPercent: kit.grainEfficiencyPercent,
  };
}

/** What the sheet tells the brewer to do, in litres and kilograms. */
export function saysOf(
  { units, method, topUp, kit, malt }: BatchContents,
  shown: { readonly collect: number; readonly mashWater: number; readonly spargeWater: number },
): WhatTheSheetSays {
  const [gallon, pound] = units === "us" ? [litresPerGallon, kilogramsPerPound] : [1, 1];
  return {
    method,
    collectL: shown.collect * gallon,
    mashWaterL: shown.mashWater * gallon,
    spargeWaterL: shown.spargeWater * gallon,
    topUpL: topUp * gallon,
    boilMinutes: kit.boilMinutes,
    bill: malt.map(({ mass, yieldPercent, handling }) => ({ massKg: mass * pound, yieldPercent, handling })),
  };
}
