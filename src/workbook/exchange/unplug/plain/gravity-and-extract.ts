import { balling } from "../../../../core/beer/alcohol";
import { realExtractFit } from "../../../../core/beer/real-extract";
import { sugarCoefficients, waterDensityKgPerM3 } from "../../../../core/wort/density";
import { platoPowers } from "../../../../core/wort/plato";
import { concentrationOfGravity } from "../../../../core/wort/solution";
import { polynomialText } from "./polynomial";
import { num, term } from "./formula-parts";

const [first, second, third] = platoPowers;

/** °P from a gravity. */
export const platoText = (gravity: string): string =>
  `(${num(first)}*(${gravity}-1)${term(second)}*(${gravity}-1)^2${term(third)}*(${gravity}-1)^3)`;

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
  return `(MAX(0,${oe}-${num(balling.original)}*${oe}-${num(balling.apparent)}*${platoText(final)})/(${num(balling.perAlcohol)}-${num(balling.perExtract)}*${oe}))`;
}

/** Real extract, °P, as `core/beer/real-extract.ts`. */
export function realExtractText(original: string, final: string): string {
  const alcohol = alcoholByMassText(original, final);
  return `MIN((${platoText(final)}+${num(realExtractFit.alcohol)}*${alcohol}-${num(realExtractFit.square)}*${alcohol}^2)/${num(realExtractFit.divisor)},${platoText(original)})`;
}

/** kg of extract in a litre of a wort: the density of sugar solutions turned round. */
export const extractText = (gravity: string): string =>
  polynomialText(concentrationOfGravity, { from: 0.97, to: 1.21, degree: 8 }, gravity);

/** At 20 °C the other rows of the density equation are nought. */
const icumsaAt20 = sugarCoefficients[0] ?? [];

/** Density of a sugar solution at 20 °C over that of water there, from its mass fraction of sugar. */
export const densityOverWaterText = (fraction: string): string =>
  `1+SUMPRODUCT({${icumsaAt20.join(",")}}*${fraction}^{${icumsaAt20.map((_, index) => index + 1).join(",")}})/${num(waterDensityKgPerM3(20))}`;
