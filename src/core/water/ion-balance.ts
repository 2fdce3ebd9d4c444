import { ionNames, molar, type Water } from "./ions";

/** Charges of the ions, in their order. */
const charges: Water = { calcium: 2, magnesium: 2, sodium: 1, chloride: -1, sulfate: -2, bicarbonate: -1 };

/** Milliequivalents, with their sign, in a milligram of each ion. */
export const meqPerMg = (ion: keyof Water): number => charges[ion] / molar[ion];

export type BalanceVerdict = "balanced" | "ions missing" | "cannot be right";

export interface IonBalance {
  readonly cationsMeqPerL: number;
  readonly anionsMeqPerL: number;
  /** Cations less anions, % of both together. */
  readonly differencePercent: number;
  readonly verdict: BalanceVerdict;
}

/**
 * Largest difference that a full analysis may have: up to so many meq/L of anions, ± meq/L; beyond, ± % (Standard Methods
 * for the Examination of Water and Wastewater, 1030 E, from memory).
 */
export const acceptable = { fewAnions: 3, fewMeq: 0.2, middleAnions: 10, middlePercent: 2, manyPercent: 5 } as const;
/** What the potassium and nitrate that six ions leave out may explain in tap water: common practice. */
export const explained = { percent: 10, meq: 0.5 } as const;

/** Cations against anions: a water carries no charge, so the two sums are alike where all ions are reported. */
export function ionBalance(water: Water): IonBalance {
  const sum = (sign: 1 | -1): number => ionNames.reduce((total, ion) => total + Math.max(0, sign * water[ion] * meqPerMg(ion)), 0);
  const [cations, anions] = [sum(1), sum(-1)];
  const difference = Math.abs(cations - anions);
  const percent = cations + anions === 0 ? 0 : (100 * (cations - anions)) / (cations + anions);
  const { fewAnions, fewMeq, middleAnions, middlePercent, manyPercent } = acceptable;
  const good = anions <= fewAnions ? difference <= fewMeq : Math.abs(percent) <= (anions <= middleAnions ? middlePercent : manyPercent);
  const perhaps = difference <= explained.meq || Math.abs(percent) <= explained.percent;
  return {
    cationsMeqPerL: cations,
    anionsMeqPerL: anions,
    differencePercent: percent,
    verdict: good ? "balanced" : perhaps ? "ions missing" : "cannot be right",
  };
}
