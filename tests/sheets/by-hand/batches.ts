import type { BatchContents, HopLine, MaltLine } from "../../../src/workbook/batch/contents";
import { newBatch } from "../../../src/workbook/batch/new-batch";
import { emptyTasting } from "../../support/empty-tasting";

/**
 * Three invented batches. What the sheet must show for each stands in the table of the same name beside this file,
 * calculated with pencil, textbook and pocket calculator; README.md says how.
 */
const malt = (
  ingredient: string,
  mass: number,
  yieldPercent: number,
  handling: MaltLine["handling"],
  colour: number,
  cost: number,
): MaltLine => ({ ingredient, mass, yieldPercent, handling, colour, cost });
const hop = (name: string, mass: number, alphaPercent: number, minutes: HopLine["minutes"], cost: number): HopLine => ({
  hop: name,
  mass,
  alphaPercent,
  minutes,
  form: "pellets",
  cost,
});
const scored = (...scores: number[]): Pick<BatchContents["tasting"], "looks" | "smells" | "tastes" | "feels" | "again"> => {
  const [looks = 0, smells = 0, tastes = 0, feels = 0, again = 0] = scores.map((score) => ({ score, words: "" }));
  return { looks, smells, tastes, feels, again } as Pick<BatchContents["tasting"], "looks" | "smells" | "tastes" | "feels" | "again">;
};
/** Gravity readings: day, reading, scale, temperature of the sample and of the beer. */
const log = (...lines: [number, number, "SG" | "P", number, number][]): BatchContents["readings"] =>
  lines.map(([when, reading, scale, sampleTemperature, beerTemperature]) => ({ when, reading, scale, sampleTemperature, beerTemperature }));

/** 6.6 lb of liquid extract, some steeped grain and sugar; dry hops; US units; a little above the sea; into bottles. */
export function extractBatch(): BatchContents {
  const batch = newBatch({
    id: "by-hand-extract",
    sheetName: "Extract",
    batchName: "Extract by hand",
    brewedOn: 46298,
    volume: 5,
    units: "us",
    topUp: 0,
    method: "extract",
  });
  return {
    ...batch,
    startTime: 9.5 / 24,
    kit: {
      ...batch.kit,
      boilMinutes: 60,
      boilOff: 0.8,
      kettleLoss: 0.25,
      kettleSize: 9,
      altitude: 600,
      powerKw: 8,
      heatEfficiencyPercent: 45,
      tapTemperature: 58,
      tapFlow: 1.1,
      coilKwPerK: 0.35,
      sanitiserVolume: 4,
      sanitiserDose: 0.2,
      soakTemperature: 155,
      soakMinutes: 25,
      grainEfficiencyPercent: 45,
      hydrometerCalibratedAt: 60,
      bottleVolume: 12,
      bottlingLoss: 0.15,
    },
    malt: [
      malt("Crystal malt", 0.75, 74, "steep", 60, 1.95),
      malt("Pale malt extract, liquid", 6.6, 78, "extract", 5, 21),
      malt("Corn sugar", 0.5, 91, "sugar", 0, 1.1),
    ],
    hops: [hop("Northern Brewer", 1.1, 9, 60, 2.6), hop("Willamette", 0.8, 5, 20, 1.7), hop("Willamette", 1, 5, "dry", 2.1)],
    dryHoppedOn: 46307.8,
    yeast: {
      ...batch.yeast,
      name: "Ale yeast, dry",
      packsInHand: 2,
      cellsPerPack: 110,
      viabilityPercent: 92,
      attenuationPercent: 76,
      pitchTemperature: 66,
      cost: 4.8,
    },
    steps: [
      { what: "Clean", part: "before", minutes: 15, caution: "", why: "" },
      { what: "Water in", part: "before", minutes: 10, caution: "", why: "" },
      { what: "Warm it", part: "before", minutes: 22, caution: "", why: "" },
      { what: "Steep", part: "before", minutes: 25, caution: "", why: "" },
      { what: "Extract in", part: "before", minutes: 12, caution: "", why: "" },
      { what: "To the boil", part: "before", minutes: 14, caution: "", why: "" },
      { what: "Chiller in", part: "boil", minutes: 18, caution: "", why: "" },
      { what: "Finings in", part: "boil", minutes: 10, caution: "", why: "" },
      { what: "Cool it", part: "after", minutes: 20, caution: "", why: "" },
      { what: "Rack", part: "after", minutes: 15, caution: "", why: "" },
      { what: "Pitch it", part: "after", minutes: 5, caution: "", why: "" },
      { what: "Tidy up", part: "after", minutes: 30, caution: "", why: "" },
    ],
    // The yeast went in ten minutes late, and somebody wrote it down.
    happened: [...Array.from({ length: 14 }, () => "" as const), (12 * 60 + 53) / 1440],
    wort: { collected: "", reading: 1.051, scale: "SG", sampleTemperature: 74, volume: 4.9 },
    readings: log(
      [46301.75, 1.027, "SG", 68, 67],
      [46304.75, 1.0155, "SG", 68, 67],
      [46307.75, 1.012, "SG", 67, 66],
      [46309.75, 1.0115, "SG", 67, 66],
      [46310.8, 1.0115, "SG", 67, 66],
    ),
    packaging: {
      ...batch.packaging,
      packagedOn: 46312,
      into: "bottles",
      co2Volumes: 2.4,
      warmestSinceFermentation: 70,
      sugar: "dextrose",
      bottleKind: "ordinary",
      warmestStorage: 75,
      conditioningTemperature: 70,
      kegTemperature: 40,
      bottlesFilled: 49,
    },
    tasting: { ...emptyTasting, tastedOn: 46326, ...scored(4, 4, 5, 3, 4) },
  };
}

/** Pale, Munich and crystal malt in a tun of its own with dead space, sparged; first wort hops and a stand; litres; into bottles. */
export function allGrainBatch(): BatchContents {
  const batch = newBatch({
    id: "by-hand-grain",
    sheetName: "All grain",
    batchName: "All grain by hand",
    brewedOn: 46305,
    volume: 21,
    units: "metric",
    topUp: 0,
    method: "all-grain",
  });
  return {
    ...batch,
    startTime: 8.75 / 24,
    kit: {
      ...batch.kit,
      boilMinutes: 75,
      boilOff: 3.2,
      kettleLoss: 1,
      kettleSize: 40,
      altitude: 350,
      powerKw: 2.4,
      heatEfficiencyPercent: 88,
      tapTemperature: 12,
      tapFlow: 5,
      coilKwPerK: 0.4,
      sanitiserVolume: 15,
      sanitiserDose: 1.6,
      soakTemperature: 66,
      soakMinutes: 60,
      grainEfficiencyPercent: 72,
      mashThickness: 3.2,
      grainTemperature: 18,
      absorption: 1.05,
      deadSpace: 0.5,
      tunSize: 30,
      hydrometerCalibratedAt: 20,
      bottleVolume: 330,
      bottlingLoss: 0.6,
      headspacePercent: 4,
    },
    malt: [
      malt("Pale malt", 4.3, 81, "mash", 6, 8.6),
      malt("Munich malt", 0.5, 79, "mash", 20, 1.2),
      malt("Crystal malt", 0.25, 74, "mash", 150, 0.7),
    ],
    hops: [hop("Perle", 20, 7.5, "first wort", 1.4), hop("Tettnanger", 25, 4, 15, 1.5), hop("Tettnanger", 30, 4, "stand", 1.8)],
    hopStand: { temperature: 80, minutes: 20 },
    yeast: {
      ...batch.yeast,
      name: "Ale yeast, liquid",
      packsInHand: 3,
      cellsPerPack: 100,
      viabilityPercent: 85,
      attenuationPercent: 77,
      pitchTemperature: 18,
      cost: 7.5,
    },
    wort: { collected: "", reading: 12.4, scale: "P", sampleTemperature: 24, volume: 20.5 },
    readings: log(
      [46308.75, 1.024, "SG", 21, 19],
      [46311.75, 4.1, "P", 20, 19],
      [46315.75, 1.0118, "SG", 20, 19],
      [46317.75, 1.0115, "SG", 20, 19],
      [46319, 1.0115, "SG", 20, 19],
    ),
    packaging: {
      ...batch.packaging,
      packagedOn: 46321,
      into: "bottles",
      co2Volumes: 2.4,
      warmestSinceFermentation: 19,
      sugar: "sucrose",
      bottleKind: "heavy",
      warmestStorage: 24,
      conditioningTemperature: 20,
      kegTemperature: 4,
      bottlesFilled: 58,
    },
    tasting: { ...emptyTasting, tastedOn: 46340, ...scored(5, 4, 4, 4, 5) },
  };
}

/** Half malt and half dry extract, a part boil topped up in the fermenter, 5,250 ft up; US units; into a keg. */
export function partialMashBatch(): BatchContents {
  const batch = newBatch({
    id: "by-hand-keg",
    sheetName: "Partial mash",
    batchName: "Partial mash by hand",
    brewedOn: 46319,
    volume: 5.5,
    units: "us",
    topUp: 1.5,
    method: "all-grain",
  });
  return {
    ...batch,
    startTime: 11 / 24,
    kit: {
      ...batch.kit,
      boilMinutes: 60,
      boilOff: 0.6,
      kettleLoss: 0.3,
      kettleSize: 7,
      altitude: 5250,
      powerKw: 7.5,
      heatEfficiencyPercent: 42,
      tapTemperature: 55,
      tapFlow: 1.3,
      coilKwPerK: 0.3,
      sanitiserVolume: 5,
      sanitiserDose: 0.15,
      soakTemperature: 153,
      soakMinutes: 60,
      grainEfficiencyPercent: 68,
      mashThickness: 0.4,
      grainTemperature: 64,
      hydrometerCalibratedAt: 68,
      bottleVolume: 12,
      bottlingLoss: 0.1,
    },
    malt: [
      malt("Pale malt", 5, 80, "mash", 2.5, 6.5),
      malt("Crystal malt", 0.5, 74, "mash", 40, 1.2),
      malt("Malt extract, dry", 3.3, 95, "extract", 6, 13.9),
    ],
    hops: [hop("Cascade", 1.2, 6, 60, 2.5), hop("Cascade", 0.7, 6, 10, 1.5)],
    yeast: {
      ...batch.yeast,
      name: "Ale yeast, fresh",
      packsInHand: 1,
      cellsPerPack: 220,
      viabilityPercent: 95,
      attenuationPercent: 75,
      pitchTemperature: 65,
      cost: 5.2,
    },
    wort: { collected: "", reading: 1.047, scale: "SG", sampleTemperature: 70, volume: 5.4 },
    readings: log(
      [46322.75, 1.022, "SG", 67, 66],
      [46326.75, 1.013, "SG", 67, 66],
      [46330.75, 1.0118, "SG", 66, 65],
      [46332, 1.0118, "SG", 66, 65],
    ),
    packaging: {
      ...batch.packaging,
      packagedOn: 46333,
      into: "keg",
      co2Volumes: 2.5,
      warmestSinceFermentation: 68,
      warmestStorage: 80,
      kegTemperature: 40,
    },
    tasting: { ...emptyTasting, tastedOn: 46347, ...scored(4, 3, 4, 4, 4) },
  };
}

/** The all-grain batch four days after brewing: two readings, the second far below the first, nothing packaged. */
export function workingBatch(): BatchContents {
  const batch = allGrainBatch();
  return {
    ...batch,
    id: "by-hand-working",
    sheetName: "Working",
    batchName: "Working by hand",
    readings: log([46306.75, 1.043, "SG", 21, 19], [46308.75, 1.024, "SG", 21, 19]),
    packaging: { ...batch.packaging, packagedOn: "", bottlesFilled: "" },
    tasting: emptyTasting,
  };
}

/** The extract batch on the eve of its brew day: nothing read, nothing packaged. */
export function unmeasuredBatch(): BatchContents {
  const [batch, empty] = [
    extractBatch(),
    newBatch({ id: "x", sheetName: "x", batchName: "x", brewedOn: 46298, volume: 5, units: "us", topUp: 0, method: "extract" }),
  ];
  return {
    ...batch,
    id: "by-hand-unmeasured",
    sheetName: "Unmeasured",
    batchName: "Unmeasured by hand",
    dryHoppedOn: "",
    wort: empty.wort,
    readings: [],
    packaging: { ...batch.packaging, packagedOn: "", bottlesFilled: "" },
    tasting: emptyTasting,
  };
}

/** A sample from the top of a fermenter that was not stirred, and a mash that gave little: one reading is wrong, the other is not. */
export const unmixedExtract = (): BatchContents => ({
  ...misreadExtract(),
  id: "by-hand-unmixed",
  sheetName: "Unmixed",
  batchName: "Unmixed by hand",
  wort: { collected: "", reading: 1.041, scale: "SG", sampleTemperature: 60, volume: 4.9 },
});
export const poorMash = (): BatchContents => ({
  ...misreadGrain(),
  id: "by-hand-poor",
  sheetName: "Poor mash",
  batchName: "Poor mash by hand",
  wort: { collected: "", reading: 1.044, scale: "SG", sampleTemperature: 20, volume: 20.5 },
});
export function unmeasuredGrain(): BatchContents {
  const batch = allGrainBatch();
  return {
    ...batch,
    id: "by-hand-unmeasured-grain",
    sheetName: "Unmeasured grain",
    batchName: "Unmeasured by hand",
    wort: { collected: "", reading: "", scale: "P", sampleTemperature: "", volume: "" },
    readings: [],
    packaging: { ...batch.packaging, packagedOn: "", bottlesFilled: "" },
    tasting: emptyTasting,
  };
}

/** A sheet as the pane writes it, with a kit and nothing else. */
export const blankBatch = (): BatchContents =>
  newBatch({
    id: "by-hand-blank",
    sheetName: "Blank",
    batchName: "Blank",
    brewedOn: 46300,
    volume: 20,
    units: "metric",
    topUp: 0,
    method: "all-grain",
  });

/** Gravities that the malt cannot have made: slips of whoever read or typed. */
export const misreadExtract = (): BatchContents => ({
  ...extractBatch(),
  id: "by-hand-misread-us",
  sheetName: "Misread",
  batchName: "Misread by hand",
  wort: { collected: "", reading: 1.072, scale: "SG", sampleTemperature: 60, volume: 4.9 },
});
export const misreadGrain = (): BatchContents => ({
  ...allGrainBatch(),
  id: "by-hand-misread",
  sheetName: "Misread grain",
  batchName: "Misread by hand",
  wort: { collected: "", reading: 1.083, scale: "SG", sampleTemperature: 20, volume: 20.5 },
});
