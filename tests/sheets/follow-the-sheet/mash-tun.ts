import { sucroseKgPerL, sucroseSolutionL } from "./sucrose-table";

/**
 * A mash tun as kilograms and kilojoules know it: what is poured in is in it until it runs off. Nothing here is taken from the code. Litres of
 * cold water, °C.
 */

/** kJ/(kg K): water between 50 and 100 °C (any steam table: 4.18 to 4.22); ground malt (1.67, W. Kunze, Technology Brewing and Malting; from memory). */
const [waterHeat, maltHeat] = [4.2, 1.67] as const;
const coldKgPerL = 0.99823;
/** Of mash that stands between 50 and 78 °C: water at 65 °C (steam table) and the solids of grain (Chang 1988). */
const [hotKgPerL, grainKgPerL] = [0.9805, 1.46] as const;

export interface Tun {
  readonly grainKg: number;
  readonly waterKg: number;
  readonly temperature: number;
}

const heatKjPerK = ({ grainKg, waterKg }: Tun): number => grainKg * maltHeat + waterKg * waterHeat;

export const doughedIn = (grainKg: number, waterL: number, temperature: number): Tun => ({
  grainKg,
  waterKg: waterL * coldKgPerL,
  temperature,
});

/** Hot water goes in: what it gives off, the mash takes up. */
export function poured(tun: Tun, waterL: number, at: number): Tun {
  const added = waterL * coldKgPerL;
  const [mash, water] = [heatKjPerK(tun), added * waterHeat];
  return { ...tun, waterKg: tun.waterKg + added, temperature: (mash * tun.temperature + water * at) / (mash + water) };
}

/** So many litres of the hot mash are drawn, boiled, and returned without a loss. */
export function decocted(tun: Tun, drawnL: number, boilsAt: number): Tun {
  const share = drawnL / roomL(tun);
  return { ...tun, temperature: tun.temperature + share * (boilsAt - tun.temperature) };
}

/** What stands in the tun, hot. */
export const roomL = ({ grainKg, waterKg }: Tun): number => waterKg / hotKgPerL + grainKg / grainKgPerL;

export interface RanOff {
  readonly volumeL: number;
  readonly sugarKg: number;
  /** Of sucrose by weight, with the same sugar. */
  readonly massFraction: number;
}

/**
 * Wort runs off until the grain lets go of no more, then what is rinsed in, and so on: it is alike all through the tun, and as much stays
 * behind each time.
 */
export function runOff(tun: Tun, sugarKg: number, keptL: number, rinsesL: readonly number[]): RanOff[] {
  let [water, sugar] = [tun.waterKg, sugarKg];
  // Water in, less wort out: what stays is reckoned from the water, since that is what a brewer knows.
  const firstL = tun.waterKg / coldKgPerL - keptL;
  const stays = sucroseSolutionL(water, sugar) - firstL;
  return [0, ...rinsesL].map((rinse) => {
    water += rinse * coldKgPerL;
    const whole = sucroseSolutionL(water, sugar);
    const share = (whole - stays) / whole;
    const ran = { volumeL: whole - stays, sugarKg: share * sugar, massFraction: sugar / (water + sugar) };
    water *= 1 - share;
    sugar *= 1 - share;
    return ran;
  });
}

export const gravityOf = ({ massFraction }: RanOff): number => sucroseKgPerL(massFraction) / sucroseKgPerL(0);
