import { lovibondFromSrm } from "../../core/wort/colour-scales";
import { describeFunction } from "../describe";
import { number } from "../vocabulary";
import { colourLimits } from "./ebc";

export const beerLovibond = describeFunction({
  id: "BEER.LOVIBOND",
  summary: "Malt colour in degrees Lovibond from SRM.",
  parameters: { srm: number("colourSrm", { doc: "Colour of the malt in SRM.", limits: colourLimits, typical: 4 }) },
  result: { kind: "number", quantity: "lovibond", doc: "Colour, °L: what GYLE.WORT.COLOUR wants for a malt." },
  equation: "°L = (SRM + 0.76) / 1.3546",
  sources: [{ cite: "maltsters' conversion of malt colour", where: "SRM = 1.3546 °L − 0.76" }],
  examples: [
    { arguments: [4.66], value: 4, tolerance: 0.01, from: "a maltster's conversion table: 4 °L is 4.66 SRM" },
    { arguments: [216], value: 160, tolerance: 0.05, from: "a maltster's conversion table: 160 °L is 216 SRM" },
  ],
  compute: ({ srm }) => lovibondFromSrm(srm),
});
