import { BrewingError } from "../brewing-error";
import { extractKg, type Fermentable } from "../wort/fermentables";
import { massOfWortKg, volumeOfWortL, waterKgPerL } from "../wort/solution";

export interface Losses {
  readonly boilMinutes: number;
  /** Water that boils away in an hour, as litres of cold water. */
  readonly evaporationLPerHour: number;
  /** Wort left behind in the kettle with hops and trub, litres at 20 °C. */
  readonly kettleLossL: number;
  /** Grain that is mashed or steeped, and the volume that goes missing in it: litres of water in, less litres of wort out. */
  readonly grainMassKg: number;
  readonly absorptionLPerKg: number;
  /** Left behind under the tap of the mash tun, litres at 20 °C. */
  readonly deadSpaceL: number;
  /** How much the hot wort shrinks on cooling from boiling to 20 °C, % of its hot volume. */
  readonly shrinkagePercent: number;
}

/** What is dissolved in the wort by the time it boils. */
export interface Dissolved {
  /** Extract out of mashed and steeped grain, as it reaches the kettle. */
  readonly fromGrainKg: number;
  /** Malt extract and sugar as they are put in, with the water that is in them. */
  readonly addedKg: number;
  /** Extract in those. */
  readonly fromAddedKg: number;
}

/** Volumes in the order of the job, litres at 20 °C except the hot one. */
export interface WaterBudget {
  readonly collectL: number;
  readonly beforeBoilL: number;
  readonly afterBoilHotL: number;
  readonly afterChillingL: number;
  readonly intoFermenterL: number;
}

export const nothingDissolved: Dissolved = { fromGrainKg: 0, addedKg: 0, fromAddedKg: 0 };

/**
 * What a malt bill dissolves.
 *
 * @param efficiencyPercent share of the grain's extract that reaches the kettle, 0 to 100 %
 */
export function dissolvedOf(fermentables: readonly Fermentable[], efficiencyPercent: number): Dissolved {
  const { grain, dissolved } = extractKg(fermentables);
  const added = fermentables.filter(({ handling }) => handling === "extract" || handling === "sugar");
  return {
    fromGrainKg: (grain * efficiencyPercent) / 100,
    addedKg: added.reduce((sum, { massKg }) => sum + massKg, 0),
    fromAddedKg: dissolved,
  };
}

/** Grain of a malt bill: what is mashed or steeped and keeps water back. */
export const grainKg = (fermentables: readonly Fermentable[]): number =>
  fermentables.filter(({ handling }) => handling === "mash" || handling === "steep").reduce((sum, { massKg }) => sum + massKg, 0);

/**
 * What to collect so that enough is left: the volumes of a brew day, worked back from the fermenter by mass. In the kettle
 * only water comes and goes: after the boil there is the wort wanted, before it so much water more; without the malt
 * extract and sugar, with all that is in them, it is the wort that runs off the grain. Volumes follow from the masses by
 * the density of sugar solutions (`core/wort/density.ts`).
 *
 * What the grain dissolves is in its absorption already, since that is water in less wort out. The dead space of the tun is
 * volume only: the extract in it is missing in the share that reaches the kettle, so it is not taken off again.
 *
 * The default shrinkage of 4.0 % is that of water from 100 to 20 °C: 1 - 958.4 / 998.2 (Kell, J. Chem. Eng. Data 20, 1975).
 *
 * @throws BrewingError "impossible" where extract and sugar alone are more than the volume wanted
 */
export function waterBudget(intoFermenterL: number, losses: Losses, dissolved: Dissolved = nothingDissolved): WaterBudget {
  const extractKg = dissolved.fromGrainKg + dissolved.fromAddedKg;
  const afterChillingL = intoFermenterL + losses.kettleLossL;
  const afterBoilHotL = afterChillingL / (1 - losses.shrinkagePercent / 100);
  const massAfterBoilKg = massOfWortKg(afterChillingL, extractKg);
  const evaporatedL = (losses.evaporationLPerHour * losses.boilMinutes) / 60;
  const massBeforeBoilKg = (massAfterBoilKg ?? 0) + evaporatedL * waterKgPerL;
  const massOffTheGrainKg = massBeforeBoilKg - dissolved.addedKg;
  // Of what runs off the grain, more than half is water in any mash; below that nothing is left to steep or mash in.
  if (massAfterBoilKg === undefined || massOffTheGrainKg <= 2 * dissolved.fromGrainKg) {
    throw new BrewingError(
      "impossible",
      `fermentables leave no room for water in so little wort; check the masses, the volume and the units`,
    );
  }
  const beforeBoilL = volumeOfWortL(massBeforeBoilKg, extractKg);
  const collectL =
    volumeOfWortL(massOffTheGrainKg, dissolved.fromGrainKg) + losses.grainMassKg * losses.absorptionLPerKg + losses.deadSpaceL;
  return { collectL, beforeBoilL, afterBoilHotL, afterChillingL, intoFermenterL };
}

/**
 * Water, litres at 20 °C, that must have boiled away: the same balance forwards.
 *
 * @param offTheGrainL wort that ran off the grain; without grain the water collected
 * @param leftL wort after the boil, at 20 °C
 * @returns undefined where so much extract cannot be in so little wort
 */
export function boiledAwayL(offTheGrainL: number, leftL: number, { fromGrainKg, addedKg, fromAddedKg }: Dissolved): number | undefined {
  const [before, after] = [massOfWortKg(offTheGrainL, fromGrainKg), massOfWortKg(leftL, fromGrainKg + fromAddedKg)];
  return before === undefined || after === undefined ? undefined : (before + addedKg - after) / waterKgPerL;
}
