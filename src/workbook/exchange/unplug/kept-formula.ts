/** What a cell's note keeps of the formula that stood there, so that plugging back in can restore it. */
export interface KeptFormula {
  /** "F54:F65": the cells that were written in its place, the formula's own cell first. */
  readonly block: string;
  /** As it was, with its equals sign. */
  readonly formula: string;
  /** The marks of the cells as they were written, row by row. */
  readonly marks: readonly string[];
  /** Names of the cells below the sheet that the plain formula rests on. */
  readonly workings?: readonly string[];
  /** Whether its value stands still. */
  readonly still?: boolean;
  /** The note that the cell had before. */
  readonly note?: string;
}

/** Names on a copy: what plain formulas rest on, numbered; where values are compared with what they were made from; what that says. */
export const workingsName = "plain_workings_";
export const stillName = "stands_still";
export const stillLineName = "stands_still_says";

/** Why a formula became a value; undefined where it became a plain formula. */
type Reason = string | undefined;

const firstWord = "gylebook 1 ";

/**
 * The whole text of the note: a first line for machines, then words for whoever reads it, then the note that was there.
 */
export function noteText(kept: KeptFormula, reason: Reason): string {
  const { note, ...rest } = kept;
  const words =
    reason === undefined
      ? `Gylebook stood here: ${shortened(kept.formula)}\nThe same sum now calculates without the add-in. To put it back: Gylebook’s pane, “Share”, “Unplug”.`
      : `Gylebook stood here: ${shortened(kept.formula)}\nThis is the value that it had: ${reason}. It stands still, whatever changes. To put it back: Gylebook’s pane, “Share”, “Unplug”.`;
  return `${firstWord}${JSON.stringify({ ...rest, ...(note === undefined ? {} : { note }) })}\n${words}${note === undefined ? "" : `\n\n${note}`}`;
}

/** What a note keeps; undefined for a note of somebody's own, or one whose first line was changed. */
export function keptFormula(text: string): KeptFormula | undefined {
  const start = text.indexOf(firstWord);
  // A program may put its own words (an author's name) before a note, never within a line.
  if (start < 0 || (start > 0 && text[start - 1] !== "\n")) return undefined;
  const line = text.slice(start + firstWord.length).split(/\r?\n/, 1)[0] ?? "";
  try {
    const read = JSON.parse(line) as Partial<KeptFormula>;
    const good =
      typeof read.block === "string" &&
      /^[A-Z]{1,3}\d+:[A-Z]{1,3}\d+$/.test(read.block) &&
      typeof read.formula === "string" &&
      read.formula.startsWith("=") &&
      Array.isArray(read.marks) &&
      read.marks.every((mark) => typeof mark === "string") &&
      (read.workings === undefined || (Array.isArray(read.workings) && read.workings.every((name) => typeof name === "string"))) &&
      (read.still === undefined || typeof read.still === "boolean") &&
      (read.note === undefined || typeof read.note === "string");
    return good ? (read as KeptFormula) : undefined;
  } catch {
    return undefined;
  }
}

const shortened = (formula: string): string => (formula.length > 300 ? `${formula.slice(0, 300)}…` : formula);
