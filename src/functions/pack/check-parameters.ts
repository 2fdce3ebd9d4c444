import { checkBottle, type BottleCheck } from "../../core/pack/bottle-check";
import { carbonationLimits, vesselKinds, type VesselKind } from "../../core/pack/bottle-kinds";
import { atmosphereAtBar } from "../../core/pack/local-air";
import { solubilityRange } from "../../core/pack/solubility";
import { choice, co2, gravity, omissible, temperature, units } from "../vocabulary";
import { otherBottleNames } from "./bottle-names";
import { altitude, headspace } from "./place";
import { localAir, solubilityEquation } from "./solubility-source";

/** What the verdict in words and the figure that it speaks of share. */
export const checkParameters = {
  co2: co2("Carbonation aimed at, in volumes of gas to one of beer, as given to GYLE.PACK.PRIMING.", {
    limits: carbonationLimits,
    hint: (typed) => (typed < carbonationLimits.atLeast ? "fermented beer holds about 0.7 or more by itself" : undefined),
  }),
  temperature: temperature(
    "The warmest place the bottles will ever stand: a summer attic, a car (60 °C, 140 °F, in the sun). For a keg, its beer.",
    { atLeast: 0, atMost: solubilityRange.to },
    28,
    { zero: "asked" },
  ),
  bottle: choice(
    "ordinary beer bottle (3.0 volumes), heavy refillable half litre (3.5), thick-walled (4.0), sparkling wine (6.0), plastic soda bottle (3.5), keg (4 bar; its own plate comes first).",
    vesselKinds,
    otherBottleNames,
  ),
  gravity: omissible(
    gravity("Gravity now. With expected, each 0.001 still to fall adds 0.5 volumes. Left out, nothing is added for that.", {
      typical: 1.012,
    }),
  ),
  expected: omissible(
    gravity("Final gravity you expect, for example from GYLE.YEAST.FINISH. Left out, what fermentation may still add is not counted.", {
      typical: 1.012,
    }),
  ),
  units,
  altitude,
  headspace,
} as const;

interface Asked {
  readonly co2: number;
  readonly temperature: number;
  readonly bottle: VesselKind;
  readonly gravity: number | undefined;
  readonly expected: number | undefined;
  readonly altitude: number;
  readonly headspace: number;
}

/** Gravity still to fall, in points; undefined where nobody said. */
export const pointsToFall = ({ gravity, expected }: Asked): number | undefined =>
  gravity === undefined || expected === undefined ? undefined : 1000 * (gravity - expected);

export const judged = (asked: Asked): BottleCheck =>
  checkBottle(asked.co2, asked.bottle, pointsToFall(asked) ?? 0, {
    temperatureC: asked.temperature,
    atmosphereBar: atmosphereAtBar(asked.altitude),
    headspacePercent: asked.headspace,
  });

export const checkEquation = `CO2 total = CO2 + 0.5 × 1000 (gravity − expected); a keg as GYLE.PACK.PRESSURE; in a bottle gas and air share themselves out between beer and neck: p − vapour = CO2 total × 0.04492 × (1 + …) / (S / 44.01 + n) + (air − 0.008) h / 23.04 / (N + n); h = headspace / (100 − headspace), n = (h − (t − 4)² / (124500 + 987 t)) / (0.083145 T), N = 0.95 × 55.51 / 10 H of nitrogen, ln (H / MPa) = 0.4611 + 6386.67 / T − 1139789 / T²; ${solubilityEquation}; ${localAir}`;
