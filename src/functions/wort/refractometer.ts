import { gravityFromRefractometer } from "../../core/wort/refractometer";
import { describeFunction } from "../describe";
import { number, optional } from "../vocabulary";
import { sugarTable } from "./sugar-tables";

/** Shared with BEER.REFRACTOMETER. */
export const brixReading = (doc: string, typical: number) =>
  number("number", {
    doc,
    limits: { above: 0, atMost: 40 },
    typical,
    hint: (typed) => (typed > 900 ? "it looks like a gravity; a °Brix reading is wanted" : undefined),
  });

export const wortCorrection = optional(
  number("number", {
    doc: "Wort correction of your refractometer: what it shows over the true °P; 1.04 when left out, 1 for plain sugar water.",
    limits: { atLeast: 0.9, atMost: 1.2 },
    typical: 1.04,
  }),
  1.04,
);

export const wortRefractometer = describeFunction({
  id: "WORT.REFRACTOMETER",
  summary: "Specific gravity of unfermented wort from a refractometer reading.",
  parameters: { brix: brixReading("Reading, °Brix, with the temperature compensated.", 12.5), wortCorrection },
  result: { kind: "number", quantity: "gravity", doc: "Specific gravity 20 °C/20 °C." },
  equation: "P = brix / wort_correction, then SG from P as in GYLE.WORT.SG",
  sources: [sugarTable, { cite: "S. Terrill, refractometer study, 2011", where: "readings divided by a wort correction, 1.04 usual" }],
  examples: [
    {
      arguments: [10, 1],
      value: 1.04003,
      tolerance: 3e-5,
      from: "NBS Circular 440, Table 114, 10 °Bx (sugar water, so no wort correction)",
    },
    { arguments: [12.48], value: 1.04837, tolerance: 3e-5, from: "worked by hand: 12.48 / 1.04 = 12 °P, then NBS Circular 440, Table 114" },
  ],
  cautions: ["Only before the yeast goes in: alcohol upsets the reading. For fermenting beer use GYLE.BEER.REFRACTOMETER."],
  compute: ({ brix, wortCorrection: correction }) => gravityFromRefractometer(brix, correction),
});
