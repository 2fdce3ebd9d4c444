import { mkdirSync, writeFileSync } from "node:fs";
import { parse, tokenize, type AstExpression } from "@borgar/fx";
import { CellError } from "../../src/functions/cell-error";
import { nodesOf } from "../../src/workbook/grid/evaluate/parse";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import type { SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";
import { paperGrid } from "../support/paper-grid";
import { cellOfLine, difference, handCards, nameOfCell, type HandCard } from "../sheets/by-hand/cards";

/*
 * Every small slip in a planned formula: its number a tenth or one too large, a constant likewise, operands or
 * arguments the wrong way round, < for <=, a name for the next one. The cards calculated by hand must notice.
 */
const { it, afterAll } = globalThis as unknown as { it: (name: string, body: () => void) => void; afterAll: (body: () => void) => void };

interface Loaded {
  readonly card: HandCard;
  readonly plan: SheetPlan;
  readonly usual: string;
  readonly numeric: ReadonlySet<string>;
  readonly cellOf: ReadonlyMap<string, string>;
}
const shown = (value: unknown): unknown => (value instanceof CellError ? value.code : value);

function loaded(card: HandCard): Loaded {
  const plan = planBatch(card.contents());
  const paper = paperGrid(plan);
  const cells = plan.cells.filter(({ content }) => typeof content === "string" && content.startsWith("="));
  const cellOf = new Map(
    card.lines.flatMap(({ name }): [string, string][] => {
      try {
        return [[name, cellOfLine(plan, name, (cell) => shown(paper.at(cell)))]];
      } catch {
        return [];
      }
    }),
  );
  return {
    card,
    plan,
    cellOf,
    usual: said(card, plan, new Map(), cellOf),
    numeric: new Set(cells.filter(({ address }) => typeof paper.at(address) === "number").map(({ address }) => address)),
  };
}

function said(card: HandCard, plan: SheetPlan, changed: ReadonlyMap<string, string>, cellOf: ReadonlyMap<string, string>): string {
  const paper = paperGrid(plan, changed);
  const shows = (cell: string): unknown => shown(paper.at(cell));
  return card.lines
    .filter(({ name }) => cellOf.has(name))
    .flatMap((line) => {
      try {
        return difference(plan, line, shows) ? [line.name] : [];
      } catch {
        return [`${line.name} !`];
      }
    })
    .join("; ");
}

/** Their arguments may stand in any order. */
const anyOrder = new Set(["SUM", "MIN", "MAX", "AND", "OR", "SUMPRODUCT", "AVERAGE", "COUNT"]);
const opposite: Readonly<Record<string, string>> = { "<": "<=", "<=": "<", ">": ">=", ">=": ">" };

interface Slip {
  readonly formula: string;
  readonly guard: boolean;
}

/** The formula with one slip each; a slip in what IF asks changes when a figure is shown, not the figure. */
function slips(formula: string, numeric: boolean, names: readonly string[]): Slip[] {
  const body = formula.slice(1);
  const found: Slip[] = numeric ? [`=(${body})*1.1`, `=(${body})+1`].map((slip) => ({ formula: slip, guard: false })) : [];
  const tree = parse(tokenize(formula, { mergeRefs: true, withLocation: true })) as AstExpression;
  const text = (node: AstExpression): string => formula.slice(...(node.loc as [number, number]));
  const asked = [...nodesOf(tree)].flatMap((node) =>
    node.type === "CallExpression" && node.callee.type === "Identifier" && node.callee.name === "IF" && node.arguments[0]
      ? [node.arguments[0].loc as [number, number]]
      : [],
  );
  const putAt = (from: number, to: number, is: string): void => {
    found.push({
      formula: formula.slice(0, from) + is + formula.slice(to),
      guard: asked.some(([first, last]) => from >= first && to <= last),
    });
  };
  const put = (node: AstExpression, is: string): void => putAt(...(node.loc as [number, number]), is);
  for (const node of nodesOf(tree)) {
    if (node.type === "Literal" && typeof node.value === "number") {
      if (node.value !== 0) put(node, String(node.value * 1.1));
      put(node, String(node.value + 1));
    } else if (node.type === "ReferenceIdentifier" && names.includes(node.value))
      put(node, names[(names.indexOf(node.value) + 1) % names.length] ?? "");
    else if (node.type === "BinaryExpression") {
      const [left, right] = node.arguments;
      if (!left || !right) continue;
      if (["-", "/"].includes(node.operator)) put(node, `${text(right)}${node.operator}(${text(left)})`);
      if (opposite[node.operator]) put(node, `${text(left)}${opposite[node.operator]}${text(right)}`);
    } else if (node.type === "CallExpression" && node.callee.type === "Identifier") {
      if (anyOrder.has(node.callee.name)) continue;
      for (const [index, one] of node.arguments.entries()) {
        const other = node.arguments[index + 1];
        if (!one || !other || one.type !== "ReferenceIdentifier" || other.type !== "ReferenceIdentifier") continue;
        const [from, to] = [(one.loc as [number, number])[0], (other.loc as [number, number])[1]];
        putAt(from, to, `${text(other as AstExpression)},${text(one as AstExpression)}`);
      }
    }
  }
  return found.filter((slip, index) => slip.formula !== formula && found.findIndex((other) => other.formula === slip.formula) === index);
}

/** Words, the checks, the clock's words and what is drawn are held elsewhere; they are counted apart. */
const kindOf = (name: string, numeric: boolean): "numbers" | "words and drawings" =>
  numeric && !["chart", "curve", "forecast", "chart_days", "log_times", "log_gravities", "chart_from", "chart_to"].includes(name)
    ? "numbers"
    : "words and drawings";

it("the planned formulas", () => {
  const cards = handCards().map(loaded);
  const seen = new Map<string, { kind: ReturnType<typeof kindOf>; name: string; formula: string; where: { in: Loaded; cell: string }[] }>();
  for (const one of cards) {
    for (const { address, content } of one.plan.cells) {
      if (typeof content !== "string" || !content.startsWith("=")) continue;
      const name = nameOfCell(one.plan, address);
      const key = `${name}|${content}`;
      const entry = seen.get(key) ?? { kind: kindOf(name, one.numeric.has(address)), name, formula: content, where: [] };
      if (one.numeric.has(address)) entry.kind = kindOf(name, true);
      entry.where.push({ in: one, cell: address });
      seen.set(key, entry);
    }
  }
  const counts: Record<string, [number, number]> = {};
  const report: string[] = [];
  for (const { kind, name, formula, where } of seen.values()) {
    if (kind !== "numbers" && !process.env["GYLEBOOK_MUTATE_ALL"]) continue;
    const names = where[0]!.in.plan.names.filter(({ range }) => !range.includes(":")).map((found) => found.name);
    for (const { formula: slip, guard } of slips(formula, kind === "numbers", names)) {
      const counted = (counts[guard ? `${kind}, when they show` : kind] ??= [0, 0]);
      counted[0] += 1;
      const noticed = where.some(({ in: { card, plan, usual, cellOf }, cell }) => {
        try {
          return said(card, plan, new Map([[cell, slip]]), cellOf) !== usual;
        } catch {
          return true;
        }
      });
      if (noticed) continue;
      counted[1] += 1;
      report.push(`${guard ? `${kind}, when they show` : kind}  ${name}  ${formula}  →  ${slip}`);
    }
  }
  const [all, left] = counts["numbers"] ?? [1, 1];
  mkdirSync(".cache/mutants", { recursive: true });
  writeFileSync(".cache/mutants/formulas.txt", `${report.join("\n")}\n`);
  afterwards = `${report.map((line) => line.slice(0, 400)).join("\n")}\n${Object.entries(counts)
    .map(([kind, [all, left]]) => `${kind}: ${all} slips, ${left} not noticed`)
    .join("\n")}`;
  if (100 * (1 - left / all) < leastNoticed) throw new Error(`${left} of ${all} slips in figures were not noticed`);
});
let afterwards = "";
/** Per cent of the slips in figures that the cards must notice. */
const leastNoticed = 88;
afterAll(() => console.log(afterwards));
