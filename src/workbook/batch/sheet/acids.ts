import { acidNames, acids } from "../../../core/water/acid";

/* What brings a mash to its pH is an acid, in millilitres of a strength, or a base, in grams: asked in sheet, checks and printed pages. */

/** Whether a cell names an acid. */
export const isAcid = (what: string): string => `OR(${acidNames.map((name) => `${what}="${name}"`).join(",")})`;

/** The strength that counts where none is typed, %. */
export const usualAcidPercent = (what: string): string =>
  `IF(${what}="lactic",${acids.lactic.usualPercent},${acids.phosphoric.usualPercent})`;
