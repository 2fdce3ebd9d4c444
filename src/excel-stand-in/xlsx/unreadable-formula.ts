import { isReadableFormula } from "../engine/readable-formula";
import { isCachedError, type CachedValue } from "./computed-values";

/**
 * A formula that is none, such as =SUM(A1)) or =1+. Excel does not let one be entered and declares a file with one
 * damaged, but the grid takes whatever begins with an equals sign. One that shows anything but an error is never meant.
 */
export const isUnreadable = (formula: string, result: CachedValue): boolean => isCachedError(result) && !isReadableFormula(formula);
