import { massForBitternessG } from "../../core/hops/weigh";
import { describeFunction } from "../describe";
import { boilLimits, choice, minutes, number, optional } from "../vocabulary";
import { afterBoilCautions, bitternessParameters, bitternessSources, boilOf, form, formSource } from "./additions";
import { packetAlpha } from "./swap";

const { volume, gravity, model, boilsAt, units, standTemperature, standMinutes, chillMinutes, chilledTo } = bitternessParameters;

export const hopsWeigh = describeFunction({
  id: "HOPS.WEIGH",
  summary: "How much of a hop to weigh for a bitterness.",
  parameters: {
    ibu: number("bitterness", {
      doc: "Bitterness that this addition is to bring; more than about 100 in all no beer takes up.",
      limits: { above: 0, atMost: 150 },
      typical: 25,
    }),
    alpha: packetAlpha("Alpha acid printed on the packet, %."),
    minutes: minutes("Minutes that the hops boil: those of the whole boil for first wort, 0 at flame-out; an empty cell counts as 0.", {
      limits: boilLimits,
    }),
    volume,
    gravity,
    model,
    boilsAt,
    use: optional(
      choice("stand is for hops that go in when the wort stands hot: then the minutes do not count.", ["boil", "stand"]),
      "boil",
    ),
    standTemperature,
    standMinutes,
    chillMinutes,
    chilledTo,
    form,
    units,
  },
  result: { kind: "number", quantity: "smallMass", doc: "Mass of the hops; GYLE.HOPS.IBU of it gives the bitterness back." },
  equation: "mass = IBU wanted / IBU of 1 g, by the equation of GYLE.HOPS.IBU",
  sources: [...bitternessSources, formSource],
  examples: [
    {
      arguments: [25, 6.4, 60, 5, 1.08, null, null, null, null, null, null, null, null, "us"],
      value: 1.5,
      tolerance: 0.04,
      from: "Palmer, How to Brew, ch. 5, the other way round: 1.5 oz of 6.4 % for 60 minutes are 25 IBU",
    },
    {
      arguments: [27.68, 8, 60, 20, 1.05],
      value: 30,
      tolerance: 0.01,
      from: "worked by hand: 27.68 × 20 / (1000 × 0.08 × 0.23066)",
    },
    {
      arguments: [31.33, 10, 0, 20, 1.05, "kinetic", null, "stand", 90, 60],
      value: 50,
      tolerance: 0.05,
      from: "the stand of the last example of HOPS.SHARE, the other way round",
    },
  ],
  cautions: [
    "A model, good to about ±20 %: taste, and correct the next batch.",
    "Hops make a boiling kettle foam up: stand by, turn the heat down, add them little by little.",
    ...afterBoilCautions.slice(0, 2),
  ],
  compute: (values) => {
    const { boil, stand } = boilOf(values);
    const stands = values.use === "stand";
    if (stands && stand === undefined) return "";
    return massForBitternessG(
      values.ibu,
      { alphaPercent: values.alpha, added: stands ? "stand" : values.minutes, form: values.form },
      boil,
    );
  },
});
