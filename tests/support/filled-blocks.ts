import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { blockKeys } from "../../src/workbook/batch/fields/blocks";
import { withBlocks } from "../../src/workbook/batch/new-batch";

/** Everything that a brewer may have typed into the blocks. */
export const filledBlocks = (units: BatchContents["units"], sheetName: string): BatchContents => {
  const [litre, warm, hop] = units === "us" ? [1 / 3.785411784, 161.6, 1 / 28.35] : [1, 72, 1];
  const batch = withBlocks(
    exampleBatch({
      id: `filled-${units}`,
      sheetName,
      batchName: "Filled",
      brewedOn: 46270,
      volume: units === "us" ? 5 : 20,
      units,
      topUp: 0,
      method: "all-grain",
    }),
    blockKeys,
  );
  return {
    ...batch,
    malt: [
      ...batch.malt,
      { ingredient: "Sugar", mass: units === "us" ? 0.5 : 0.2, yieldPercent: 100, handling: "sugar", colour: 0, cost: "" },
    ],
    hops: [
      ...batch.hops,
      { hop: "Late", mass: 30 * hop, alphaPercent: 6, minutes: "stand", form: "", cost: "" },
      { hop: "Dry", mass: 60 * hop, alphaPercent: 6, minutes: "dry", form: "", cost: "" },
    ],
    hopStand: { temperature: units === "us" ? 176 : 80, minutes: 20 },
    yeast: { ...batch.yeast, packsInHand: 1, cellsPerPack: 100, viabilityPercent: 90 },
    packaging: { ...batch.packaging, into: "keg" },
    readings: [
      {
        when: 46272.5,
        reading: 1.025,
        scale: "SG",
        sampleTemperature: units === "us" ? 68 : 20,
        beerTemperature: units === "us" ? 66 : 19,
      },
    ],
    wort: { ...batch.wort, reading: 1.048, sampleTemperature: units === "us" ? 68 : 20, collected: 27 * litre, volume: 19.5 * litre },
    waterTreatment: {
      ...batch.waterTreatment!,
      source: { calcium: 60, magnesium: 10, sodium: 5, chloride: 15, sulfate: 25, bicarbonate: 180 },
      target: { calcium: 70, magnesium: 8, sodium: 10, chloride: 60, sulfate: 80, bicarbonate: 90 },
      demineralisedPercent: 30,
      gypsum: 3,
      calciumChloride: 2,
    },
    mashRunOff: {
      second: { temperature: units === "us" ? 159 : 70, minutes: 20, by: "boiling water" },
      third: { temperature: units === "us" ? 165 : 74, minutes: 10, by: "decoction" },
      fourth: { temperature: units === "us" ? 170 : 77, minutes: 5, by: "boiling water" },
      first: { volume: 9.5 * litre, temperature: warm, reading: 1.075, sampleTemperature: units === "us" ? 68 : 20 },
      later: { volume: 16 * litre, temperature: warm, reading: 1.022, sampleTemperature: units === "us" ? 68 : 20 },
      scale: "SG",
      conversionPercent: 95,
    },
    beforeBoil: {
      volume: 24.5 * litre,
      temperature: warm,
      reading: 1.041,
      scale: "SG",
      sampleTemperature: units === "us" ? 68 : 20,
      afterVolume: 21 * litre,
      afterTemperature: "",
      tunLeft: 0.8 * litre,
    },
    lateHops: { model: "kinetic", dryAfter: 7, dryFor: 3 },
    partsOfWort: {
      ...batch.partsOfWort!,
      one: {
        ...batch.partsOfWort!.one,
        name: "Bottles",
        volume: 8 * litre,
        into: "bottles",
        bottleKind: "heavy",
        bottlesFilled: 15,
        co2Volumes: 2.2,
      },
      two: { ...batch.partsOfWort!.two, name: "Keg", volume: 9 * litre, into: "keg", kegFilled: 8.5 * litre },
      three: {
        ...batch.partsOfWort!.three,
        name: "Other yeast",
        volume: 1 * litre,
        into: "bottles",
        bottleKind: "thick",
        gravity: 1.01,
        endsAt: 1.01,
      },
    },
    kegLine: { ...batch.kegLine!, plate: units === "us" ? 130 : 9, height: 0.5 },
  };
};
