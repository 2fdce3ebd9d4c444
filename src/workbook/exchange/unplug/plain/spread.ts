import { straightWithin } from "../../../../core/gauge/spread";
import { registry } from "../../../../functions/registry";
import { beerForms } from "./beer";
import { num } from "./formula-parts";
import { PlainArguments } from "./plain-arguments";
import { plainCell } from "./plain-call";
import { NoPlainForm } from "./no-plain-form";
import { isValueOnly, type PlainForm, type ValueOnly } from "./plain-form";
import type { Workings } from "./workings";
import { wortForms } from "./wort";
import { yeastForms } from "./yeast";

/** What it can be asked about: sums that stand in one cell. */
const asked: Readonly<Record<string, PlainForm | ValueOnly>> = { ...beerForms, ...wortForms, ...yeastForms };

interface Question {
  /** The function with its arguments moved by so many of their ±; a plain formula. */
  readonly answer: (steps: readonly string[]) => string;
  readonly spreads: readonly number[];
}

/** The function, its arguments and their ±, where all of them stand in the formula: CHOOSE({1,2},og,fg) and {0.002,0.002}. */
function question(x: PlainArguments): Question {
  const name = x.operand("function");
  const descriptor = registry.find(({ id }) => name.kind === "constant" && id === String(name.value).trim().toUpperCase());
  const form = descriptor && asked[descriptor.id];
  const texts = listOf(x, "arguments", /^CHOOSE\(\{[\d,]+\},(.*)\)$/s);
  const spreads = listOf(x, "uncertainties", /^\(?\{([^{}]*)\}\)?$/).map(Number);
  if (!descriptor || !form || isValueOnly(form) || form.workings || descriptor.modelSpread || descriptor.result.kind !== "number")
    throw new NoPlainForm("it asks another function again and again");
  if (texts.length !== spreads.length || spreads.some((spread) => !(spread >= 0)))
    throw new NoPlainForm("its ± do not stand beside the arguments");
  const keys = Object.keys(descriptor.parameters as object);
  const answer = (steps: readonly string[]): string => {
    const moved = texts.map(
      (text, index) => [keys[index] ?? "", { kind: "text", text: step(text, steps[index] ?? "0", spreads[index]!) }] as const,
    );
    return plainCell(form, new PlainArguments(descriptor, new Map(moved)), { row: 0, column: 0 }, () => {
      throw new NoPlainForm("it asks another function again and again");
    });
  };
  return { answer, spreads };
}

const step = (text: string, by: string, spread: number): string => (by === "0" || spread === 0 ? text : `(${text}+${by}*${num(spread)})`);

/** The pieces of a list that is written out. */
function listOf(x: PlainArguments, key: string, form: RegExp): string[] {
  const operand = x.operand(key);
  const list = operand.kind === "text" ? form.exec(operand.text)?.[1] : undefined;
  if (list === undefined || list.includes("(")) throw new NoPlainForm("it asks another function again and again");
  return list.split(",");
}

/** As `core/gauge/spread.ts` where the function is straight: here, each input up and down, then all together up and down. */
const workings =
  (x: PlainArguments): Workings =>
  (at) => {
    const { answer, spreads } = question(x);
    const alone = (index: number, by: string): string[] => spreads.map((_, other) => (other === index ? by : "0"));
    const share = (index: number): string => at(1 + index, 2);
    const sign = (index: number): string => `IF(${share(index)}<0,-1,1)`;
    /** Nothing to move as long as nothing has been read. */
    const once = (text: string): string => `=IF(${at(0, 0)}="","",${text})`;
    return [
      [`=${answer([])}`],
      ...spreads.map((_, index) => [
        once(answer(alone(index, "1"))),
        once(answer(alone(index, "(-1)"))),
        once(`(${at(1 + index, 0)}-${at(1 + index, 1)})/2`),
      ]),
      ["1", "-1"].map((by) => once(answer(spreads.map((_, index) => `(${by}*${sign(index)})`)))),
    ];
  };

const straight = (one: string, other: string): string => `ABS(${one}-(${other}))<=${straightWithin}*MAX(ABS(${one}),ABS(${other}))`;

/** #N/A where it bends too much, or has no answer on one side: the call draws a thousand values then. */
export const spread: PlainForm = {
  waits: () => [],
  workings,
  sum: (x, _place, at) => {
    const { spreads } = question(x);
    const here = at(0, 0);
    const corners = 1 + spreads.length;
    const shares = spreads.map((_, index) => at(1 + index, 2));
    const together = shares.map((share) => `ABS(${share})`).join("+");
    const bends = [
      ...spreads.map((_, index) => straight(`(${at(1 + index, 0)}-${here})`, `${here}-${at(1 + index, 1)}`)),
      `IFERROR(${straight(`(${at(corners, 0)}-${here})`, together)},TRUE)`,
      `IFERROR(${straight(`(${here}-${at(corners, 1)})`, together)},TRUE)`,
    ];
    return `IF(${here}="","",IF(AND(${bends.join(",")}),SQRT(${shares.map((share) => `${share}^2`).join("+")}),NA()))`;
  },
};
