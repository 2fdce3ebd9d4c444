import { BrewingError } from "../brewing-error";
import { gravityOfConcentration, strongestKgPerL, volumeOfWortL, waterKgPerL } from "../wort/solution";

export interface Running {
  readonly volumeL: number;
  readonly extractKg: number;
  readonly gravity: number;
}

export interface Runnings {
  readonly each: readonly Running[];
  readonly together: Running;
}

const running = (volumeL: number, extractKg: number): Running => ({
  volumeL,
  extractKg,
  gravity: gravityOfConcentration(extractKg / volumeL),
});

/**
 * What runs off a mash and off each batch of sparge water that is stirred in after it, by mass: the wort is alike all
 * through the tun, what does not run off stays with its extract, and the next water thins it. The grain keeps
 * back as much wort each time. The water that malt brings and starch takes up is left out.
 *
 * @param extractKg dissolved in the mash
 * @param absorptionLPerKg water in, less wort out, for each kilogram of grain, as in `core/water/budget.ts`
 * @throws BrewingError "impossible" where nothing runs off; "uncovered" for a mash thicker than any sugar solution
 */
export function runnings(
  grainKg: number,
  extractKg: number,
  mashWaterL: number,
  spargesL: readonly number[],
  absorptionLPerKg: number,
  deadSpaceL: number,
): Runnings {
  const firstL = mashWaterL - absorptionLPerKg * grainKg - deadSpaceL;
  if (firstL <= 0)
    throw new BrewingError("impossible", "mash_water is less than the grain and the dead space keep back: nothing would run off");
  let massKg = mashWaterL * waterKgPerL + extractKg;
  let inTunKg = extractKg;
  const wholeL = volumeOfWortL(massKg, inTunKg);
  if (inTunKg > strongestKgPerL * wholeL)
    throw new BrewingError("uncovered", "mash_water is too little: the mash would be thicker than a sugar solution can be");
  const keptL = wholeL - firstL;
  const each: Running[] = [];
  for (const addedL of [0, ...spargesL]) {
    massKg += addedL * waterKgPerL;
    const tunL = volumeOfWortL(massKg, inTunKg);
    const share = (tunL - keptL) / tunL;
    each.push(running(tunL - keptL, share * inTunKg));
    massKg -= share * massKg;
    inTunKg -= share * inTunKg;
  }
  const sum = (amount: (one: Running) => number): number => each.reduce((total, one) => total + amount(one), 0);
  return {
    each,
    together: running(
      sum(({ volumeL }) => volumeL),
      sum(({ extractKg: own }) => own),
    ),
  };
}
