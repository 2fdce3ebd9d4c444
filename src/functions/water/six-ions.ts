import { ionNames, waterOf, type Water } from "../../core/water/ions";
import { ArgumentProblem } from "../cell-error";
import { list } from "../vocabulary";

/** A water as six numbers in a line: what it is for is said where it is asked. */
export const sixIons = list("concentration", "", { limits: { atLeast: 0, atMost: 3000 }, blank: "zero", typical: 60 });

/** A heading may stand above the six numbers: it alone arrives as null, a blank cell counts as 0. */
export function waterFrom(argument: string, cells: readonly (number | null)[]): Water {
  const values = cells[0] === null ? cells.slice(1) : cells;
  if (values.length !== ionNames.length)
    throw new ArgumentProblem("#VALUE!", `${argument} must hold six numbers, not ${values.length}: ${ionNames.join(", ")}`);
  return waterOf((ion) => values[ionNames.indexOf(ion)] ?? 0);
}
