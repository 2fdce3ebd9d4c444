/**
 * Ways in which somebody's Excel may be worse than the best one. All are off until a test, or whoever tries the page, sets them;
 * they hold from the next round trip on.
 */
export interface Switches {
  /** Excel does not know the add-in's functions yet: formulas with them that are entered now stay #NAME? until they are entered again. */
  functionsUnknown: boolean;
}

export const theBestExcel = (): Switches => ({ functionsUnknown: false });
