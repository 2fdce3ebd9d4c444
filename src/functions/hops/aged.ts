import { agedAlphaPercent, hopPackages } from "../../core/hops/storage";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { choice, number, optional, percent, temperature, units } from "../vocabulary";

export const hopsAged = describeFunction({
  id: "HOPS.AGED",
  summary: "Alpha acid that is left in hops after storage.",
  parameters: {
    alpha: percent("Alpha acid when it was measured, as printed on the packet, %.", {
      limits: { above: 0.3, atMost: 30 },
      typical: 8,
      hint: percentHint,
    }),
    days: number("days", {
      doc: "Days since it was measured; an empty cell counts as 0.",
      limits: { atLeast: 0, atMost: 3650 },
      typical: 365,
      blank: "zero",
    }),
    temperature: temperature(
      "Temperature of the store; a freezer has −18 °C (0 °F). 0 counts as not filled in: write 1 or −1, which is as good.",
      { atLeast: -40, atMost: 40 },
      -18,
    ),
    loss: optional(
      percent(
        "Share of its alpha acid that the variety loses in 180 days at 20 °C in the open, %: 30 when left out; 15 keeps well, 50 badly.",
        { limits: { above: 1, below: 100 }, typical: 30, hint: percentHint },
      ),
      30,
    ),
    package: optional(
      choice(
        "loose: open or in a plain bag; sealed: airtight but air may pass through the foil; barrier: vacuum or gas in barrier foil.",
        hopPackages,
        { open: "loose", bag: "loose", vacuum: "barrier", foil: "barrier" },
      ),
      "loose",
    ),
    units,
  },
  result: { kind: "number", quantity: "percent", doc: "Alpha acid left, % of the mass of the hops." },
  equation: "A = A0 exp(−k F S days); k = −ln(1 − loss) / 180; F = 2^((t − 20) / 15), t in °C; S = 1 loose, 0.75 sealed, 0.5 barrier",
  sources: [
    {
      cite: "M. Garetz, Hop Storage, Brewing Techniques 2(1), 1994",
      where: "equation and temperature factor; the factors of the package from memory",
    },
  ],
  examples: [
    { arguments: [10, 180, 20, 30], value: 7, tolerance: 1e-9, from: "Garetz 1994, by definition: 30 % lost in six months at 20 °C" },
    { arguments: [10, 365, -18, 30, "barrier"], value: 9.394, tolerance: 0.001, from: "computed from the equation" },
    { arguments: [10, 180, 68, 30, "loose", "us"], value: 7, tolerance: 1e-9, from: "the first example in °F" },
  ],
  cautions: ["An estimate: varieties and crops differ. Hops that smell of cheese are past use."],
  compute: ({ alpha, days, temperature: stored, loss, package: container }) => agedAlphaPercent(alpha, days, stored, loss, container),
});
