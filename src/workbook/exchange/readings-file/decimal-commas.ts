import { looksLikeMoment } from "./moment-look";

type Line = readonly string[];

/**
 * The lines of a table with commas between its columns, read as if some of the commas stood inside numbers: `1,050` then is one.
 * @returns undefined where nothing speaks for it: each row has as many cells as the heading, and none looks like a gravity cut in two;
 * "undecided" where a row can be put together in more than one way
 */
export function withDecimalCommas(lines: readonly Line[]): Line[] | "undecided" | undefined {
  const dated = (line: Line): boolean => line.length > 1 && line.some(looksLikeMoment);
  const first = lines.findIndex(dated);
  if (first < 0) return undefined;
  const rows = lines.map((line, index) => ({ line, index })).filter(({ line, index }) => index >= first && dated(line));
  const suspicious = rows.filter(({ line }) => line.some((_, at) => isGravity(line, at)));
  const above = lines[first - 1] ?? [];
  const heading = above.filter((cell) => cell !== "").length > 1 && !above.some((cell) => /^\d+$/.test(cell)) ? above.length : undefined;
  const longer = heading === undefined ? [] : rows.filter(({ line }) => filled(line) > heading && line.some((_, at) => isPair(line, at)));
  if (suspicious.length <= rows.length / 2 && longer.length <= rows.length / 2) return undefined;
  const result = [...lines];
  for (const { line, index } of rows) {
    const ways = waysToJoin(line.slice(0, filled(line)), heading);
    if (ways.length !== 1) return "undecided";
    result[index] = ways[0]!;
  }
  return result;
}

/** How many cells a line has without empty ones at its end. */
const filled = (line: Line): number => line.findLastIndex((cell) => cell !== "") + 1;

/** A number that may be cut in two at its decimal comma: 20 and 5, 1 and 050. */
const isPair = (line: Line, at: number): boolean => /^[+-]?\d{1,2}$/.test(line[at] ?? "") && /^\d{1,4}$/.test(line[at + 1] ?? "");

/** A gravity cut in two: 1 and 050, 0 and 998. As two columns nobody writes them. */
const isGravity = (line: Line, at: number): boolean =>
  (line[at] === "1" && /^[01]\d{2,3}$/.test(line[at + 1] ?? "")) || (line[at] === "0" && /^9[89]\d{1,2}$/.test(line[at + 1] ?? ""));

/**
 * The ways to put a row together, a gravity always whole: to as many cells as the heading has, or to fewer where the last are missing;
 * without a heading, so that no number is left that might be cut in two.
 */
function waysToJoin(line: Line, width: number | undefined): Line[] {
  if (line.length > MOST_CELLS) return [];
  const ways = joinings(line, 0);
  if (width === undefined) return ways.length === 1 ? ways : [];
  const exact = ways.filter((way) => way.length === width);
  return exact.length > 0 ? exact : ways.filter((way) => way.length < width);
}

const MOST_CELLS = 12;

function joinings(line: Line, at: number): Line[] {
  if (at >= line.length) return [[]];
  const mayJoin = isPair(line, at) && !isGravity(line, at + 1);
  const apart = isGravity(line, at) ? [] : joinings(line, at + 1).map((rest) => [line[at]!, ...rest]);
  const joined = mayJoin ? joinings(line, at + 2).map((rest) => [`${line[at]},${line[at + 1]}`, ...rest]) : [];
  return [...apart, ...joined];
}
