import { quantity, type QuantityName, type UnitSystem } from "../../functions/quantities";
import { dayNumber } from "../grid/words/day-number";
import type { BatchContents, HopLine, MaltLine, Method } from "./contents";
import { newBatch, type NewBatchChoices } from "./new-batch";

/**
 * An invented pale ale of the imaginary Quillmarsh Brew Club: every figure is made up to be plausible, none is out of a book or off a
 * packet. The recipe is kept for 5 US gal and scaled to the batch that asks for it.
 */
const recipeVolumeGal = 5;

/** Malt colour in °L and in EBC, as a maltster's sheet prints both. */
const maltUs: readonly (Omit<MaltLine, "colour"> & { readonly colour: Readonly<Record<UnitSystem, number>> })[] = [
  { ingredient: "Crystal malt, light", mass: 0.6, yieldPercent: 75, handling: "steep", colour: { us: 40, metric: 105 }, cost: 1.6 },
  { ingredient: "Pale malt extract, liquid", mass: 5.7, yieldPercent: 78, handling: "extract", colour: { us: 4, metric: 9 }, cost: 15.8 },
  { ingredient: "Wheat malt extract, dry", mass: 1.2, yieldPercent: 91, handling: "extract", colour: { us: 3, metric: 7 }, cost: 6.4 },
];

/** The same beer from malt alone. */
const allGrainUs: typeof maltUs = [
  { ingredient: "Pale malt", mass: 7.9, yieldPercent: 80, handling: "mash", colour: { us: 2.5, metric: 5 }, cost: 11.9 },
  { ingredient: "Wheat malt", mass: 1.1, yieldPercent: 82, handling: "mash", colour: { us: 2, metric: 4 }, cost: 1.9 },
  { ingredient: "Crystal malt, light", mass: 0.6, yieldPercent: 75, handling: "mash", colour: { us: 40, metric: 105 }, cost: 1.6 },
];

/** Cultivars that anybody may grow; alpha acids as crops of theirs commonly are. */
const hopsUs: readonly HopLine[] = [
  { hop: "Chinook", mass: 0.55, alphaPercent: 11.8, minutes: 55, form: "pellets", cost: 1.6 },
  { hop: "Willamette", mass: 1.3, alphaPercent: 5.2, minutes: 12, form: "pellets", cost: 2.4 },
  { hop: "Chinook", mass: 0.7, alphaPercent: 11.8, minutes: 4, form: "pellets", cost: 2.1 },
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
  /** What twice as much costs twice: prices are for the recipe's own volume. */
  const price = (cost: number | "") => (cost === "" ? "" : Number((cost * factor).toFixed(1)));
  return {
    malt: (method === "extract" ? maltUs : allGrainUs).map((line) => ({
      ...line,
      mass: mass("mass", line.mass, 2),
      cost: price(line.cost),
      colour: line.colour[units],
    })),
    hops: hopsUs.map((line) => ({ ...line, mass: mass("smallMass", line.mass, units === "us" ? 2 : 0), cost: price(line.cost) })),
  };
}

/** A new batch that begins with the example recipe: everything up to the brew day is filled in. */
export function exampleBatch(choices: NewBatchChoices): BatchContents {
  const batch = newBatch(choices);
  return {
    ...batch,
    style: "American Pale Ale",
    ...exampleRecipe(choices.units, choices.volume, choices.method),
    yeast: { ...batch.yeast, name: "Clean ale yeast, dry, 10 g", packsInHand: 2, cellsPerPack: 100, attenuationPercent: 75, cost: 4.2 },
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
      "12:15",
      "12:36",
      "12:52",
      "12:58",
      "13:06",
      "13:10",
      "13:11",
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
      looks: { score: 4, words: "Deep gold, a little hazy, white foam that stays" },
      smells: { score: 4, words: "Grapefruit, pine and bread crust" },
      tastes: { score: 4, words: "Malt first, firm bitterness after" },
      feels: { score: 3, words: "Somewhat thin" },
      again: { score: 5, words: "Yes, with a little more crystal malt" },
      notes: "Invented demo data of the imaginary Quillmarsh Brew Club.",
    },
  };
}
