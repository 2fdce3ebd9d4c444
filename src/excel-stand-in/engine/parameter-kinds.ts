/**
 * What a function's parameter takes in a formula that is not a dynamic array formula:
 * - "value": one value; of a range it takes the cell in its own row or column
 * - "range": a range as it stands; what is calculated on the way to it (A1:A3*2) is calculated with single values
 * - "array": whole ranges, also what is calculated with them
 * - "same": what the function itself is asked for, since it only hands on what it is given
 */
export type ParameterKind = "value" | "range" | "array" | "same";

/**
 * One letter for each parameter, those behind the bar over and over; parameters beyond take one value, and so do all of a function
 * that is not here. Source: the operand classes R, V and A of the functions in files of Excel 97 to 2003, as D. Rentz, OpenOffice.org's
 * Documentation of the Microsoft Excel File Format (2008), section 3.11, lists them (from memory); younger functions by analogy.
 */
const KINDS = `
|R: SUM AVERAGE AVERAGEA COUNT COUNTA MAX MAXA MIN MINA PRODUCT STDEV STDEVA STDEVP STDEVPA STDEV.S STDEV.P VAR VARA VARP VARPA VAR.S VAR.P
|R: AND OR XOR MEDIAN AVEDEV DEVSQ GEOMEAN HARMEAN KURT SKEW SKEW.P SUMSQ GCD LCM MULTINOMIAL CONCAT TEXTJOIN ARRAYTOTEXT VALUETOTEXT
|R: ROWS COLUMNS ROW COLUMN AREAS ISREF SHEET SHEETS FORMULATEXT ISFORMULA COUNTBLANK N T PHONETIC SINGLE ANCHORARRAY
|R: LET LAMBDA MAP REDUCE SCAN BYROW BYCOL MAKEARRAY FILTER SORT SORTBY UNIQUE VSTACK HSTACK TAKE DROP EXPAND TOCOL TOROW WRAPROWS WRAPCOLS
|R: CHOOSECOLS CHOOSEROWS TEXTSPLIT RANDARRAY SEQUENCE GROUPBY PIVOTBY TRIMRANGE
|A: SUMPRODUCT MMULT MDETERM MINVERSE LINEST LOGEST TREND GROWTH CORREL COVAR COVARIANCE.P COVARIANCE.S PEARSON RSQ SLOPE INTERCEPT STEYX
|A: SUMX2MY2 SUMX2PY2 SUMXMY2 FTEST F.TEST CHITEST CHISQ.TEST MODE MODE.SNGL MODE.MULT
AAVV: TTEST T.TEST PROB
VAA: FORECAST FORECAST.LINEAR LOOKUP
RA: FREQUENCY
V|R: NPV SUBTOTAL
VV|A: AGGREGATE
VVVR: NETWORKDAYS.INTL WORKDAY.INTL SERIESSUM
VVR: NETWORKDAYS WORKDAY
VRR: XNPV
VR: RANK RANK.EQ RANK.AVG MATCH VLOOKUP HLOOKUP XMATCH FVSCHEDULE CELL
VRRV: XLOOKUP
RR: XIRR
R: IRR MIRR ZTEST Z.TEST PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE QUARTILE.INC QUARTILE.EXC PERCENTRANK PERCENTRANK.INC
R: PERCENTRANK.EXC LARGE SMALL TRIMMEAN COUNTIF OFFSET TRANSPOSE
A: INDEX
RVR: SUMIF AVERAGEIF DSUM DCOUNT DCOUNTA DAVERAGE DGET DMAX DMIN DPRODUCT DSTDEV DSTDEVP DVAR DVARP
|RV: COUNTIFS
R|RV: SUMIFS AVERAGEIFS MAXIFS MINIFS
VSS: IF
V|S: CHOOSE`;

const LETTERS: Readonly<Record<string, ParameterKind>> = { V: "value", R: "range", A: "array", S: "same" };

const kinds = new Map<string, { fixed: string; repeated: string }>();
for (const line of KINDS.trim().split("\n")) {
  const [letters = "", names = ""] = line.split(": ");
  const [fixed = "", repeated = ""] = letters.split("|");
  for (const name of names.split(" ")) kinds.set(name, { fixed, repeated });
}

/** What the parameter at `index`, from 0, of one of Excel's own functions takes. */
export function parameterKind(functionName: string, index: number): ParameterKind {
  const { fixed, repeated } = kinds.get(functionName.toUpperCase()) ?? { fixed: "", repeated: "" };
  const letter = fixed[index] ?? repeated[(index - fixed.length) % repeated.length] ?? "V";
  return LETTERS[letter]!;
}

const words = (text: string): ReadonlySet<string> => new Set(text.trim().split(/\s+/u));

/** Functions whose answer may be a range. */
export const GIVES_RANGE = words("OFFSET INDIRECT INDEX");

/** Functions whose answer is a block of cells, whatever they are given. */
export const GIVES_BLOCK =
  words(`ROW COLUMN MMULT MINVERSE LINEST LOGEST TREND GROWTH FREQUENCY MODE.MULT TRANSPOSE MUNIT LET LAMBDA MAP REDUCE SCAN
  BYROW BYCOL MAKEARRAY FILTER SORT SORTBY UNIQUE VSTACK HSTACK TAKE DROP EXPAND TOCOL TOROW WRAPROWS WRAPCOLS CHOOSECOLS CHOOSEROWS TEXTSPLIT
  RANDARRAY SEQUENCE GROUPBY PIVOTBY TRIMRANGE ANCHORARRAY XLOOKUP`);
