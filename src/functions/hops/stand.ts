import { standIbu } from "../../core/hops/stand";
import { describeFunction } from "../describe";
import { boilLimits, gravity, minutes, optional, smallMass, temperature, units, volume } from "../vocabulary";
import { alpha, bitternessSources, refuseShare } from "./additions";

/** A cool room, or the water of a chiller. */
export const surroundingsC = 15;

export const hopsStand = describeFunction({
  id: "HOPS.STAND",
  summary: "Bitterness that hops bring while hot wort stands after the boil, or that hops boiled before still gain while it cools.",
  parameters: {
    mass: smallMass("Mass of the hops."),
    alpha,
    volume: volume("Volume of the finished wort in the fermenter, top-up water included."),
    gravity: gravity("Gravity of the wort that stands; stronger wort takes up less.", { limits: { atLeast: 1, atMost: 1.2 } }),
    minutes: minutes("Length of the stand, or of the chilling; an empty cell counts as 0.", {
      limits: boilLimits,
      typical: 20,
    }),
    from: temperature("Temperature of the wort when the stand, or the chilling, begins.", { atLeast: 20, atMost: 102 }, 98),
    to: temperature("Temperature when it ends; the same as from if the wort is kept warm.", { atLeast: 20, atMost: 102 }, 80),
    boiled: optional(
      minutes("Minutes that these hops boiled before, at 100 °C; then the answer is what comes on top. 0 when left out.", {
        limits: boilLimits,
        typical: 0,
      }),
      0,
    ),
    units,
  },
  result: {
    kind: "number",
    quantity: "bitterness",
    doc: "IBU that the stand adds; 0 for hops boiled for hours before, which lose a little instead.",
  },
  equation:
    "dA/dt = −k1 A, dI/dt = k1 A − k2 I along T = 15 °C + (from − 15 °C) × ((to − 15 °C) / (from − 15 °C))^(t / minutes); IBU = mass (g) × 1000 × alpha × tinseth(60, SG) × (I after − I before) / I(60, 100 °C) / volume (L); rates as in GYLE.HOPS.UTILISATION",
  sources: [
    ...bitternessSources.slice(2),
    {
      cite: "I. Newton, Scala graduum caloris, Phil. Trans. 1701",
      where: "law of cooling; that it cools towards 15 °C is our assumption and hardly matters",
    },
  ],
  examples: [
    {
      arguments: [50, 10, 20, 1.05, 15, 100, 100],
      value: 20.22,
      tolerance: 0.02,
      from: "worked by hand: kept at 100 °C it is a boil, 250 mg/L × 0.2307 × 0.1668 / 0.4759",
    },
    {
      arguments: [50, 10, 20, 1.05, 20, 95, 80],
      value: 9.8,
      tolerance: 0.4,
      from: "worked by hand, roughly: 20 minutes at 87.5 °C run at 0.34 of the speed at 100 °C, so as 6.8 minutes of it; 250 mg/L × 0.2307 × 0.081 / 0.4759",
    },
    {
      arguments: [2, 10, 5, 1.05, 20, 203, 176, null, "us"],
      value: 11.7,
      tolerance: 0.5,
      from: "worked by hand: the same stand with 2 oz in 5 US gal, 299.6 mg/L instead of 250",
    },
    {
      arguments: [30, 8, 20, 1.05, 20, 100, 20, 60],
      value: 0.25,
      tolerance: 0.06,
      from: "worked by hand, roughly: wort cooling at 12 °C a minute gains about one minute at 100 °C, 120 mg/L × 0.4847 × (0.0125 × 0.473 − 0.0031 × 0.476)",
    },
  ],
  cautions: [
    "Our own combination, not published: rates measured in a buffer from 90 to 130 °C, carried on below, with one factor fitted to Tinseth's hour. Take it for ±30 %.",
    "For hops that stand and are then chilled add two answers: the stand's, and the chilling's from the temperature where the stand ended. GYLE.HOPS.IBU does that by itself.",
    "Wort that stands hot still scalds. Keep the lid on, and children away.",
  ],
  compute: ({ mass, alpha, volume, gravity, minutes, from, to, boiled }) => {
    refuseShare("alpha", alpha);
    return standIbu(
      { massG: mass, alphaPercent: alpha, volumeL: volume, gravity, boiledMinutes: boiled },
      { fromC: from, toC: to, minutes, surroundingsC },
    );
  },
});
