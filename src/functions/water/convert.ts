import { convertedHardness, waterUnits } from "../../core/water/hardness";
import { describeFunction } from "../describe";
import { choice, number } from "../vocabulary";

const otherUnits = {
  dgh: "dH",
  dkh: "dH",
  kh: "dH",
  gh: "dH",
  "°dh": "dH",
  "°fh": "fH",
  "°f": "fH",
  "°e": "Clark",
  "°clark": "Clark",
  hco3: "bicarbonate",
  ppm: "CaCO3",
} as const;

const unit = (doc: string) => choice(doc, waterUnits, otherUnits);

export const waterConvert = describeFunction({
  id: "WATER.CONVERT",
  summary: "An alkalinity or hardness from one unit of water reports to another.",
  parameters: {
    amount: number("number", {
      doc: "What the report says, for example 8.",
      limits: { atLeast: 0, atMost: 10000 },
      typical: 8,
      blank: "waits",
    }),
    from: unit("Its unit; CaCO3 and bicarbonate in mg/L, meq and mmol in a litre."),
    to: unit("The unit wanted."),
  },
  result: { kind: "number", quantity: "number", doc: "The same in the unit wanted." },
  equation:
    "1 meq/L = 2.804 °dH = 5.004 °fH = 3.511 °Clark = 2.923 gpg = 50.04 mg/L CaCO3 = 61.02 mg/L bicarbonate = 0.5 mmol/L of Ca and Mg",
  sources: [
    {
      cite: "definitions and atomic weights",
      where: "1 °dH is 10 mg/L CaO, 1 °fH 10 mg/L CaCO3, 1 °Clark a grain in an imperial gallon, gpg in a US one",
    },
    { cite: "NIST SP 811, appendix B", where: "grain and gallons" },
  ],
  examples: [
    { arguments: [8, "dH", "CaCO3"], value: 142.8, tolerance: 0.05, from: "worked by hand: 80 mg CaO × 100.087 / 56.077" },
    { arguments: [183, "bicarbonate", "dH"], value: 8.41, tolerance: 0.005, from: "worked by hand: 183 / 61.017 × 2.804" },
  ],
  cautions: [
    "Alkalinity (carbonate hardness) and total hardness share these units, and are two things: take the right line of the report.",
  ],
  compute: ({ amount, from, to }) => convertedHardness(amount, from, to),
});
