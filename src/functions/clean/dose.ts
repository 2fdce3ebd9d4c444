import { concentrateMl } from "../../core/clean/dose";
import { describeFunction } from "../describe";
import { number, optional, units, volume } from "../vocabulary";

/** 1 US fl oz in 5 US gal, mL/L: the strength of many acid sanitisers. */
const oneOunceInFiveGallons = 1000 / 128 / 5;

export const cleanDose = describeFunction({
  id: "CLEAN.DOSE",
  summary: "How much cleaner or sanitiser concentrate to add to a bucket of water.",
  parameters: {
    volume: volume("Water in the bucket."),
    perVolume: optional(
      number("dosePerVolume", {
        doc: "Strength that the label asks for; 1.56 mL/L when left out (0.2 US fl oz to the gallon, which is 1 fl oz in 5 US gal), usual for acid sanitisers. The label comes first.",
        limits: { above: 0, atMost: 500 },
        typical: oneOunceInFiveGallons,
      }),
      oneOunceInFiveGallons,
    ),
    units,
  },
  result: { kind: "number", quantity: "doseVolume", doc: "Concentrate, mL or US fl oz." },
  equation: "dose = volume × strength",
  sources: [{ cite: "common practice", where: "1 US fl oz in 5 US gal for acid sanitisers; the maker's label comes first" }],
  examples: [
    { arguments: [5, null, "us"], value: 1, tolerance: 1e-9, from: "common practice: 1 fl oz in 5 US gal" },
    { arguments: [10], value: 15.625, tolerance: 1e-9, from: "worked by hand: 10 × 1.5625 mL" },
    { arguments: [10, 4], value: 40, tolerance: 1e-9, from: "worked by hand: 10 × 4 mL" },
  ],
  cautions: [
    "The maker's label comes first: strength, contact time, and whether to rinse. More is not better.",
    "Never mix an acid sanitiser or any other cleaner with chlorine bleach: poisonous chlorine gas. One product at a time, rinsing in between.",
    "Concentrates, above all lye and acids, burn skin and eyes: gloves and goggles, add them to the water and never the other way round, out of reach of children.",
  ],
  compute: ({ volume, perVolume }) => concentrateMl(volume, perVolume),
});
