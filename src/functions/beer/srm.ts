import { srmFromEbc } from "../../core/wort/colour-scales";
import { describeFunction } from "../describe";
import { number } from "../vocabulary";
import { colourDefinitions, colourLimits } from "./ebc";

export const beerSrm = describeFunction({
  id: "BEER.SRM",
  summary: "Beer colour in SRM from EBC.",
  parameters: {
    ebc: number("colourEbc", { doc: "Colour of the beer: 8 is pale, 24 amber, 70 black.", limits: colourLimits, typical: 16 }),
  },
  result: { kind: "number", quantity: "colourSrm", doc: "Colour, SRM." },
  equation: "SRM = EBC × 12.7 / 25",
  sources: [colourDefinitions],
  examples: [
    { arguments: [50], value: 25.4, tolerance: 1e-9, from: "both definitions at absorbance 2: 25 × 2 and 12.7 × 2" },
    { arguments: [20], value: 10.16, tolerance: 1e-9, from: "worked by hand: 20 × 12.7 / 25" },
  ],
  compute: ({ ebc }) => srmFromEbc(ebc),
});
