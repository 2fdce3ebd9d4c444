import { bitternessIbu, type Boil } from "../../core/hops/bitterness";
import { packetAlphaPercent } from "../../core/hops/alpha";
import { hopForms } from "../../core/hops/form";
import { hopPlaces } from "../../core/hops/places";
import { utilisationModels } from "../../core/hops/utilisation";
import { ArgumentProblem } from "../cell-error";
import type { ArgumentValues, Source } from "../describe";
import { percentHint } from "../share-of-one";
import { boilLimits, choice, gravity, minutes, number, omissible, optional, smallMass, temperature, units, volume } from "../vocabulary";

export const alpha = number("percent", {
  doc: "Alpha acid printed on the packet, %; an empty cell counts as 0.",
  limits: { atLeast: 0, atMost: 30 },
  typical: 5.5,
  blank: "zero",
  hint: (typed) => (typed > 30 && typed <= 300 ? `alpha acid of ${typed}? write ${typed / 10}` : undefined),
});

export const form = optional(
  choice("whole or pellets, which give a tenth more to hot wort; whole when left out.", hopForms, { leaf: "whole", cones: "whole" }),
  "whole",
);

const additions = {
  kind: "table",
  doc: "The hops, a row for each addition. The form (whole or pellets) behind them and the names before them may be left off.",
  columns: {
    mass: smallMass("Mass of the hops."),
    alpha,
    minutes: {
      ...minutes("Minutes that they boil, 0 at flame-out; or first wort, stand or dry. An empty cell counts as 0.", {
        limits: boilLimits,
      }),
      words: hopPlaces,
    },
    form,
  },
  layouts: [
    [null, "mass", "alpha", "minutes", "form"],
    [null, "mass", "alpha", "minutes"],
    ["mass", "alpha", "minutes"],
  ],
} as const;

export const model = optional(
  choice(
    "Which equation. tinseth is in widest use; rager gives late hops less and long boils more; kinetic goes by the chemistry and gives late hops less.",
    utilisationModels,
  ),
  "tinseth",
);

export const kettleGravity = gravity("Average gravity in the kettle while it boils; stronger wort takes up less.", {
  limits: { atLeast: 1, atMost: 1.2 },
  typical: 1.045,
});

export const boilsAt = optional(
  temperature(
    "Temperature at which your water boils, for example from GYLE.WATER.BOILS; 100 °C (212 °F) when left out.",
    { atLeast: 80, atMost: 102 },
    100,
  ),
  100,
);

/** What HOPS.IBU and HOPS.SHARE are asked with. */
export const bitternessParameters = {
  additions,
  volume: volume("Volume of the finished wort in the fermenter, top-up water included."),
  gravity: kettleGravity,
  model,
  boilsAt,
  units,
  boilMinutes: omissible(
    minutes("Needed with hops at first wort: how long the wort boils, and so do they.", {
      limits: { above: 0, atMost: 300 },
      blank: "missing",
    }),
  ),
  standTemperature: omissible(temperature("Needed with hops that stand: temperature of the wort then.", { atLeast: 20, atMost: 102 }, 80)),
  standMinutes: optional(
    minutes("Needed with hops that stand: how long. 0 when left out: no stand.", { limits: boilLimits, typical: 20 }),
    0,
  ),
  chillMinutes: optional(
    minutes("How long the chilling takes in all, the stand not counted. 0 when left out: then hops gain nothing in it.", {
      limits: { atLeast: 0, atMost: 1440 },
      typical: 20,
    }),
    0,
  ),
  chilledTo: optional(
    temperature(
      "Temperature where the chilling ends, usually that of pitching; 20 °C (68 °F) when left out.",
      { atLeast: 1, atMost: 102 },
      20,
    ),
    20,
  ),
};

type BitternessValues = ArgumentValues<typeof bitternessParameters>;

export const bitternessSources: readonly Source[] = [
  { cite: "G. Tinseth, 1995; J. J. Palmer, How to Brew, 1st ed.", where: "utilisation equation; Table 7" },
  { cite: "J. Rager, Zymurgy, special issue 1990", where: "utilisation table and the gravity above 1.050; the smooth curve from memory" },
  {
    cite: "M. G. Malowicki and T. H. Shellhammer, J. Agric. Food Chem. 53, 2005",
    where:
      "k1 = 7.9e11 exp(−11858 / T), k2 = 4.1e12 exp(−12994 / T) per minute; to scale minutes with k1, and to fit both to Tinseth's hour at 100 °C, are our own steps, not published",
  },
];

export const formSource: Source = {
  cite: "common practice",
  where: "pellets give a tenth more than whole hops; texts say nothing to a quarter; from memory",
};

/** What is to be known about hops that are not simply boiled. */
export const afterBoilCautions: readonly string[] = [
  "After the boil the kinetic model counts, for ±30 %: rates carried on below the 90 °C where they were measured, wort that cools towards 15 °C. Boiled hops gain in it as well; some chilling is in Tinseth's own figures already, so this may be a few IBU high, never low.",
  "First wort: the trade says that such hops taste softer, and counts anything from a 20-minute boil to a tenth more than a full one; no source settles it, so here they count as boiled the whole boil.",
  "Dry hops add no iso-alpha acid. Beer with many of them can still taste, and measure, more bitter: other hop acids dissolve, which no model here calculates.",
];

/** A share typed for a percentage would pass for weak hops: it is refused. */
export function refuseShare(argument: string, alphaPercent: number): void {
  if (alphaPercent > 0 && alphaPercent <= packetAlphaPercent.least)
    throw new ArgumentProblem(
      "#VALUE!",
      `${argument} is ${alphaPercent} %; it must be 0 % or above ${packetAlphaPercent.least} % (${percentHint(alphaPercent)})`,
    );
}

type BoilValues = Omit<BitternessValues, "additions" | "units" | "boilMinutes"> & Partial<Pick<BitternessValues, "boilMinutes">>;

/** The boil and what comes after it, as asked; the stand undefined where there is none. */
export function boilOf({
  volume: volumeL,
  gravity: kettle,
  model: curve,
  boilsAt: boilsAtC,
  boilMinutes,
  standTemperature,
  standMinutes,
  chillMinutes,
  chilledTo,
}: BoilValues): { readonly boil: Boil; readonly stand: Boil["after"]["stand"] } {
  if (standTemperature !== undefined && standTemperature > boilsAtC + 1)
    throw new ArgumentProblem("#VALUE!", "stand_temperature is above boils_at; it must be at most that: wort that stands no longer boils");
  const stand =
    standTemperature === undefined || standMinutes === 0 ? undefined : { temperatureC: standTemperature, minutes: standMinutes };
  const after = { stand, chilling: { toC: chilledTo, minutes: chillMinutes } };
  return { boil: { volumeL, gravity: kettle, model: curve, boilsAtC, minutes: boilMinutes ?? 0, after }, stand };
}

/** IBU of each addition, with the row it came from; undefined while what its place needs is not filled in. */
export function bitternessOfEach({ additions: hops, ...values }: BitternessValues): { rowNumber: number; ibu: number }[] | undefined {
  const { boil, stand } = boilOf(values);
  const waits = hops.some(
    ({ minutes }) => (minutes === "stand" && stand === undefined) || (minutes === "first wort" && values.boilMinutes === undefined),
  );
  const each = hops.map(({ mass, alpha, minutes, form, rowNumber }) => {
    refuseShare(`additions row ${rowNumber} (headings not counted): alpha`, alpha);
    return { rowNumber, ibu: bitternessIbu({ massG: mass, alphaPercent: alpha, added: minutes, form }, boil) };
  });
  return waits ? undefined : each;
}
