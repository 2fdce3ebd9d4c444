import { quantity, type UnitSystem } from "../../../functions/quantities";
import { rule, withoutGylebook, type Rule } from "./rule";

/** Heights at which GYLE.WATER.BOILS answers, in metres (its limits); tests/workbook/no-gylebook.test.ts holds the two together. */
export const heightsThatBoil = [-500, 5000] as const;

/**
 * Where the boiling point shows an error at a height that has one, nobody here knows our functions: an ordinary file in another
 * spreadsheet program, or an Excel without the add-in that has calculated anew.
 */
export function noGylebook(units: UnitSystem): Rule {
  const [lowest, highest] = heightsThatBoil.map((metres) => Math.round(quantity("altitude").fromCore(metres, units)));
  const isHeight = `IF(ISNUMBER(altitude),AND(altitude>=${lowest},altitude<=${highest}),altitude="")`;
  return rule("no-gylebook", `IF(ISERROR(boils_at),IFERROR(AND(${isHeight},units="${units}"),FALSE),FALSE)`, withoutGylebook);
}
