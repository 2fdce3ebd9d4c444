import { concentrateMl } from "../../core/clean/dose";
import { describeFunction } from "../describe";
import { number, units, volume } from "../vocabulary";

/** 1 US fl oz in 5 US gal, a usual size of a dose: for help and tests only, never an answer. */
const typicalMlPerL = 1000 / 128 / 5;

export const cleanDose = describeFunction({
  id: "CLEAN.DOSE",
  summary: "How much cleaner or sanitiser concentrate to add to a bucket of water, by its label.",
  parameters: {
    volume: volume("Water in the bucket."),
    perVolume: number("dosePerVolume", {
      doc: "Strength that the label of your sanitiser asks for. Labels differ, so there is no usual one: the answer is blank until it is typed.",
      limits: { above: 0, atMost: 500 },
      typical: typicalMlPerL,
    }),
    units,
  },
  result: { kind: "number", quantity: "doseVolume", doc: "Concentrate, mL or US fl oz; blank while the label's dose is not typed." },
  equation: "dose = volume × per_volume",
  sources: [{ cite: "the maker's label", where: "dose for each volume; the sum is a proportion" }],
  examples: [
    { arguments: [5, 0.2, "us"], value: 1, tolerance: 1e-9, from: "worked by hand: 5 × 0.2 fl oz" },
    { arguments: [10, 4], value: 40, tolerance: 1e-9, from: "worked by hand: 10 × 4 mL" },
  ],
  cautions: [
    "The maker's label comes first: strength, contact time, and whether to rinse. More is not better.",
    "Never mix an acid sanitiser or any other cleaner with chlorine bleach: poisonous chlorine gas. One product at a time, rinsing in between.",
    "Concentrates, above all lye and acids, burn skin and eyes: gloves and goggles, add them to the water and never the other way round, out of reach of children.",
  ],
  compute: ({ volume, perVolume }) => concentrateMl(volume, perVolume),
});
