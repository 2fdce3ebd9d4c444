import { hexOfSrm } from "../../core/beer/hex";
import { describeFunction } from "../describe";
import { number, optional } from "../vocabulary";

export const beerHex = describeFunction({
  id: "BEER.HEX",
  summary: "The colour of a glass of beer for a screen, as #RRGGBB, computed from the light that beer lets through.",
  parameters: {
    srm: number("colourSrm", { doc: "Colour of the beer: 4 is pale, 12 amber, 35 black.", limits: { above: 0, atMost: 300 }, typical: 8 }),
    glassCm: optional(
      number("lengthCm", {
        doc: "How far the light goes through the beer: a glass about 5 (when left out).",
        limits: { atLeast: 0.1, atMost: 30 },
        typical: 5,
      }),
      5,
    ),
  },
  result: { kind: "text", doc: "Colour in sRGB, for example #BA5B00." },
  equation: "A(λ) = SRM/12.7 × cm × [0.02465 e^(−(λ−430)/17.591) + 0.97535 e^(−(λ−430)/82.122)]; XYZ = Σ D65 × 10^−A × eye; sRGB",
  sources: [
    {
      cite: "A. J. deLange, Color, in C. W. Bamforth (ed.), Brewing Materials and Processes, 2016",
      where: "average absorption spectrum of beer (coefficients from memory)",
    },
    { cite: "CIE 15.2, Colorimetry, 1986", where: "Table 1.1 (daylight D65) and Table 2.1 (1931 observer), every 10 nm" },
    { cite: "IEC 61966-2-1, 1999", where: "sRGB" },
  ],
  examples: [
    { arguments: [10], value: "#BA5B00", from: "computed from the equation" },
    { arguments: [4, 1], value: "#FBECC3", from: "computed from the equation" },
  ],
  cautions: ["A guide for the eye, not a measurement; beer with fruit or haze looks different."],
  compute: ({ srm, glassCm }) => hexOfSrm(srm, glassCm),
});
