import { ebcFromSrm } from "../../core/wort/colour-scales";
import { describeFunction } from "../describe";
import { number } from "../vocabulary";

export const colourDefinitions = {
  cite: "definitions of the two scales: ASBC Standard Reference Method, European Brewery Convention",
  where: "SRM = 12.7 A, EBC = 25 A, with A the absorbance of 1 cm at 430 nm",
};

/** Colours from pale beer to black malt. */
export const colourLimits = { above: 0, atMost: 2000 };

export const beerEbc = describeFunction({
  id: "BEER.EBC",
  summary: "Beer colour in EBC from SRM.",
  parameters: { srm: number("colourSrm", { doc: "Colour of the beer: 4 is pale, 12 amber, 35 black.", limits: colourLimits, typical: 8 }) },
  result: { kind: "number", quantity: "colourEbc", doc: "Colour, EBC." },
  equation: "EBC = SRM × 25 / 12.7",
  sources: [colourDefinitions],
  examples: [
    { arguments: [25.4], value: 50, tolerance: 1e-9, from: "both definitions at absorbance 2: 12.7 × 2 and 25 × 2" },
    { arguments: [10], value: 19.685, tolerance: 0.001, from: "worked by hand: 10 × 25 / 12.7" },
  ],
  compute: ({ srm }) => ebcFromSrm(srm),
});
