import type { Parameter } from "../../../functions/describe";

/** A word over a column of numbers, as `src/functions/read-range.ts` tells headings. */
const isWord = (typed: unknown): boolean => typeof typed === "string" && typed.trim() !== "" && !/^\s*[-+.,]?\d/.test(typed);
const isFilled = (typed: unknown): boolean => (typeof typed === "string" ? typed.trim() !== "" : typed !== null && typed !== undefined);

/** Whether the first row of a range that a call takes whole names its columns. */
export function hasHeading(parameter: Parameter, values: readonly (readonly unknown[])[] | undefined): boolean {
  const first = values?.[0];
  if (!values || !first || values.length < 2) return false;
  if (parameter.kind === "list") return typeof first[0] === "string" && first[0].trim() !== "";
  if (parameter.kind !== "table") return false;
  const layout = parameter.layouts.find((columns) => columns.length === first.length);
  const filled = (layout ?? []).flatMap((key, position) => {
    const column = key === null ? undefined : parameter.columns[key];
    return column === undefined || !isFilled(first[position]) ? [] : [{ column, typed: first[position] }];
  });
  const numbers = filled.filter(({ column }) => column.kind === "number");
  const chosen = filled.some(({ column, typed }) =>
    (column.kind === "choice" ? column.choices : column.kind === "number" ? (column.words ?? []) : []).includes(
      (typeof typed === "string" ? typed : "").trim().toLowerCase(),
    ),
  );
  return numbers.length > 0 && numbers.every(({ typed }) => isWord(typed)) && !chosen;
}
