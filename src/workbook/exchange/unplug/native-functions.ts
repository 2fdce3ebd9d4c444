const words = (text: string): ReadonlySet<string> => new Set(text.trim().split(/\s+/));

/** Functions that answer cell by cell when they are given ranges: in each cell of a spill they take that cell's own. */
export const cellByCell = words(
  "IF IFERROR IFNA ABS ROUND ROUNDUP ROUNDDOWN INT SQRT EXP LN LOG10 POWER MOD ISNUMBER ISTEXT ISBLANK ISERROR NOT TEXT VALUE",
);

/** Functions that take a whole range and answer with one value: their ranges stay as they are. */
export const whole =
  words(`AND OR SUM COUNT COUNTA COUNTBLANK AVERAGE MAX MIN MEDIAN LARGE SMALL INDEX MATCH SUMIF SUMIFS COUNTIF COUNTIFS AVERAGEIF
AVERAGEIFS MAXIFS MINIFS SUMPRODUCT LOOKUP VLOOKUP HLOOKUP XLOOKUP ROWS COLUMNS STDEV STDEV.S STDEV.P RANK N SUBTOTAL TEXTJOIN CONCAT`);
