import { quantity, type QuantityName, type UnitSystem } from "../../functions/quantities";
import { dayNumber } from "../grid/words/day-number";
import type { BatchContents, HopLine, MaltLine, Method } from "./contents";
import { newBatch, type NewBatchChoices } from "./new-batch";

/**
 * An invented pale ale of the imaginary Quillmarsh Brew Club: every figure is made up to be plausible. The recipe is
 * kept for 5 US gal and scaled to the batch that asks for it.
 */
const recipeVolumeGal = 5;

/** Malt colour in °L and in EBC, as a maltster's sheet prints both. */
const maltUs: readonly (Omit<MaltLine, "colour"> & { readonly colour: Readonly<Record<UnitSystem, number>> })[] = [
  { ingredient: "Crystal malt, medium", mass: 0.75, yieldPercent: 74, handling: "steep", colour: { us: 60, metric: 158 }, cost: 1.9 },
  { ingredient: "Pale malt extract, liquid", mass: 6, yieldPercent: 78, handling: "extract", colour: { us: 4, metric: 9 }, cost: 16.5 },
  { ingredient: "Pale malt extract, dry", mass: 1, yieldPercent: 91, handling: "extract", colour: { us: 4, metric: 9 }, cost: 5.2 },
];

/** The same beer from malt alone. */
const allGrainUs: typeof maltUs = [
  { ingredient: "Pale malt", mass: 8.5, yieldPercent: 80, handling: "mash", colour: { us: 2.5, metric: 5 }, cost: 12.8 },
  { ingredient: "Crystal malt, medium", mass: 0.75, yieldPercent: 74, handling: "mash", colour: { us: 60, metric: 158 }, cost: 1.9 },
];

const hopsUs: readonly HopLine[] = [
  { hop: "Northern Brewer", mass: 0.9, alphaPercent: 8.5, minutes: 60, form: "pellets", cost: 2.4 },
  { hop: "Cascade", mass: 1, alphaPercent: 5.5, minutes: 15, form: "pellets", cost: 2.1 },
  { hop: "Cascade", mass: 1, alphaPercent: 5.5, minutes: 5, form: "pellets", cost: 2.1 },
];

/** The example recipe for another volume and unit system, with round figures. */
export function exampleRecipe(units: UnitSystem, volume: number, method: Method): Pick<BatchContents, "malt" | "hops"> {
  const factor = quantity("volume").toCore(volume, units) / quantity("volume").toCore(recipeVolumeGal, "us");
  const mass = (name: QuantityName, us: number, digits: number) =>
    Number(
      quantity(name)
        .fromCore(quantity(name).toCore(us, "us") * factor, units)
        .toFixed(digits),
    );
  return {
    malt: (method === "extract" ? maltUs : allGrainUs).map((line) => ({
      ...line,
      mass: mass("mass", line.mass, 2),
      colour: line.colour[units],
    })),
    hops: hopsUs.map((line) => ({ ...line, mass: mass("smallMass", line.mass, units === "us" ? 2 : 0) })),
  };
}

/** A new batch that begins with the example recipe: everything up to the brew day is filled in. */
export function exampleBatch(choices: NewBatchChoices): BatchContents {
  const batch = newBatch(choices);
  return {
    ...batch,
    style: "American Pale Ale",
    ...exampleRecipe(choices.units, choices.volume, choices.method),
    yeast: { ...batch.yeast, name: "Clean ale yeast, dry, 11 g", packsInHand: 2, cellsPerPack: 110, attenuationPercent: 75, cost: 4.5 },
  };
}

/** What the sample's brewer read off, on instruments of either kind. */
const readOff = {
  us: { volume: recipeVolumeGal, wort: 70, warm: { sample: 68, beer: 67 }, cool: { sample: 67, beer: 66 }, bottles: 51 },
  metric: { volume: 19, wort: 21, warm: { sample: 20, beer: 19.5 }, cool: { sample: 19.5, beer: 19 }, bottles: 36 },
} as const;

/** The sample workbook's batch: brewed, fermented, bottled and tasted. */
export function firstExtractBatch(units: UnitSystem = "us"): BatchContents {
  const { volume, wort, warm, cool, bottles } = readOff[units];
  const batch = exampleBatch({
    id: "quillmarsh-2026-1",
    sheetName: "Batch 1",
    batchName: "Quillmarsh Footbridge Pale",
    brewedOn: dayNumber("2026-09-05"),
    volume,
    units,
    topUp: 0,
    method: "extract",
  });
  const at = (day: number, time: string) => dayNumber(`2026-09-${String(day).padStart(2, "0")}T${time}`);
  const clock = (time: string) => at(5, time) % 1;
  return {
    ...batch,
    number: 1,
    salts: "Tap water stood overnight",
    happened: [
      "10:00",
      "10:15",
      "10:25",
      "10:55",
      "11:27",
      "11:33",
      "11:45",
      "12:10",
      "12:10",
      "12:36",
      "12:53",
      "12:56",
      "13:06",
      "13:11",
      "13:12",
      "13:40",
      "13:56",
      "14:02",
      "14:12",
      "14:18",
      "14:48",
    ].map(clock),
    wort: { collected: "", reading: 1.051, scale: "SG", sampleTemperature: wort, volume },
    readings: [
      { when: at(8, "18:30"), reading: 1.03, scale: "SG", sampleTemperature: warm.sample, beerTemperature: warm.beer },
      { when: at(11, "18:30"), reading: 1.018, scale: "SG", sampleTemperature: warm.sample, beerTemperature: warm.beer },
      { when: at(14, "18:30"), reading: 1.013, scale: "SG", sampleTemperature: cool.sample, beerTemperature: cool.beer },
      { when: at(15, "18:45"), reading: 1.012, scale: "SG", sampleTemperature: cool.sample, beerTemperature: cool.beer },
      { when: at(16, "18:50"), reading: 1.012, scale: "SG", sampleTemperature: cool.sample, beerTemperature: cool.beer },
    ],
    packaging: { ...batch.packaging, packagedOn: dayNumber("2026-09-19"), bottlesFilled: bottles },
    tasting: {
      tastedOn: dayNumber("2026-10-03"),
      looks: { score: 4, words: "Copper, a little hazy, white foam that stays" },
      smells: { score: 4, words: "Grapefruit and biscuit" },
      tastes: { score: 4, words: "Malt first, firm bitterness after" },
      feels: { score: 3, words: "Somewhat thin" },
      again: { score: 5, words: "Yes, with a little more crystal malt" },
      notes: "Invented demo data of the imaginary Quillmarsh Brew Club.",
    },
  };
}
