import { balancedLineM } from "../../core/pack/beer-line";
import { describeFunction } from "../describe";
import { number, optional, units } from "../vocabulary";

export const packLine = describeFunction({
  id: "PACK.LINE",
  summary: "Length of beer line that balances a keg, so that beer pours at a calm pace without foaming.",
  parameters: {
    pressure: number("pressure", {
      doc: "Gauge pressure on the keg, as GYLE.PACK.PRESSURE gives it.",
      limits: { above: 0, atMost: 4 },
      typical: 0.8,
    }),
    height: number("length", {
      doc: "How far the tap is above the middle of the keg; negative when below; an empty cell counts as level.",
      limits: { atLeast: -5, atMost: 10 },
      typical: 0.5,
      blank: "zero",
    }),
    lineId: number("innerDiameter", {
      doc: "Inner diameter of the line; 4 to 5 mm (3/16 in) is usual at home.",
      limits: { atLeast: 2, atMost: 13 },
      typical: 4.76,
    }),
    flow: optional(
      number("flow", {
        doc: "Beer a minute when the tap is open; 3 L/min (0.8 US gal/min) when left out: half a litre in ten seconds.",
        limits: { atLeast: 0.5, atMost: 8 },
        typical: 3,
      }),
      3,
    ),
    units,
  },
  result: { kind: "number", quantity: "length", doc: "Length of the line." },
  equation:
    "L = (p − ρ g h) / (f ρ v² / 2 D); v = flow / (π D² / 4), Re = ρ v D / μ, f = 64 / Re below 2300, else 0.316 Re^−0.25; ρ = 1010 kg/m³, μ = 2.5 mPa s",
  sources: [
    {
      cite: "F. M. White, Fluid Mechanics, 5th ed., 2003",
      where: "chapter 6: Darcy and Weisbach, Hagen and Poiseuille, Blasius, smooth pipes; equation 6.54 with its table",
    },
    {
      cite: "common practice",
      where:
        "half a litre in about ten seconds; 3/16 in vinyl line takes 2.2 psi a foot at a US gallon a minute; viscosity of cold beer from memory",
    },
  ],
  examples: [
    {
      arguments: [12, 0, 0.1875, 1, "us"],
      value: 5.5,
      tolerance: 0.6,
      from: "common practice: 3/16 in vinyl line takes 2.2 psi a foot at a US gallon a minute",
    },
    {
      arguments: [0.8, 0.5, 4.76],
      value: 2.44,
      tolerance: 0.03,
      from: "worked by hand: 0.8 − 0.0495 bar; v = 2.81 m/s, Re = 5404, f = 0.0369, so 0.308 bar for each metre",
    },
  ],
  cautions: [
    "Cut it long and shorten it: a line too long pours slowly, one too short foams. The true inner diameter matters most, to the power of nearly five.",
    "Keep to the pressure on the keg's plate, and let the pressure off before you open anything.",
    "Keep line and keg equally cold; warm line foams whatever its length.",
  ],
  compute: ({ pressure, height, lineId, flow }) => balancedLineM(pressure, height, lineId, flow),
});
