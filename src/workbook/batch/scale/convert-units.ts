import { ebcFromLovibond, lovibondFromEbc } from "../../../core/wort/colour-scales";
import { quantity, type QuantityName, type UnitSystem } from "../../../functions/quantities";
import type { BatchContents, Filled, Kit } from "../contents";
import { translatedSteps } from "./translated-steps";

/** A number of one unit system in the other. */
export function converted(name: QuantityName, value: number, from: UnitSystem, to: UnitSystem): number {
  return from === to ? value : quantity(name).fromCore(quantity(name).toCore(value, from), to);
}

/** What each figure of a kit measures; one that is missing here is a number or a share in both systems. */
export const kitQuantities: Partial<Record<keyof Kit, QuantityName>> = {
  boilOff: "volumePerHour",
  kettleLoss: "volume",
  kettleSize: "volume",
  altitude: "altitude",
  tapTemperature: "temperature",
  tapFlow: "flow",
  sanitiserVolume: "volume",
  soakTemperature: "temperature",
  mashThickness: "absorption",
  grainTemperature: "temperature",
  hydrometerCalibratedAt: "temperature",
  bottleVolume: "bottleVolume",
  bottlingLoss: "volume",
  absorption: "absorption",
  deadSpace: "volume",
  tunSize: "volume",
  sanitiserDose: "dosePerVolume",
};

export function convertKit(kit: Kit, from: UnitSystem, to: UnitSystem): Kit {
  return Object.fromEntries(
    Object.entries(kit).map(([field, value]: [string, number]) => [field, convertedField(field as keyof Kit, value, from, to)]),
  ) as unknown as Kit;
}

function convertedField(field: keyof Kit, value: number, from: UnitSystem, to: UnitSystem): number {
  const name = kitQuantities[field];
  return name === undefined ? value : converted(name, value, from, to);
}

/**
 * The whole batch in another unit system, exactly: nothing is rounded, and what has been measured is converted with the
 * rest. Malt colours go from °L to EBC and back by the maltsters' line. Words stay as they are.
 */
export function convertUnits(batch: BatchContents, to: UnitSystem): BatchContents {
  const from = batch.units;
  if (from === to) return batch;
  const number = (name: QuantityName, value: number): number => converted(name, value, from, to);
  const filled = (name: QuantityName, value: Filled<number>): Filled<number> => (value === "" ? "" : number(name, value));
  const { yeast, wort, packaging } = batch;
  return {
    ...batch,
    units: to,
    volume: number("volume", batch.volume),
    topUp: number("volume", batch.topUp),
    kit: convertKit(batch.kit, from, to),
    malt: batch.malt.map((line) => ({ ...line, mass: number("mass", line.mass), colour: maltColour(line.colour, to) })),
    hops: batch.hops.map((line) => ({ ...line, mass: number("smallMass", line.mass) })),
    hopStand: { ...batch.hopStand, temperature: filled("temperature", batch.hopStand.temperature) },
    yeast: {
      ...yeast,
      pitchTemperature: filled("temperature", yeast.pitchTemperature),
      fermentFrom: filled("temperature", yeast.fermentFrom),
      fermentTo: filled("temperature", yeast.fermentTo),
    },
    ...(batch.steps && { steps: translatedSteps(batch.steps, batch.method, from, to) }),
    wort: {
      ...wort,
      collected: filled("volume", wort.collected),
      sampleTemperature: filled("temperature", wort.sampleTemperature),
      volume: filled("volume", wort.volume),
    },
    readings: batch.readings.map((line) => ({
      ...line,
      sampleTemperature: filled("temperature", line.sampleTemperature),
      beerTemperature: filled("temperature", line.beerTemperature),
    })),
    packaging: {
      ...packaging,
      warmestSinceFermentation: filled("temperature", packaging.warmestSinceFermentation),
      warmestStorage: number("temperature", packaging.warmestStorage),
      conditioningTemperature: number("temperature", packaging.conditioningTemperature),
      kegTemperature: number("temperature", packaging.kegTemperature),
    },
  };
}

/** Malt colour, °L on a US sheet and EBC on a metric one; 0 is what gives no colour, such as sugar. */
function maltColour(colour: number, to: UnitSystem): number {
  return to === "us" ? lovibondFromEbc(colour) : ebcFromLovibond(colour);
}
