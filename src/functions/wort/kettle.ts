import { BrewingError } from "../../core/brewing-error";
import { kettleGravity } from "../../core/wort/kettle";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { minutes, optional, percent, units, volume } from "../vocabulary";
import { fermentables, palmer, toFermentable } from "./fermentables";
import { sugarSolutions } from "./sugar-tables";

export const wortKettle = describeFunction({
  id: "WORT.KETTLE",
  summary: "Average gravity in the kettle while it boils, which the hop functions ask for, with extract or sugar that goes in late.",
  parameters: {
    fermentables,
    before: volume("Wort in the kettle before the boil, as it is cold.", { typical: 24 }),
    after: volume("Wort after the boil, as it is cold.", { typical: 20 }),
    late: {
      ...fermentables,
      doc: "Extract or sugar that goes in late, a row for each, in the same columns; handling: mash, steep, extract or sugar. None when left out.",
      optional: true,
      halfFilled: "waits",
    },
    lateMinutes: optional(
      minutes("Minutes before the end of the boil at which it goes in; at flame-out when left out.", {
        limits: { atLeast: 0, atMost: 300 },
        typical: 15,
      }),
      0,
    ),
    boilMinutes: optional(
      minutes("Length of the boil; 60 when left out.", { limits: { above: 0, atMost: 300 }, blank: "missing", typical: 60 }),
      60,
    ),
    efficiency: optional(
      percent("Share of the grain's extract that your brewhouse gets, %; 70 when left out.", {
        limits: { above: 1, atMost: 100 },
        typical: 70,
        hint: percentHint,
      }),
      70,
    ),
    units,
  },
  result: { kind: "number", quantity: "gravity", doc: "Specific gravity 20 °C/20 °C, averaged over the boil." },
  equation:
    "SG = (1 − s) × SG(fermentables in V1) + s × SG(all in V2), s = late_minutes / boil_minutes; V1 and V2 are the volumes in the middle of the two stretches; SG as GYLE.WORT.GRAVITY",
  sources: [sugarSolutions, palmer],
  examples: [
    {
      arguments: [[[5.55, 77.922, "extract"]], 6, 4, null, null, null, null, "us"],
      value: 1.04,
      tolerance: 0.0001,
      from: "Palmer, How to Brew, ch. 3-4: 5.55 lb at 36 points in 5 gal, the mean of 6 and 4",
    },
    {
      arguments: [[[2.0763, 100, "sugar"]], 20, 20, [[0.4353, 100, "sugar"]], 15, 60],
      value: 1.0421,
      tolerance: 0.0002,
      from: "worked by hand from NBS Table 114, nothing boiled off: 20 × 1.04003 × 0.9982 × 0.1 = 2.0763 kg are 10 °Bx, 20 × 1.04837 × 0.9982 × 0.12 = 2.5116 kg are 12 °Bx; three quarters of 1.04003 and one of 1.04837",
    },
  ],
  cautions: [
    "Stir late extract in with the flame off: it sinks and scorches, and the kettle foams up when it boils again.",
    "Late hops boil in the stronger wort alone: they give a little less than the average says.",
  ],
  compute: ({ fermentables: early, before, after, late, lateMinutes, boilMinutes, efficiency }) => {
    if (late?.incomplete === true) return "";
    if (after > before * (1 + 1e-9)) throw new BrewingError("impossible", "after is more than before: a boil only takes away");
    if (lateMinutes > boilMinutes)
      throw new BrewingError("impossible", "late_minutes is more than boil_minutes: it cannot go in before the boil");
    return kettleGravity(
      early.map(toFermentable),
      (late ?? []).map(toFermentable),
      { beforeL: before, afterL: after, minutes: boilMinutes, lateMinutes },
      efficiency,
    );
  },
});
