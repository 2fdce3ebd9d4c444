import type { NamedCells } from "../../grid/read/named-cells";
import { isReferenceNode } from "@borgar/fx";
import { CellError } from "../../../functions/cell-error";
import type { UnitSystem } from "../../../functions/quantities";
import { OnlyTheSheetKnows } from "../../grid/evaluate/evaluate";
import { LaidOver } from "../../grid/evaluate/laid-over";
import { nodesOf, parsed } from "../../grid/evaluate/parse";
import { address } from "../../grid/plan/addresses";
import type { Method } from "../contents";
import { checkName, type BlockKey } from "../fields/blocks";
import { newBatch } from "../new-batch";
import { blocksOnSheet } from "../read/blocks-on-sheet";
import { methodOf } from "../read/batch-contents";
import { unitsBeside, unitsOf, type BatchSheet } from "../read/batch-sheets";
import { planBatch } from "../sheet/plan";
import { unitWords } from "../unit-words";
import { blockLine } from "./blocks";
import { checkLines, type CheckedSheet } from "./checks";
import { cannotBeChecked, isFork, stateOf, wordsOf, type CheckLine, type Rule, type Step } from "./rule";
import { text } from "./words";

/** What a line of the checks says of a sheet. */
export interface Said {
  readonly line: string;
  readonly label: string;
  /** Line and rule: "volumes.top-up-whole"; of a line whose own formulas show an error, "volumes.cannot-be-checked". */
  readonly rule: string;
  readonly state: "look" | "stop";
  readonly words: string;
  /** What to do, where the rule says it; part of `words`. */
  readonly remedy: string;
  /** Names that the rule speaks of, in its order; addresses of cells without one. */
  readonly cells: readonly string[];
}

/** The units that a sheet was made in, which the words beside its figures tell: what stands in its units cell may be typed over. */
export const madeIn = (sheet: BatchSheet): UnitSystem => unitsBeside(sheet) ?? unitsOf(sheet);

/** A cell that nothing stands in: a watched cell that was cleared has nothing to say. */
const nowhere = "XFD1048576";

/** The lines of a sheet that stands already, wherever its rows are by now. */
export function linesOf(sheet: BatchSheet): readonly CheckLine[] {
  const found = linesKnown.get(sheet) ?? linesFor(sheet);
  linesKnown.set(sheet, found);
  return found;
}
const linesKnown = new WeakMap<BatchSheet, readonly CheckLine[]>();

function linesFor(sheet: BatchSheet): readonly CheckLine[] {
  const units = madeIn(sheet);
  const area = sheet.has("readings") ? sheet.area("readings") : undefined;
  const starts = (call: string): string => {
    for (const { address, formula } of sheet.filled()) if (typeof formula === "string" && formula.startsWith(call)) return address;
    return nowhere;
  };
  const checked: CheckedSheet = {
    units,
    method: methodOf(sheet),
    words: unitWords(units),
    watched: {
      budget: starts("=GYLE.WATER.BUDGET(kettle_part,"),
      shares: starts("=GYLE.HOPS.SHARE(hops,"),
      timeline: starts("=GYLE.DAY.TIMELINE("),
      readings: { first: area?.from.row ?? 1, last: area?.to.row ?? 2 },
    },
    blocks: blocksOnSheet(sheet),
  };
  return [...checkLines(checked), ...checked.blocks.map((key) => blockLine(key, checked, checked.words))];
}

/** Rows of the printed lines, those of the blocks last. */
export function printedRows(sheet: BatchSheet): readonly number[] {
  const { from } = sheet.area("check_states");
  const usual = sheet.block("check_states").flatMap(([state], index) => (state === "" ? [] : [from.row + index]));
  return [...usual, ...blocksOnSheet(sheet).flatMap((key) => (sheet.has(checkName(key)) ? [sheet.area(checkName(key)).from.row] : []))];
}

/** The printed lines of a sheet with the rows in which they stand. */
export function printedLines(sheet: BatchSheet): readonly { readonly line: CheckLine; readonly row: number }[] {
  const rows = printedRows(sheet);
  return linesOf(sheet).flatMap((line, index) => (rows[index] === undefined ? [] : [{ line, row: rows[index] }]));
}

/**
 * A sheet with values laid over some of its cells, to be asked what it would show and say. What it has no cell for counts all the
 * same: a sheet of an older plan is judged by today's.
 *
 * @param asToday names that are worked out by today's plan whatever stands in their cells: a figure that could hurt goes by no former rule, nor by a number typed over it
 */
export function laidOver(sheet: NamedCells, proposed: readonly Proposed[] = [], asToday: readonly string[] = []): LaidOver {
  const laid = new Map<string, Proposed["content"]>();
  const elsewhere = new Map<string, string>();
  for (const { name, row = 0, column = 0, content } of proposed) {
    if (!sheet.has(name)) elsewhere.set(name, `=${typeof content === "string" ? text(content) : String(content)}`);
    else {
      const { from } = sheet.area(name);
      laid.set(address(from.row + row, from.column + column), content);
    }
  }
  const planned = plannedFormulas(madeIn(sheet), methodOf(sheet), blocksOnSheet(sheet));
  return new LaidOver(sheet, laid, {
    missing: (name) => elsewhere.get(name) ?? planned(name),
    instead: (name) => (asToday.includes(name) ? planned(name) : undefined),
  });
}

/** What stands in the named cells of today's plan. */
function plannedFormulas(units: UnitSystem, method: Method, blocks: readonly BlockKey[]): (name: string) => string | undefined {
  const key = [units, method, ...blocks].join(" ");
  return (name) => {
    const found = planned.get(key) ?? planFormulas(units, method, blocks);
    planned.set(key, found);
    return found.get(name.toLowerCase());
  };
}
const planned = new Map<string, ReadonlyMap<string, string>>();
function planFormulas(units: UnitSystem, method: Method, blocks: readonly BlockKey[]): ReadonlyMap<string, string> {
  const { names, cells } = planBatch(
    newBatch({ id: "", sheetName: "Plan", batchName: "", brewedOn: 1, volume: 1, units, topUp: 0, method }, blocks),
  );
  const contents = new Map(cells.map(({ address: cell, content }) => [cell, content]));
  return new Map(
    names.map(({ name, range }) => {
      const content = contents.get(range);
      return [name.toLowerCase(), typeof content === "string" && content.startsWith("=") ? content : '=""'];
    }),
  );
}

/**
 * What the printed checks would say, by the same formulas as the printed ones.
 *
 * @throws OnlyTheSheetKnows where one of them follows from what only the spreadsheet can work out
 */
export const allSaid = (world: LaidOver, lines = linesOf(world.cellsOfSheet)): Said[] => lines.flatMap((line) => saidBy(world, line));

export function saidBy(world: LaidOver, line: CheckLine): Said[] {
  const { id, label, weight } = line;
  const said = (rule: string, words: string, remedy: string, cells: readonly string[]): Said => ({
    line: id,
    label,
    rule: `${id}.${rule}`,
    state: world.ask(`=${stateOf(text(words), weight)}`)[0]?.[0] === "stop" ? "stop" : "look",
    words,
    remedy,
    cells,
  });
  const found = firstThatHolds(world, line.steps);
  if (!found) return [];
  const words = found.failed ? new CellError("#VALUE!", "") : ask(world, wordsOf(found.rule));
  if (words instanceof CellError) return [said("cannot-be-checked", cannotBeChecked, "", spokenOf(found.rule))];
  const remedy = found.rule.remedy === undefined ? "" : ask(world, found.rule.remedy);
  return words === "" || words === null
    ? []
    : [said(found.rule.id, String(words), remedy instanceof CellError ? "" : String(remedy), spokenOf(found.rule))];
}

const ask = (world: LaidOver, formula: string) => world.ask(`=${formula}`)[0]?.[0] ?? null;

/** `failed` where the condition itself shows an error: then nothing after it is asked. */
function firstThatHolds(world: LaidOver, steps: readonly Step[]): { readonly rule: Rule; readonly failed: boolean } | undefined {
  for (const step of steps) {
    const held = ask(world, isFork(step) ? step.when : step.holds);
    if (held instanceof CellError) return { rule: isFork(step) ? { id: "fork", holds: step.when, says: '""' } : step, failed: true };
    if (isFork(step)) return firstThatHolds(world, held ? step.then : step.otherwise);
    if (held) return { rule: step, failed: false };
  }
  return undefined;
}

/** The cells that a rule speaks of: those of its condition first. */
export function spokenOf({ holds, says }: Rule): string[] {
  const names = [holds, says].flatMap((formula) => {
    const tree = parsed(formula);
    return tree ? [...nodesOf(tree)].flatMap((node) => (isReferenceNode(node) ? [node.value] : [])) : [];
  });
  return [...new Set(names)];
}

/** A value that is about to be typed into a named cell, counted from the first cell of the name. */
export interface Proposed {
  readonly name: string;
  readonly row?: number;
  readonly column?: number;
  readonly content: string | number | boolean;
}

/**
 * What some lines of the checks would say if something were typed, and do not say already. Empty where only the spreadsheet can
 * tell: the sheet itself will say it then.
 *
 * @param ids lines that judge what is typed: others may say something new as well, which is no doubt about it
 * @param always rules about the very figure that is typed: they are told even where the line said the same before, or another of its rules comes first
 */
export function newlySaid(
  sheet: BatchSheet,
  proposed: readonly Proposed[],
  ids: readonly string[],
  always: ReadonlySet<string> = new Set(),
): Said[] {
  try {
    const lines = linesOf(sheet).filter(({ id }) => ids.includes(id));
    const key = ({ rule, words }: Said): string => `${rule} ${words}`;
    const before = new Set(allSaid(laidOver(sheet), lines).map(key));
    const world = laidOver(sheet, proposed);
    const said = allSaid(world, lines).filter((one) => always.has(one.rule) || !before.has(key(one)));
    const known = new Set(said.map(key));
    return [...said, ...lines.flatMap((line) => saidOnlyBy(world, line, always)).filter((one) => !known.has(key(one)))];
  } catch (problem) {
    if (problem instanceof OnlyTheSheetKnows) return [];
    throw problem;
  }
}

/** What a line says by some of its rules only, whatever the rules before them say. */
export const saidOnlyBy = (world: LaidOver, line: CheckLine, rules: ReadonlySet<string>): Said[] =>
  saidBy(world, { ...line, steps: line.steps.filter((step) => !isFork(step) && rules.has(`${line.id}.${step.id}`)) }).filter(({ rule }) =>
    rules.has(rule),
  );
