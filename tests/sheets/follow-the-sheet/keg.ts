/**
 * A keg by the carbon dioxide in it: what is dissolved and what stands above the beer are all there is, and only what comes in makes it
 * more. Nothing here is taken from the code, which goes by a gas's solubility in water. Litres, bar, °C, grams.
 */

/** Molar mass, g/mol, and molar volume at 0 °C and 101.325 kPa, L/mol (real gas; CRC Handbook: 1.977 g/L). */
const [gramsPerMole, litresPerMole] = [44.01, 22.26] as const;
const litreBarPerMoleKelvin = 0.083145;

/** Air at an altitude, m, and its pressure, bar (U.S. Standard Atmosphere, 1976, its table; read off between two lines). */
const air = [
  [-500, 1.07478],
  [0, 1.01325],
  [500, 0.95461],
  [1000, 0.89876],
  [1500, 0.8456],
  [2000, 0.79501],
  [2500, 0.74692],
  [3000, 0.70121],
] as const;
export function airBar(altitudeM: number): number {
  const above = air.findIndex(([altitude]) => altitude >= altitudeM);
  const [[lower, more], [upper, less]] = [air[Math.max(0, above - 1)]!, air[Math.max(1, above)]!];
  return more + ((less - more) * (altitudeM - lower)) / (upper - lower);
}

/**
 * Grams in a litre of beer under a pressure of gas and vapour together: the straight line by which breweries' instruments tell the one from
 * the other, % by weight = bar × exp(2617.25 / T − 10.73797) (measured in beer; from memory), at 1.008 kg/L.
 */
const gramsPerLitreAndBar = (celsius: number): number => 10 * 1.008 * Math.exp(2617.25 / (celsius + 273.15) - 10.73797);
export const dissolvedGPerL = (absoluteBar: number, celsius: number): number => absoluteBar * gramsPerLitreAndBar(celsius);
export const volumesOf = (gramsPerLitre: number): number => (gramsPerLitre / gramsPerMole) * litresPerMole;
export const gramsOf = (volumes: number): number => (volumes / litresPerMole) * gramsPerMole;

/** Grams of the gas in a litre above the beer: van der Waals, a = 3.640 L² bar/mol², b = 0.04267 L/mol (CRC Handbook), by steps of trial. */
function aboveGPerL(absoluteBar: number, celsius: number): number {
  const heat = litreBarPerMoleKelvin * (celsius + 273.15);
  let moles = absoluteBar / heat;
  for (let trial = 0; trial < 40; trial += 1) moles = ((absoluteBar + 3.64 * moles ** 2) * (1 - 0.04267 * moles)) / heat;
  return moles * gramsPerMole;
}

export interface Keg {
  readonly beerL: number;
  readonly freeL: number;
  readonly celsius: number;
}
export const gramsIn = ({ beerL, freeL, celsius }: Keg, absoluteBar: number): number =>
  beerL * dissolvedGPerL(absoluteBar, celsius) + freeL * aboveGPerL(absoluteBar, celsius);

/** The pressure at which so much gas has shared itself out between the beer and what stands above it, absolute. */
export function sharedOutBar(keg: Keg, grams: number): number {
  let [low, high] = [0, 60];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (gramsIn(keg, middle) < grams) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Grams that a litre of beer makes while its gravity falls: sugar leaves and alcohol comes. A gram of sugar in a litre is worth 0.000386 of
 * gravity (the table of sucrose), a gram of alcohol −0.000172 (4 % by weight: 0.9914; CRC Handbook); 2.0665 g of sugar make 1 g of alcohol and
 * 0.9565 g of gas, the rest is yeast (Balling's balance, in W. Kunze, Technology Brewing and Malting).
 */
export const madeByFallingGPerL = (gravityFrom: number, gravityTo: number): number =>
  ((gravityFrom - gravityTo) / (0.000386 + 0.000172 / 2.0665)) * (0.9565 / 2.0665);

/**
 * Litres a minute that a pressure drives through a line: Darcy and Weisbach with the smooth pipe of Prandtl and von Kármán (F. M. White,
 * Fluid Mechanics, ch. 6), for beer of 1.01 kg/L and 1.6 times as viscous as water at 4 °C (1.57 mPa s).
 */
export function flowLPerMin(gaugeBar: number, lengthM: number, diameterMm: number, riseM: number): number {
  const [density, viscosity, diameter] = [1010, 1.6 * 1.57e-3, diameterMm / 1000];
  const pascal = gaugeBar * 1e5 - density * 9.80665 * riseM;
  let friction = 0.03;
  let speed = 0;
  for (let trial = 0; trial < 200; trial += 1) {
    speed = Math.sqrt((2 * diameter * pascal) / (friction * density * lengthM));
    const reynolds = (density * speed * diameter) / viscosity;
    friction = (2 * Math.log10(reynolds * Math.sqrt(friction)) - 0.8) ** -2;
  }
  return speed * ((Math.PI * diameter ** 2) / 4) * 60000;
}
