import { quantity, type QuantityName } from "../../src/functions/quantities";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import type { NewBatchChoices } from "../../src/workbook/batch/new-batch";

/** A bill for 5 US gal of which sums were made by hand: they stand whatever the example becomes. */
const malts = {
  extract: [
    { ingredient: "Crystal malt", mass: 0.75, yieldPercent: 74, handling: "steep", colour: { us: 60, metric: 158 } },
    { ingredient: "Malt extract, liquid", mass: 6, yieldPercent: 78, handling: "extract", colour: { us: 4, metric: 9 } },
    { ingredient: "Malt extract, dry", mass: 1, yieldPercent: 91, handling: "extract", colour: { us: 4, metric: 9 } },
  ],
  "all-grain": [
    { ingredient: "Pale malt", mass: 8.5, yieldPercent: 80, handling: "mash", colour: { us: 2.5, metric: 5 } },
    { ingredient: "Crystal malt", mass: 0.75, yieldPercent: 74, handling: "mash", colour: { us: 60, metric: 158 } },
  ],
} as const;
const hops = [
  { hop: "A bitter one", mass: 0.9, alphaPercent: 8.5, minutes: 60, form: "pellets", cost: "" },
  { hop: "A mild one", mass: 1, alphaPercent: 5.5, minutes: 15, form: "pellets", cost: "" },
  { hop: "A mild one", mass: 1, alphaPercent: 5.5, minutes: 5, form: "pellets", cost: "" },
] as const;

export function handBatch(choices: NewBatchChoices): BatchContents {
  const { units, volume, method } = choices;
  const factor = quantity("volume").toCore(volume, units) / quantity("volume").toCore(5, "us");
  const mass = (name: QuantityName, us: number, digits: number) =>
    Number((quantity(name).fromCore(quantity(name).toCore(us, "us"), units) * factor).toFixed(digits));
  return {
    ...exampleBatch(choices),
    malt: malts[method].map((line) => ({ ...line, mass: mass("mass", line.mass, 2), colour: line.colour[units], cost: "" })),
    hops: hops.map((line) => ({ ...line, mass: mass("smallMass", line.mass, units === "us" ? 2 : 0) })),
  };
}
