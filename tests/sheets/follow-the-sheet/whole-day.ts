import type { BatchContents } from "../../../src/workbook/batch/contents";
import { withBlocks } from "../../../src/workbook/batch/new-batch";
import { kilogramsPerPound, litresPerGallon, madeUpBatch } from "./batches";

type Units = BatchContents["units"];

/** What the sheet's figures are in litres, kilograms, °C, bar and metres. Exact by definition (NIST SP 811), but for the psi. */
export const inSi = (units: Units) =>
  units === "us"
    ? {
        litres: (value: number) => value * litresPerGallon,
        kilograms: (value: number) => value * kilogramsPerPound,
        celsius: (value: number) => (value - 32) / 1.8,
        bar: (value: number) => value * 0.0689476,
        metres: (value: number) => value * 0.3048,
        millimetres: (value: number) => value * 25.4,
        grams: (value: number) => value * 28.349523,
      }
    : {
        litres: (value: number) => value,
        kilograms: (value: number) => value,
        celsius: (value: number) => value,
        bar: (value: number) => value,
        metres: (value: number) => value,
        millimetres: (value: number) => value,
        grams: (value: number) => value,
      };

/** A made-up batch of somebody who uses all of the sheet: rests, run-off, a stand after the boil, a keg that is closed before it has finished. */
export function madeUpDay(random: () => number, units: Units): BatchContents {
  const between = (from: number, to: number): number => from + (to - from) * random();
  const us = units === "us";
  const [litre, degrees] = us ? [1 / litresPerGallon, (c: number) => c * 1.8 + 32] : [1, (c: number) => c];
  const typed = (value: number, digits = 4): number => Number(value.toPrecision(digits));
  const batch = madeUpBatch(random, { method: "all-grain", units });
  const litresBrewed = batch.volume / litre;
  const gramsOfHops = (perLitre: number): number => typed((litresBrewed * perLitre) / (us ? 28.349523 : 1));
  const hop = (minutes: number | "stand", perLitre: number) =>
    ({
      hop: `Hop ${minutes}`,
      mass: gramsOfHops(perLitre),
      alphaPercent: Math.round(between(3, 14)),
      minutes,
      form: "",
      cost: "",
    }) as const;
  const firstRest = between(50, 64);
  const blocks = withBlocks(batch, ["mashRunOff", "lateHops", "kegLine"]);
  const standC = between(66, 86);
  return {
    ...blocks,
    startTime: 0.3,
    hops: [hop(60, between(0.5, 2)), hop(10, between(0, 2)), hop("stand", between(1, 4))],
    hopStand: { temperature: Math.round(degrees(standC)), minutes: Math.round(between(10, 45)) },
    kit: {
      ...blocks.kit,
      boilMinutes: Math.round(between(60, 100)),
      soakTemperature: Math.round(degrees(firstRest)),
      mashThickness: typed((us ? kilogramsPerPound / litresPerGallon : 1) * between(2.2, 2.8)),
      // No vessel is in the way: what does not fit is the subject of another file.
      kettleSize: typed(litresBrewed * 3 * litre),
      tunSize: 0,
      tapTemperature: Math.round(degrees(between(6, 16))),
      tapFlow: typed(between(2, 8) * litre, 2),
      coilKwPerK: typed(between(0.15, 0.4) * Math.max(0.3, litresBrewed / 25), 2),
    },
    yeast: { ...blocks.yeast, pitchTemperature: Math.round(degrees(between(19, 24))), fermentTo: Math.round(degrees(between(17, 22))) },
    mashRunOff: {
      ...blocks.mashRunOff!,
      second: {
        temperature: Math.round(degrees(firstRest + between(4, 8))),
        minutes: 20,
        by: random() < 0.5 ? "boiling water" : "heating",
      },
      third: { temperature: Math.round(degrees(firstRest + between(12, 14))), minutes: 10, by: random() < 0.5 ? "decoction" : "heating" },
      conversionPercent: Math.round(between(86, 99)),
    },
    packaging: {
      ...blocks.packaging,
      into: "keg",
      co2Volumes: Number(between(2, 2.8).toFixed(1)),
      kegTemperature: Math.round(degrees(between(1, 13))),
    },
    kegLine: {
      ...blocks.kegLine!,
      holds: typed(between(0.3, 1.2) * batch.volume, 3),
      plate: us ? 130 : 9,
      height: Number(between(0, us ? 3 : 1).toFixed(1)),
    },
  };
}
