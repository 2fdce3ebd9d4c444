import { tokenize, tokenTypes } from "@borgar/fx";
import { address, block, position } from "../../grid/plan/addresses";
import type { SheetPlan } from "../../grid/plan/sheet-plan";
import type { NamedCells } from "../../grid/read/named-cells";

/**
 * Where a planned cell stands now, after rows or columns were put in: worked out from the names, which Excel moves along.
 * Undefined where that is not certain.
 */
export function placeMap(plan: SheetPlan, sheet: NamedCells): (planned: string) => string | undefined {
  const rows: [number, number][] = [];
  const columns: [number, number][] = [];
  const named = new Map<string, string>();
  for (const { name, range } of plan.names) {
    if (!sheet.has(name)) continue;
    const [was, is] = [block(range), sheet.area(name)];
    rows.push([was.from.row, is.from.row], [was.to.row, is.to.row]);
    columns.push([was.from.column, is.from.column], [was.to.column, is.to.column]);
    if (!range.includes(":")) named.set(range, sheet.range(name));
  }
  const row = shifted(rows);
  const column = shifted(columns);
  return (planned) => {
    const own = named.get(planned);
    if (own !== undefined) return own;
    const { row: plannedRow, column: plannedColumn } = position(planned);
    const [r, c] = [row(plannedRow), column(plannedColumn)];
    return r === undefined || c === undefined ? undefined : address(r, c);
  };
}

/** A line between two known ones that moved by the same number moved with them. */
function shifted(pairs: readonly (readonly [number, number])[]): (planned: number) => number | undefined {
  const shifts = new Map<number, number | undefined>();
  for (const [was, is] of pairs) shifts.set(was, shifts.has(was) && shifts.get(was) !== is - was ? undefined : is - was);
  const known = [...shifts.keys()].sort((one, other) => one - other);
  return (planned) => {
    if (shifts.has(planned)) {
      const own = shifts.get(planned);
      return own === undefined ? undefined : planned + own;
    }
    const before = known.filter((line) => line < planned).at(-1);
    const after = known.find((line) => line > planned);
    const [one, other] = [before ?? after, after ?? before].map((line) => (line === undefined ? 0 : shifts.get(line)));
    return one !== undefined && one === other ? planned + one : undefined;
  };
}

/** The new address with the dollar signs of the old one. */
const anchored = (corner: string, where: string | undefined): string | undefined => {
  const [, column = "", row = ""] = /^(\$?)[A-Z]+(\$?)\d+$/i.exec(corner) ?? [];
  return where?.replace(/^([A-Z]+)(\d+)$/i, (_, letters: string, digits: string) => `${column}${letters}${row}${digits}`);
};

/** A planned formula with its addresses where those cells stand now; undefined where one of them is not certain. */
export function moved(formula: string, place: (planned: string) => string | undefined): string | undefined {
  let isCertain = true;
  const text = tokenize(formula, { mergeRefs: true })
    .map(({ type, value }) => {
      if (type !== tokenTypes.REF_RANGE) return value;
      const corners = value.split(":").map((corner) => anchored(corner, place(corner.replaceAll("$", ""))));
      if (corners.includes(undefined)) isCertain = false;
      return corners.join(":");
    })
    .join("");
  return isCertain ? text : undefined;
}
