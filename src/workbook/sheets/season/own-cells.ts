import { parseA1Ref, stringifyA1Ref, stringifyTokens, tokenize, translateFormulaToA1, translateFormulaToR1C1 } from "@borgar/fx";
import { address, columnNumber } from "../../grid/plan/addresses";
import { firstOwnColumn } from "./season-columns";
import type { CellContent } from "../../grid/plan/sheet-plan";

const isFormula = (content: CellContent): content is string => typeof content === "string" && content.startsWith("=");

/** A formula that the brewer wrote beside a batch goes on speaking of its own row when the row moves. */
export const moved = {
  /** As it stands in a cell → as it can be carried elsewhere. */
  up: (content: CellContent, address: string): CellContent => (isFormula(content) ? translateFormulaToR1C1(content, address) : content),
  /** As it was carried → as it stands in its new cell. */
  down: (content: CellContent, address: string): CellContent => (isFormula(content) ? translateFormulaToA1(content, address) : content),
};

/** Columns of the first plan's list that stand elsewhere today, counted from 0: cost to the sheet's mark one further, the brewer's own behind the kept figures. */
const formerColumns: readonly { readonly from: string; readonly to: string; readonly now: string }[] = [
  { from: "R", to: "Y", now: "S" },
  { from: "AA", to: "XFD", now: firstOwnColumn },
];

function columnNow(column: number): number {
  const found = formerColumns.find(({ from, to }) => column + 1 >= columnNumber(from) && column + 1 <= columnNumber(to));
  return found ? column + columnNumber(found.now) - columnNumber(found.from) : column;
}

/** What the brewer wrote beside a batch on a sheet of the first plan, as it is carried to one of today's: its references go on speaking of what they spoke of. */
export function atNewPlaces(content: CellContent, offset: number): CellContent {
  if (!isFormula(content)) return content;
  const [was, now] = [address(1000, columnNumber("AA") + offset), address(1000, columnNumber(firstOwnColumn) + offset)];
  const tokens = tokenize(translateFormulaToA1(content, was)).map((token) => {
    if (token.type !== "range") return token;
    const reference = parseA1Ref(token.value);
    if (!reference || !("range" in reference) || token.value.includes("!")) return token;
    const { left, right, ...others } = reference.range;
    const range = {
      ...others,
      left: left === null || left === undefined ? left : columnNow(left),
      right: right === null || right === undefined ? right : columnNow(right),
    };
    return { ...token, value: stringifyA1Ref({ ...reference, range }) };
  });
  return translateFormulaToR1C1(stringifyTokens(tokens), now);
}
