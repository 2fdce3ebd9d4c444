import type { Filled } from "../../workbook/batch/contents";
import { TextField } from "./text-field";
import { typedNumber } from "./typed";

/** A number as the brewer types it; words in it are answered beside the field. */
export function NumberField({
  id,
  label,
  value,
  hint,
  problem,
  onInput,
}: {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly hint?: string | undefined;
  /** What is wrong with the number. */
  readonly problem?: string | undefined;
  readonly onInput: (value: string) => void;
}) {
  const isNumber = value.trim() === "" || typedNumber(value) !== undefined;
  return (
    <TextField
      id={id}
      label={label}
      value={value}
      inputMode="decimal"
      problem={isNumber ? problem : "Type a number."}
      hint={hint}
      onInput={onInput}
    />
  );
}

export const numberIn = (text: string): Filled<number> => typedNumber(text) ?? "";
export const textOf = (value: Filled<number>): string => (value === "" ? "" : String(value));
