import { molesOfWaterPerL } from "../pack/solubility";
import { waterVapourBar } from "../pack/local-air";
import { concentrationOfGravity } from "../wort/solution";

/**
 * Henry's constant of oxygen in water, ln (H / MPa) in powers of 1/T (T. R. Rettich, R. Battino and E. Wilhelm, Journal of
 * Chemical Thermodynamics 32, 1145, 2000; from memory).
 */
export const oxygenInWater = [1.17395, 5742.622, -1070683] as const;

/** Share of the dry gas that is oxygen. */
export const oxygenShare = { air: 0.20946, oxygen: 1 } as const;
export type OxygenGas = keyof typeof oxygenShare;
export const oxygenGases = Object.keys(oxygenShare) as readonly OxygenGas[];

/** mg of oxygen in a mole. */
export const oxygenMgPerMole = 31998;

/**
 * How much less sugar lets in, for each gram in a litre: log10 of the ratio, 0.149 L/mol for sucrose (G. Quicker, A. Schumpe,
 * B. König and W.-D. Deckwer, Biotechnology and Bioengineering 23, 635, 1981; from memory). Glucose has half as much again.
 */
export const sugarSaltsOut = 0.149 / 342.3;

/** Where the sum may be used, °C. */
export const oxygenRange = { from: 0, to: 40, by: "the solubility of oxygen used here" } as const;

/**
 * Oxygen in wort that has taken up all it can, mg/L, by Henry's law.
 *
 * @param temperatureC 0 to 40
 * @param gravity of the wort, 1.000 for water
 * @param pressureBar of the gas over the wort, water vapour with it
 */
export function oxygenMgPerL(temperatureC: number, gravity: number, gas: OxygenGas, pressureBar: number): number {
  const [constant, one, two] = oxygenInWater;
  const kelvin = temperatureC + 273.15;
  const henryBar = 10 * Math.exp(constant + one / kelvin + two / kelvin ** 2);
  const oxygenBar = oxygenShare[gas] * (pressureBar - waterVapourBar(temperatureC));
  const sugarGPerL = 1000 * concentrationOfGravity(gravity);
  return ((oxygenMgPerMole * molesOfWaterPerL * oxygenBar) / henryBar) * 10 ** (-sugarSaltsOut * sugarGPerL);
}
