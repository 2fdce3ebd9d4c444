import { styleLines } from "./style-ranges";

/** Lowest and highest. */
export type Range = readonly [low: number, high: number];

export interface Style {
  /** "15B"; "21Ba" is one of ours (src/build/help/style-list.ts). */
  readonly code: string;
  readonly name: string;
  readonly originalGravity: Range;
  readonly finalGravity: Range;
  readonly abvPercent: Range;
  readonly ibu: Range;
  readonly srm: Range;
}

const styleOf = (line: string): Style => {
  const words = line.split(" ");
  const numbers = words.slice(-10).map(Number);
  const range = (place: number, from: (printed: number) => number): Range => [
    from(numbers[2 * place] ?? NaN),
    from(numbers[2 * place + 1] ?? NaN),
  ];
  const gravity = (points: number): number => (1000 + points) / 1000;
  const asPrinted = (printed: number): number => printed;
  return {
    code: words[0] ?? "",
    name: words.slice(1, -10).join(" "),
    originalGravity: range(0, gravity),
    finalGravity: range(1, gravity),
    abvPercent: range(2, (tenths) => tenths / 10),
    ibu: range(3, asPrinted),
    srm: range(4, asPrinted),
  };
};

/** Every style with its ranges. */
export const styles: readonly Style[] = styleLines.trim().split("\n").map(styleOf);

/** "Kölsch" and "kolsch" are the same word. */
const plain = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").trim().toLowerCase();

/** "Historical: Sahti" is also known as "Sahti". */
const namesOf = ({ code, name }: Style): string[] => [code, name, name.slice(name.indexOf(":") + 1)].map(plain);

/** The style with this code or name; `undefined` when there is none. */
export const styleNamed = (text: string): Style | undefined => styles.find((style) => namesOf(style).includes(plain(text)));

/** Styles whose name holds the text: what somebody may have meant. */
export const stylesLike = (text: string): Style[] => styles.filter(({ name }) => plain(name).includes(plain(text)));

export type Fit = "below" | "inside" | "above";

/** Where a value stands against a range, when both are rounded to a step such as 0.001. */
export function fitOf(value: number, [low, high]: Range, step: number): Fit {
  const half = step / 2 + 1e-9;
  if (value < low - half) return "below";
  return value > high + half ? "above" : "inside";
}
