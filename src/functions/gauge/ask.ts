import { ArgumentProblem, CellError } from "../cell-error";
import { call } from "../call";
import { argumentName, type AnyDescriptor, type Parameter } from "../describe";
import { messages } from "../messages";
import { isEmpty } from "../read-cell";

/** The function of a name as a brewer types it: with or without GYLE., in any case. */
export function functionOfName(name: string, functions: readonly AnyDescriptor[]): AnyDescriptor {
  const id = name
    .trim()
    .toUpperCase()
    .replace(/^=?GYLE\./, "");
  const found = functions.find((descriptor) => descriptor.id === id);
  if (found === undefined)
    throw new ArgumentProblem(
      "#VALUE!",
      messages.noSuchFunction(name, functions.find((descriptor) => descriptor.id.endsWith(`.${id}`))?.id ?? "BEER.ABV"),
    );
  const ofRanges = parametersOf(found).find(
    ([, parameter]) => parameter.kind === "list" || parameter.kind === "table" || parameter.kind === "block",
  );
  if (ofRanges !== undefined && ofRanges[1].optional !== true)
    throw new ArgumentProblem("#VALUE!", messages.takesRange(found.id, argumentName(ofRanges[0])));
  if (found.result.kind !== "number") throw new ArgumentProblem("#VALUE!", messages.noNumber(found.id));
  return found;
}

const parametersOf = (descriptor: AnyDescriptor): [string, Parameter][] =>
  Object.entries(descriptor.parameters as Record<string, Parameter>);

/** The ± beside each argument: numbers only, none below 0, none beside a word or an empty cell. */
export function readSpreads(descriptor: AnyDescriptor, typed: readonly unknown[], uncertainties: readonly unknown[]): number[] {
  if (typed.length !== uncertainties.length) throw new ArgumentProblem("#VALUE!", messages.sameLength("arguments", "uncertainties"));
  const parameters = parametersOf(descriptor);
  if (typed.length > parameters.length) throw new ArgumentProblem("#VALUE!", messages.tooManyArguments(descriptor.id, parameters.length));
  return uncertainties.map((uncertainty, index) => {
    if (uncertainty instanceof CellError) throw new ArgumentProblem(uncertainty.code, uncertainty.message);
    if (isEmpty(uncertainty) || uncertainty === 0) return 0;
    const [key = "", parameter] = parameters[index] ?? [];
    const name = argumentName(key);
    if (typeof uncertainty !== "number" || !(uncertainty > 0) || uncertainty === Infinity)
      throw new ArgumentProblem("#VALUE!", messages.badUncertainty(name, uncertainty));
    if (parameter?.kind !== "number" || typeof typed[index] !== "number")
      throw new ArgumentProblem("#VALUE!", messages.nothingToVary(name));
    return uncertainty;
  });
}

/** What the function answers in its cell: a number, an empty text, or the error as a problem. */
export function ask(descriptor: AnyDescriptor, typed: readonly unknown[]): number | "" {
  const answer = call(descriptor, typed)[0]?.[0];
  if (answer instanceof CellError)
    throw new ArgumentProblem(
      answer.code,
      typed.some((cell) => cell instanceof CellError) ? answer.message : `arguments: ${answer.message}`,
    );
  return typeof answer === "number" ? answer : "";
}
