/**
 * Another physics of a closed bottle, from other sources than `src/core/pack`, and nothing of it: Henry's constants of the
 * three gases and the vapour pressure of water by the international guideline, the density of water by a third equation,
 * air pressure from a printed table, gases with their second virial coefficient, and the balance of each gas solved in steps.
 */

const criticalK = 647.096;
const criticalBar = 220.64;

/** Vapour pressure of water, bar: W. Wagner and A. Pruss, Journal of Physical and Chemical Reference Data 22, 783, 1993. */
export function vapourBar(celsius: number): number {
  const kelvin = celsius + 273.15;
  const tau = 1 - kelvin / criticalK;
  const terms = [
    [-7.85951783, 1],
    [1.84408259, 1.5],
    [-11.7866497, 3],
    [22.6807411, 3.5],
    [-15.9618719, 4],
    [1.80122502, 7.5],
  ] as const;
  return criticalBar * Math.exp((criticalK / kelvin) * terms.reduce((sum, [a, power]) => sum + a * tau ** power, 0));
}

/** IAPWS G7-04, Guideline on the Henry's constant, table of A, B, C for light water: from 1 °C (nitrogen 5 °C) up. */
const henryOf = { co2: [-8.55445, 4.01195, 9.52345], n2: [-9.67578, 4.72162, 11.70585], o2: [-9.44833, 4.43822, 11.42005] } as const;
type Gas = keyof typeof henryOf;

/** Moles in a kilogram of water for a bar of fugacity. */
export function dissolvedMoles(gas: Gas, celsius: number): number {
  const [a, b, c] = henryOf[gas];
  const reduced = (celsius + 273.15) / criticalK;
  const tau = 1 - reduced;
  return 55.508 / (vapourBar(celsius) * Math.exp(a / reduced + (b * tau ** 0.355) / reduced + c * reduced ** -0.41 * Math.exp(tau)));
}

/** Water, kg/L: S. C. McCutcheon and others, in D. R. Maidment, Handbook of Hydrology, 1993. */
const density = (t: number): number => 1 - ((t + 288.9414) / (508929.2 * (t + 68.12963))) * (t - 3.9863) ** 2;

/** U.S. Standard Atmosphere, 1976, table of pressure against height, bar. */
export const airBar = { 0: 1.01325, 500: 0.95461, 1000: 0.89876, 1500: 0.8456, 2000: 0.79501, 2500: 0.74692 } as const;

const gasConstant = 0.0831446;
/** Second virial coefficient of carbon dioxide, L/mol: −149.7 cm³/mol at 0 °C and −98 at 60 °C (J. H. Dymond and E. B. Smith, The Virial Coefficients of Pure Gases and Mixtures, 1980; from memory). */
const virial = (celsius: number): number => -0.1497 + (0.0517 * celsius) / 60;
/** Volume of a mole of carbon dioxide dissolved in water, L (from memory, 33 to 35 cm³). */
const molarInWater = 0.0335;

/** The pressure at which a gas fills liquid and neck with so many moles, by bisection; `amount` grows with pressure. */
function pressureFor(moles: number, amount: (bar: number) => number): number {
  let [low, high] = [0, 100];
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    if (amount(middle) < moles) low = middle;
    else high = middle;
  }
  return low;
}

export interface Filled {
  readonly volumes: number;
  readonly celsius: number;
  readonly air: number;
  readonly headspacePercent: number;
  readonly filledAt: number;
  /** What yeast leaves of the oxygen, 0 to 1. */
  readonly oxygenLeft: number;
}

/** Gauge pressure, bar, of water with that gas in a stiff bottle of a litre. */
export function vesselGaugeBar({ volumes, celsius, air, headspacePercent, filledAt, oxygenLeft }: Filled): number {
  const neckFilled = headspacePercent / 100;
  const kilograms = (1 - neckFilled) * density(filledAt);
  const neck = 1 - kilograms / density(celsius);
  const rt = gasConstant * (celsius + 273.15);
  const ideal = (bar: number): number => (bar * neck) / rt;
  const sealed = ((air - vapourBar(filledAt)) * neckFilled) / (gasConstant * (filledAt + 273.15));
  const ofAir = (gas: Gas, share: number): number =>
    pressureFor(sealed * share, (bar) => dissolvedMoles(gas, celsius) * kilograms * bar + ideal(bar));
  // A mole of the real gas at 0 °C and 1 atm takes 22.26 L.
  const co2 = pressureFor((volumes * (1 - neckFilled)) / 22.26, (bar) => {
    const fugacity = bar * Math.exp((virial(celsius) * bar) / rt);
    return (
      dissolvedMoles("co2", celsius) * kilograms * fugacity * Math.exp((-molarInWater * bar) / rt) +
      ideal(bar) / (1 + (virial(celsius) * bar) / rt)
    );
  });
  return co2 + ofAir("n2", 0.79) + ofAir("o2", 0.21 * oxygenLeft) + vapourBar(celsius) - air;
}

/** Gauge pressure over water in an open line to a cylinder: no neck, no air. */
export function equilibriumGauge(volumes: number, celsius: number, air: number): number {
  const rt = gasConstant * (celsius + 273.15);
  const moles = volumes / 22.26;
  return (
    pressureFor(moles, (bar) => dissolvedMoles("co2", celsius) * bar * Math.exp(((virial(celsius) - molarInWater) * bar) / rt)) +
    vapourBar(celsius) -
    air
  );
}
