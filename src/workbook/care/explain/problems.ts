import type { CellError } from "../../../functions/cell-error";
import type { ArgumentExplanation, Problem } from "./explanation";
import { sentenceOf } from "../../grid/words/sentence";

/** What a function's error says, and what to do about it. The message names the argument and what is allowed. */
export function callProblem({ code, message }: CellError, explained: readonly ArgumentExplanation[]): Problem {
  const faulty = explained.find(({ shown }) => /^#[A-Z/0-9]+[!?A]?$/.test(shown));
  if (faulty)
    return {
      what: `${faulty.name} shows ${faulty.shown} itself, and that is passed on.`,
      remedy: "Correct that cell first; this one follows.",
      ...(faulty.place && { place: faulty.place }),
    };
  const wrong = explained.find(({ isWrong }) => isWrong);
  const where = wrong?.place ? { place: wrong.place } : {};
  const what = sentenceOf(
    message,
    explained.map(({ name }) => name),
  );
  if (message.startsWith("internal error"))
    return { what, remedy: "This is a mistake of ours, not of yours. Please report it with the formula." };
  if (/must be a number, not/.test(message))
    return {
      what,
      remedy:
        "Type the number alone, in the unit that is asked for, and with the decimal sign that your Excel uses. A number that stands at the left of its cell is a text: type it again.",
      ...where,
    };
  if (code === "#N/A")
    return {
      what,
      remedy: "No source that we trust covers this value; an answer would be a guess. Check whether the value and its unit are right.",
      ...where,
    };
  return {
    what,
    remedy: wrong
      ? `Change ${wrong.name}${wrong.typed === "" ? "" : `, which is ${wrong.typed}`}, or check the units.`
      : "Check the values above and their units.",
    ...where,
  };
}

/** What an error of the cell itself means when no call of ours explains it. */
export function cellProblem(error: string, allCallsExist: boolean, unknownNames: readonly string[]): Problem | undefined {
  switch (error) {
    case "#NAME?":
      if (unknownNames.length > 0)
        return {
          what: `There is no name ${unknownNames.join(", ")} here.`,
          remedy: "It was deleted or mistyped. Correct the formula, or give the right cell that name again (Formulas, Name Manager).",
        };
      return allCallsExist
        ? {
            what: "Excel did not know the function when this formula was entered, and does not try again by itself.",
            remedy: "Enter the formula once more: press F2, then Enter; or let “Check this workbook” repair all such cells at once.",
          }
        : undefined;
    case "#REF!":
      return { what: "The formula points at cells that were deleted.", remedy: "Undo the deletion (Ctrl+Z), or write the formula anew." };
    case "#SPILL!":
      return {
        what: "The answer needs more cells than are empty.",
        remedy: "Empty the cells below and to the right, or move the formula where there is room. Inside a table nothing can spill.",
      };
    case "#BUSY!":
    case "#GETTING_DATA":
      return { what: "Excel is still calculating.", remedy: "Wait a moment." };
    case "#CALC!":
      return { what: "Excel cannot work this out as it stands.", remedy: "Look at the parts below; often an empty range is the reason." };
    default:
      return undefined;
  }
}
