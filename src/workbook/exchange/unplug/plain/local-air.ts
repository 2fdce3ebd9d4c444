import { magnus } from "../../../../core/pack/local-air";
import { standardAir } from "../../../../core/water/boiling";
import { num } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";

/** Vapour pressure of water, bar. */
export const vapourText = (celsius: string): string =>
  `${num(magnus.bar)}*EXP(${num(magnus.factor)}*${celsius}/(${celsius}+${num(magnus.aboveC)}))`;

/** Air pressure of the place, bar. */
export const airText = (x: PlainArguments): string =>
  `(${num(standardAir.pascal / 1e5)}*(1-${num(standardAir.kelvinPerM)}*${x.core("altitude")}/${num(standardAir.kelvin)})^${num(standardAir.power)})`;
