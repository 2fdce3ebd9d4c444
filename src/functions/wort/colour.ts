import { beerColourSrm } from "../../core/wort/colour";
import { ebcFromSrm, lovibondFromEbc } from "../../core/wort/colour-scales";
import { describeFunction } from "../describe";
import { choice, mass, number, optional, units } from "../vocabulary";
import { wholeVolume } from "./fermentables";

export const wortColour = describeFunction({
  id: "WORT.COLOUR",
  summary: "Colour to expect from a malt bill in a volume of wort.",
  parameters: {
    fermentables: {
      kind: "table",
      doc: "The malt bill, mass and malt colour; the four columns of GYLE.WORT.GRAVITY with the colour last will do too. A blank colour (sugar) counts as none.",
      columns: {
        mass: mass("Mass of the fermentable.", { typical: 4 }),
        colour: number("number", {
          doc: "Colour of the malt, °L; EBC when scale is EBC. Pale malt 2 °L, crystal 60 °L, black malt 500 °L.",
          limits: { atLeast: 0, atMost: 2000 },
          blank: "zero",
          typical: 3,
        }),
      },
      layouts: [
        ["mass", "colour"],
        ["mass", null, null, "colour"],
      ],
    },
    volume: wholeVolume,
    scale: optional(choice("SRM: malt colours in °L, answer in SRM. EBC: malt colours and answer in EBC.", ["SRM", "EBC"]), "SRM"),
    units,
  },
  result: {
    kind: "number",
    quantity: "number",
    doc: "Colour of the wort and beer in the scale chosen; 50 SRM (98 EBC) and more is above what the curve was stated for: black, whatever the figure.",
  },
  equation: "SRM = 1.4922 MCU^0.6859, MCU = Σ lb × °L / US gal = 8.345 Σ kg × °L / L; EBC = SRM × 25/12.7; °L = (SRM + 0.76) / 1.3546",
  sources: [
    {
      cite: "D. Morey, letter on estimating beer colour, quoting Brewing Techniques",
      where: "SRM = 1.4922 MCU^0.6859, stated for SRM below 50; carried on above",
    },
    {
      cite: "maltsters' conversion of malt colour",
      where: "SRM = 1.3546 °L − 0.76; EBC and SRM by their definitions, 25 and 12.7 times the absorbance at 430 nm",
    },
  ],
  examples: [
    { arguments: [[[10, 5]], 5, null, "us"], value: 7.24, tolerance: 0.001, from: "worked by hand: MCU = 10, 1.4922 × 10^0.6859" },
    {
      arguments: [
        [
          [4, 80, "mash", 3],
          [0.5, 100, "sugar", ""],
        ],
        20,
      ],
      value: 4.505,
      tolerance: 0.001,
      from: "computed from the equation: MCU = 8.3454 × 4 × 3 / 20 = 5.007",
    },
  ],
  cautions: [
    "A forecast to within a fifth or so: long boils and dark extract give more. Copies of old malt sheets may print EBC figures from before 1990.",
  ],
  compute: ({ fermentables, volume, scale }) => {
    const lovibond = (colour: number): number => (scale === "EBC" ? lovibondFromEbc(colour) : colour);
    const srm = beerColourSrm(
      fermentables.map((row) => ({ massKg: row.mass, colourLovibond: lovibond(row.colour) })),
      volume,
    );
    return scale === "EBC" ? ebcFromSrm(srm) : srm;
  },
});
