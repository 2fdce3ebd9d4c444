import { tokenize, tokenTypes } from "@borgar/fx";
import { address, block as blockOf, localAddress } from "../../grid/plan/addresses";
import { isPrivate } from "../../batch/private-words";
import type { CellChange } from "./cell-change";
import { frozenValue } from "./frozen-value";
import { num, quote } from "./plain/formula-parts";
import type { At, Workings } from "./plain/workings";
import { cellAt, rangeOn, type SheetSnapshot } from "./sheet-snapshot";

/** Values that a copy is left with, and a native check whether they still belong to what they were made from. */
export interface StandingStill {
  /** Title and what it says, then a line for each value, then a line for each cell that they were made from. */
  readonly workings: Workings;
  /** Cell of the workings that is TRUE once anything has changed. */
  readonly changed: (at: At) => string;
  /** Native formula that says so. */
  readonly says: (at: At) => string;
}

/** One value, or block of values, in place of a formula. */
interface Still {
  readonly label: string;
  readonly block: string;
  readonly inputs: readonly string[];
}

/** How far a figure may be from what it was without being another one: plain formulas agree with their calls to less. */
const same = (cell: string, then: string): string =>
  `IF(ISNUMBER(${cell}),IF(ISNUMBER(${then}),ABS(${cell}-${then})<=1E-6+1E-9*ABS(${then}),FALSE),IF(ISNUMBER(${then}),FALSE,${cell}&""=${then}&""))`;

/** A value as a formula of its own, so that no program takes a text for a date; what is private stays behind. */
function asFormula(value: unknown): string {
  if (isPrivate(value)) return '=""';
  const frozen = frozenValue(value);
  return typeof frozen === "string" && frozen.startsWith("=")
    ? frozen
    : typeof frozen === "number"
      ? `=${num(frozen)}`
      : `=${quote(String(frozen))}`;
}

const title = "Stands still";
const firstStill = 1;

/**
 * What stands still on a copy: formulas that became values because nothing plain calculates them. Undefined where there is none.
 *
 * @param isoDay the day of the unplugging: "2026-12-01"
 */
export function standingStill(sheet: SheetSnapshot, changes: readonly CellChange[], isoDay: string): StandingStill | undefined {
  // What speaks of no cell can never be out of date.
  const stills = changes
    .filter(({ reason, formula }) => reason !== undefined && referencesIn(formula).length > 0)
    .map((change) => stillOf(sheet, change));
  if (stills.length === 0) return undefined;
  const inputs = [...new Set(stills.flatMap((still) => still.inputs))];
  const firstInput = firstStill + stills.length;
  const rowOf = new Map(inputs.map((block, index) => [block, firstInput + sizeBefore(inputs, index)]));
  const flags = (at: At): string => `${at(firstStill, 1)}:${at(firstInput - 1, 1)}`;
  return {
    changed: (at) => at(0, 1),
    says: (at) => says(at, stills, isoDay, flags(at)),
    workings: (at) => [
      [title, `=OR(${flags(at)})`],
      ...stills.map(({ label, ...still }) => [
        label,
        `=OR(${[
          ...still.inputs.map((block) => {
            const from = rowOf.get(block) ?? firstInput;
            return `SUM(${at(from, 2)}:${at(from + cellsOf(block).length - 1, 2)})>0`;
          }),
          // What it was made from may stand still itself.
          ...stills.flatMap((other, index) =>
            other.block !== still.block && still.inputs.some((block) => touch(block, other.block)) ? [at(firstStill + index, 1)] : [],
          ),
          "FALSE",
        ].join(",")})`,
      ]),
      ...inputs.flatMap((block, index) =>
        cellsOf(block).map((cell, place) => {
          const then = at(firstInput + sizeBefore(inputs, index) + place, 1);
          const { row, column } = blockOf(cell).from;
          return [
            cell,
            asFormula(cellAt(sheet.values, sheet.corner, row, column)),
            `=IFERROR(IF(${same(cell, then)},0,1),IF(AND(ISERROR(${cell}),ISERROR(${then})),0,1))`,
          ];
        }),
      ),
    ],
  };
}

const says = (at: At, stills: readonly Still[], isoDay: string, flags: string): string => {
  const old = stills.map(({ label }, index) => `IF(${at(firstStill + index, 1)},${quote(`, ${label}`)},"")`).join("&");
  const all = stills.map(({ label }) => label).join(", ");
  return `=IF(OR(${flags}),"Out of date, unplugged since ${isoDay}: "&MID(${old},3,200),${quote(`Unplugged; stands still since ${isoDay}: ${all}`)})`;
};

function stillOf(sheet: SheetSnapshot, { cell, block, formula }: CellChange): Still {
  const name = [...sheet.names].find(([, place]) => isHere(sheet, place) && localAddress(place).split(":")[0] === cell)?.[0];
  return { label: name?.replaceAll("_", " ") ?? cell, block, inputs: inputsOf(sheet, formula) };
}

const isHere = (sheet: SheetSnapshot, place: string): boolean =>
  place.slice(0, place.lastIndexOf("!")).replace(/^'|'$/g, "").replaceAll("''", "'").toLowerCase() === sheet.name.toLowerCase();

/** Blocks of this sheet that a formula speaks of; whole columns and other sheets are passed over. */
const inputsOf = (sheet: SheetSnapshot, formula: string): string[] => [
  ...new Set(referencesIn(formula).flatMap((reference) => rangeOn(sheet, reference) ?? [])),
];

function referencesIn(formula: string): string[] {
  const tokens = tokenize(formula, { mergeRefs: true });
  return tokens.flatMap(({ type, value }, index) => (kinds.includes(type) ? [tokens[index + 1]?.value === "#" ? `${value}#` : value] : []));
}
const kinds: readonly string[] = [tokenTypes.REF_RANGE, tokenTypes.REF_NAMED, tokenTypes.REF_STRUCT];

function cellsOf(block: string): string[] {
  const { from, to } = blockOf(block);
  const cells: string[] = [];
  for (let row = from.row; row <= to.row; row += 1)
    for (let column = from.column; column <= to.column; column += 1) cells.push(address(row, column));
  return cells;
}

const sizeBefore = (blocks: readonly string[], index: number): number =>
  blocks.slice(0, index).reduce((size, block) => size + cellsOf(block).length, 0);

function touch(one: string, other: string): boolean {
  const [a, b] = [blockOf(one), blockOf(other)];
  return a.from.row <= b.to.row && b.from.row <= a.to.row && a.from.column <= b.to.column && b.from.column <= a.to.column;
}
