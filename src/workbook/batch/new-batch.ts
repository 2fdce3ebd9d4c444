import type { UnitSystem } from "../../functions/quantities";
import type { BatchContents, HopStand, Kit, Method, Packaging, Tasting, Yeast } from "./contents";

/**
 * Usual values of a beginner's kit, so that a new sheet computes from the first ingredient on. Common practice, each to
 * be replaced by the brewer's own. The two columns are round numbers of about the same size, not conversions.
 */
export const usualKit: Readonly<Record<UnitSystem, Kit>> = {
  us: {
    boilMinutes: 60,
    boilOff: 0.7,
    kettleLoss: 0.2,
    kettleSize: 8,
    altitude: 0,
    powerKw: 9,
    heatEfficiencyPercent: 40,
    tapTemperature: 60,
    tapFlow: 1.2,
    coilKwPerK: 0.3,
    sanitiserVolume: 5,
    soakTemperature: 155,
    soakMinutes: 30,
    grainEfficiencyPercent: 50,
    mashThickness: 0.36,
    grainTemperature: 68,
    hydrometerCalibratedAt: 60,
    bottleVolume: 12,
    bottlingLoss: 0.1,
    absorption: 0.12,
    deadSpace: 0,
    tunSize: 0,
    sanitiserDose: 0,
    headspacePercent: 5,
  },
  metric: {
    boilMinutes: 60,
    boilOff: 2.8,
    kettleLoss: 0.8,
    kettleSize: 30,
    altitude: 0,
    powerKw: 9,
    heatEfficiencyPercent: 40,
    tapTemperature: 15,
    tapFlow: 4.5,
    coilKwPerK: 0.3,
    sanitiserVolume: 20,
    soakTemperature: 68,
    soakMinutes: 30,
    grainEfficiencyPercent: 50,
    mashThickness: 3,
    grainTemperature: 20,
    hydrometerCalibratedAt: 20,
    bottleVolume: 500,
    bottlingLoss: 0.5,
    absorption: 1,
    deadSpace: 0,
    tunSize: 0,
    sanitiserDose: 0,
    headspacePercent: 5,
  },
};

const emptyYeast = (units: UnitSystem): Yeast => ({
  name: "",
  packsInHand: "",
  cellsPerPack: "",
  viabilityPercent: 100,
  pitchRate: 0.75,
  attenuationPercent: "",
  pitchTemperature: units === "us" ? 66 : 19,
  fermentFrom: units === "us" ? 60 : 16,
  fermentTo: units === "us" ? 70 : 21,
  cost: "",
});

const emptyPackaging = (units: UnitSystem): Packaging => ({
  packagedOn: "",
  into: "bottles",
  co2Volumes: 2.4,
  warmestSinceFermentation: units === "us" ? 68 : 20,
  sugar: "dextrose",
  bottleKind: "ordinary",
  warmestStorage: units === "us" ? 75 : 24,
  conditioningTemperature: units === "us" ? 70 : 21,
  kegTemperature: units === "us" ? 40 : 4,
  bottlesFilled: "",
});

export const noHopStand: HopStand = { temperature: "", minutes: "" };

export const emptyTasting: Tasting = {
  tastedOn: "",
  looks: { score: "", words: "" },
  smells: { score: "", words: "" },
  tastes: { score: "", words: "" },
  feels: { score: "", words: "" },
  again: { score: "", words: "" },
  notes: "",
};

export interface NewBatchChoices {
  readonly id: string;
  readonly sheetName: string;
  readonly batchName: string;
  readonly brewedOn: number;
  readonly volume: number;
  readonly units: UnitSystem;
  readonly topUp: number;
  readonly method: Method;
}

/** What differs when the sugar is mashed: a longer rest, more of the grain's sugar won, and a kettle with room. */
function kitFor(method: Method, units: UnitSystem): Kit {
  const kit = usualKit[units];
  return method === "extract" ? kit : { ...kit, soakTemperature: units === "us" ? 152 : 67, soakMinutes: 60, grainEfficiencyPercent: 70 };
}

/** A batch with the kit filled in and everything else still to come. */
export function newBatch({ id, sheetName, batchName, brewedOn, volume, units, topUp, method }: NewBatchChoices): BatchContents {
  return {
    id,
    sheetName,
    batchName,
    number: "",
    brewedOn,
    startTime: 10 / 24,
    style: "",
    method,
    units,
    volume,
    topUp,
    salts: "",
    kitName: "",
    kit: kitFor(method, units),
    malt: [],
    hops: [],
    hopStand: noHopStand,
    dryHoppedOn: "",
    yeast: emptyYeast(units),
    happened: [],
    wort: { reading: "", scale: "SG", sampleTemperature: "", volume: "" },
    readings: [],
    packaging: emptyPackaging(units),
    tasting: emptyTasting,
  };
}
