import { waterDensityKgPerM3 } from "../../../../core/wort/density";
import { num } from "./formula-parts";

/** The cubic of `core/wort/plato.ts`: P = 258.6 x − 226.12 x² + 175.45 x³, x = SG − 1. */
const [first, second, third] = [258.6, -226.12, 175.45] as const;

/** °P from a gravity. */
export const platoText = (gravity: string): string => `(258.6*(${gravity}-1)-226.12*(${gravity}-1)^2+175.45*(${gravity}-1)^3)`;

/**
 * Gravity from °P: the one real root of that cubic, which always rises, in its closed form with the hyperbolic sine
 * (any handbook of mathematics, "cubic equation"). The text of the extract stands in it once.
 */
export function gravityText(plato: string): string {
  const p = first / third - (second / third) ** 2 / 3;
  const q = (2 * second ** 3) / (27 * third ** 3) - (second * first) / (3 * third ** 2);
  const slope = (3 / (2 * p)) * Math.sqrt(3 / p);
  return `(${num(1 - second / (3 * third))}+${num(2 * Math.sqrt(p / 3))}*SINH(ASINH(${num(slope / third)}*${plato}-${num(slope * q)})/3))`
    .replaceAll("-(-", "+(")
    .replaceAll("*(", "*(");
}

/** Alcohol by mass, %, as `core/beer/alcohol.ts`: (OE − RE) / (2.0665 − 0.010665 OE), RE = 0.1808 OE + 0.8192 AE. */
export function alcoholByMassText(original: string, final: string): string {
  const oe = platoText(original);
  return `(MAX(0,${oe}-0.1808*${oe}-0.8192*${platoText(final)})/(2.0665-0.010665*${oe}))`;
}

/** Real extract, °P, as `core/beer/real-extract.ts`. */
export function realExtractText(original: string, final: string): string {
  const alcohol = alcoholByMassText(original, final);
  return `MIN((${platoText(final)}+0.4654*${alcohol}-0.003615*${alcohol}^2)/0.9962,${platoText(original)})`;
}

/** Coefficients of ICUMSA SPS-4 at 20 °C. */
const icumsaAt20 = [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289];

/** Density of a sugar solution at 20 °C over that of water there, from its mass fraction of sugar. */
export const densityOverWaterText = (fraction: string): string =>
  `1+SUMPRODUCT({${icumsaAt20.join(",")}}*${fraction}^{1,2,3,4,5,6})/${num(waterDensityKgPerM3(20))}`;
