import { dissolvedOf, grainKg, nothingDissolved, waterBudget } from "../../core/water/budget";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { mass, minutes, number, omissible, optional, percent, units, volume } from "../vocabulary";
import { fermentables, toFermentable } from "../wort/fermentables";
import { sugarSolutions } from "../wort/sugar-tables";

export const waterBudgetFunction = describeFunction({
  id: "WATER.BUDGET",
  summary: "How much water to collect so that enough wort reaches the fermenter, and the volumes on the way.",
  parameters: {
    intoFermenter: volume("Wort that is to run from the kettle into the fermenter, without top-up water."),
    boilMinutes: minutes("Length of the boil; an empty cell counts as no boil.", { limits: { atLeast: 0, atMost: 600 } }),
    evaporation: number("volumePerHour", {
      doc: "What your kettle boils away in an hour, as cold water: a dip stick in boiling wort shows 4 % more. 3 to 4 L (1 US gal) an hour is usual.",
      limits: { above: 0, atMost: 2000 },
      typical: 3,
    }),
    kettleLoss: optional(
      volume("Wort left behind with hops and trub, cold.", { limits: { atLeast: 0, atMost: 1000 }, blank: "zero", typical: 1 }),
      0,
    ),
    grainMass: optional(
      mass("Grain that is mashed or steeped in this water; when left out or 0, what fermentables say is mashed and steeped.", {
        limits: { atLeast: 0, atMost: 5000 },
        blank: "zero",
        typical: 4,
      }),
      0,
    ),
    absorption: optional(
      number("absorption", {
        doc: "Volume that goes missing in the grain, water in less wort out; 1.0 L/kg (0.12 US gal/lb) when left out or 0, less if you squeeze the bag.",
        limits: { above: 0, atMost: 3 },
        typical: 1,
      }),
      1,
    ),
    shrinkage: optional(
      percent("How much boiling wort shrinks on cooling to 20 °C, % of its hot volume; 4.0 when left out or 0.", {
        limits: { above: 0.3, atMost: 10 },
        typical: 4,
        hint: percentHint,
      }),
      4,
    ),
    units,
    fermentables: omissible({
      ...fermentables,
      doc: "The malt bill; what extract and sugar (handling: mash, steep, extract or sugar) hold need not be collected as water. Left out, nothing is dissolved.",
      halfFilled: "waits",
    } as const),
    efficiency: optional(
      percent("Share of the grain's extract that reaches the kettle, %, for the density of the wort; 70 when left out.", {
        limits: { above: 1, atMost: 100 },
        typical: 70,
        hint: percentHint,
      }),
      70,
    ),
    deadSpace: optional(
      volume(
        "Dead space of the mash tun, below its tap; its sugar is not counted off again, since efficiency goes by what reaches the kettle.",
        { limits: { atLeast: 0, atMost: 1000 }, blank: "zero", typical: 1 },
      ),
      0,
    ),
  },
  result: {
    kind: "grid",
    doc: "Five rows, what and how much (L or US gal): at 20 °C, but the hot one as the dip stick shows it.",
    columns: ["what", "volume"],
  },
  equation:
    "chilled = into fermenter + kettle loss; hot = chilled / (1 − shrinkage); water boils away by mass: before the boil = chilled + evaporation × time, litres of water; collect = before the boil less the volume of extract and sugar in it (masses and the density of sugar solutions) + grain × absorption + dead space",
  sources: [
    sugarSolutions,
    { cite: "G. S. Kell, J. Chem. Eng. Data 20, 1975", where: "density of water: 1 − 958.4 / 998.2 = 4.0 % from 100 to 20 °C" },
    { cite: "common practice", where: "0.12 US gal for each pound of grain; one home brewer measured 0.15 to 0.21" },
  ],
  examples: [
    {
      arguments: [19, 60, 3, 1, 4],
      value: [
        ["collect", 27],
        ["before the boil", 23],
        ["after the boil, hot", 20.833],
        ["after chilling", 20],
        ["into the fermenter", 19],
      ],
      tolerance: 0.001,
      from: "worked by hand: 19 + 1 = 20; 20 / 0.96; 20 + 3; 23 + 4",
    },
    {
      arguments: [5, 60, 1, 0.25, 10, 0.12, null, "us"],
      value: [
        ["collect", 7.45],
        ["before the boil", 6.25],
        ["after the boil, hot", 5.469],
        ["after chilling", 5.25],
        ["into the fermenter", 5],
      ],
      tolerance: 0.001,
      from: "worked by hand: 5 + 0.25; 5.25 / 0.96; 5.25 + 1; 6.25 + 10 × 0.12",
    },
    {
      arguments: [5, 60, 0.7, 0.2, null, null, null, "us", [[6.6, 80, "extract"]]],
      value: [
        ["collect", 5.351],
        ["before the boil", 5.9],
        ["after the boil, hot", 5.417],
        ["after chilling", 5.2],
        ["into the fermenter", 5],
      ],
      tolerance: 0.002,
      from: "worked by hand: 5.2 US gal = 19.684 L with 2.9937 kg × 0.8 = 2.395 kg of sugar are 121.67 g/L, 11.64 % by mass, 1.04497 kg/L in a printed table of sucrose solutions: 20.569 kg; + 2.645 kg that boil away − 2.9937 kg of extract = 20.220 kg of water = 5.351 US gal",
    },
  ],
  cautions: [
    "Leave a hand's breadth free in the kettle: wort foams up and boils over, and it scalds. Before the boil the hot wort stands up to 4 % higher than this figure.",
  ],
  compute: (
    { intoFermenter, boilMinutes, evaporation, kettleLoss, grainMass, absorption, shrinkage, fermentables: rows, efficiency, deadSpace },
    { show },
  ) => {
    if (rows?.incomplete === true) return [[""]];
    const bill = (rows ?? []).map(toFermentable);
    const losses = {
      boilMinutes,
      evaporationLPerHour: evaporation,
      kettleLossL: kettleLoss,
      grainMassKg: grainMass || grainKg(bill),
      absorptionLPerKg: absorption,
      deadSpaceL: deadSpace,
      shrinkagePercent: shrinkage,
    };
    const budget = waterBudget(intoFermenter, losses, rows ? dissolvedOf(bill, efficiency) : nothingDissolved);
    return [
      ["collect", show("volume", budget.collectL)],
      ["before the boil", show("volume", budget.beforeBoilL)],
      ["after the boil, hot", show("volume", budget.afterBoilHotL)],
      ["after chilling", show("volume", budget.afterChillingL)],
      ["into the fermenter", show("volume", budget.intoFermenterL)],
    ];
  },
});
