import { waterBudget } from "../../core/water/budget";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { mass, minutes, number, optional, percent, units, volume } from "../vocabulary";

export const waterBudgetFunction = describeFunction({
  id: "WATER.BUDGET",
  summary: "How much water to collect so that enough wort reaches the fermenter, and the volumes on the way.",
  parameters: {
    intoFermenter: volume("Wort that is to run from the kettle into the fermenter, without top-up water."),
    boilMinutes: minutes("Length of the boil; an empty cell counts as no boil.", { limits: { atLeast: 0, atMost: 600 } }),
    evaporation: number("volumePerHour", { doc: "What your kettle boils away in an hour, as cold water: a dip stick in boiling wort shows 4 % more. 3 to 4 L (1 US gal) an hour is usual.", limits: { above: 0, atMost: 2000 }, typical: 3 }),
    kettleLoss: optional(volume("Wort left behind with hops and trub, cold.", { limits: { atLeast: 0, atMost: 1000 }, blank: "zero", typical: 1 }), 0),
    grainMass: optional(mass("Grain that is mashed or steeped in this water.", { limits: { atLeast: 0, atMost: 5000 }, blank: "zero", typical: 4 }), 0),
    absorption: optional(number("absorption", { doc: "Water that drained grain keeps; 1.0 L/kg (0.12 US gal/lb) when left out or 0, less if you squeeze the bag.", limits: { above: 0, atMost: 3 }, typical: 1 }), 1),
    shrinkage: optional(percent("How much boiling wort shrinks on cooling to 20 °C, % of its hot volume; 4.0 when left out or 0.", { limits: { above: 0.3, atMost: 10 }, typical: 4, hint: percentHint }), 4),
    units,
  },
  result: { kind: "grid", doc: "Five rows, what and how much (L or US gal): at 20 °C, but the hot one as the dip stick shows it.", columns: ["what", "volume"] },
  equation: "chilled = into fermenter + kettle loss; hot = chilled / (1 − shrinkage); before the boil = chilled + evaporation × time; collect = before the boil + grain × absorption",
  sources: [
    { cite: "G. S. Kell, J. Chem. Eng. Data 20, 1975", where: "density of water: 1 − 958.4 / 998.2 = 4.0 % from 100 to 20 °C" },
    { cite: "common practice", where: "0.12 US gal for each pound of grain; one home brewer measured 0.15 to 0.21" },
  ],
  examples: [
    {
      arguments: [19, 60, 3, 1, 4],
      value: [["collect", 27], ["before the boil", 23], ["after the boil, hot", 20.833], ["after chilling", 20], ["into the fermenter", 19]],
      tolerance: 0.001,
      from: "worked by hand: 19 + 1 = 20; 20 / 0.96; 20 + 3; 23 + 4",
    },
    {
      arguments: [5, 60, 1, 0.25, 10, 0.12, null, "us"],
      value: [["collect", 7.45], ["before the boil", 6.25], ["after the boil, hot", 5.469], ["after chilling", 5.25], ["into the fermenter", 5]],
      tolerance: 0.001,
      from: "worked by hand: 5 + 0.25; 5.25 / 0.96; 5.25 + 1; 6.25 + 10 × 0.12",
    },
  ],
  cautions: ["Leave a hand's breadth free in the kettle: wort foams up and boils over, and it scalds. Before the boil the hot wort stands up to 4 % higher than this figure."],
  compute: ({ intoFermenter, boilMinutes, evaporation, kettleLoss, grainMass, absorption, shrinkage }, { show }) => {
    const budget = waterBudget(intoFermenter, { boilMinutes, evaporationLPerHour: evaporation, kettleLossL: kettleLoss, grainMassKg: grainMass, absorptionLPerKg: absorption, shrinkagePercent: shrinkage });
    return [
      ["collect", show("volume", budget.collectL)],
      ["before the boil", show("volume", budget.beforeBoilL)],
      ["after the boil, hot", show("volume", budget.afterBoilHotL)],
      ["after chilling", show("volume", budget.afterChillingL)],
      ["into the fermenter", show("volume", budget.intoFermenterL)],
    ];
  },
});
