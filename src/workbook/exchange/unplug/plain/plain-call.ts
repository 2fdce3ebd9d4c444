import type { ResultKind } from "../../../../functions/describe";
import { fromCoreText } from "./units";
import { questionsOf, type Question } from "./guard";
import type { PlainArguments } from "./plain-arguments";
import type { Place, PlainForm } from "./plain-form";
import type { At, Workings } from "./workings";

/**
 * One cell of a call as a plain formula: blank while an argument is not filled in, #N/A where one is outside its limits
 * or the sum has no answer, else the sum in the brewer's unit.
 */
export function plainCell(form: PlainForm, x: PlainArguments, place: Place, put: PutWorkings): string {
  const questions = [...questionsOf(x), { tests: form.holds?.(x) ?? [] }, { blanks: form.waits?.(x) ?? [] }];
  const result = x.descriptor.result as ResultKind;
  const shown = (sum: string): string => (result.kind === "number" ? fromCoreText(result.quantity, sum, x.units) : sum);
  // As with the call itself, an error stands in the first cell of a grid alone: in the others all that is no answer is blank.
  const isFirst = place.row === 0 && place.column === 0;
  if (form.workings === undefined) return guarded(questions, shown(form.sum(x, place, noWorkings)), isFirst);
  const own = form.workings(x);
  // What is asked before the sum stands once, in the first of the workings.
  const whole = put((at) => [[`Workings of GYLE.${x.descriptor.id}`, `=${guarded(questions, "1", true)}`], ...own(below(at))]);
  const ready = whole(0, 1);
  return `IF(ISNUMBER(${ready}),${shown(form.sum(x, place, below(whole)))},${isFirst ? ready : '""'})`;
}

/** Puts a block of workings where there is room, and says where. */
export type PutWorkings = (workings: Workings) => At;

const below =
  (at: At): At =>
  (row, column) =>
    at(row + 1, column);
const noWorkings: At = () => {
  throw new Error("a plain form without workings asks for them");
};

function guarded(questions: readonly Question[], sum: string, isFirst: boolean): string {
  const asked = isFirst ? together(questions) : [{ blanks: questions.flatMap(blanksOf) }, { tests: questions.flatMap(testsOf) }];
  return asked.reduceRight((rest, question) => {
    const [blanks, tests] = [blanksOf(question), testsOf(question)];
    if (blanks.length > 0) return `IF(${any("OR", blanks)},"",${rest})`;
    return tests.length > 0 ? `IF(${any("AND", tests)},${rest},${isFirst ? "NA()" : '""'})` : rest;
  }, sum);
}

const blanksOf = (question: Question): readonly string[] => ("blanks" in question ? question.blanks : []);
const testsOf = (question: Question): readonly string[] => ("tests" in question ? question.tests : []);
const any = (word: "OR" | "AND", conditions: readonly string[]): string =>
  conditions.length === 1 ? (conditions[0] ?? "") : `${word}(${conditions.join(",")})`;

/** Questions of one kind that follow each other become one, so that brackets stay shallow. */
function together(questions: readonly Question[]): Question[] {
  const found: Question[] = [];
  for (const question of questions) {
    const [blanks, tests, last] = [blanksOf(question), testsOf(question), found.at(-1)];
    if (blanks.length + tests.length === 0) continue;
    if (last && "blanks" in last && blanks.length > 0) found.splice(-1, 1, { blanks: [...last.blanks, ...blanks] });
    else if (last && "tests" in last && tests.length > 0) found.splice(-1, 1, { tests: [...last.tests, ...tests] });
    else found.push(question);
  }
  return found;
}

/** How many cells a grid's answer fills. */
export const gridSize = (form: PlainForm, x: PlainArguments): { rows: number; columns: number } =>
  form.size?.(x) ?? { rows: 1, columns: 1 };
