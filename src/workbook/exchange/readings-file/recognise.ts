import { orderToldBy, type DateOrder, type Zone } from "./read-moment";
import { looksLikeMoment } from "./moment-look";
import type { TextTable } from "./parse-table";
import { readDecimal } from "./read-decimal";

/** How the table is to be read; recognised first, then confirmed or changed by the user. */
export interface LogChoices {
  /** Places of the columns, from 0; -1 = none. */
  readonly when: number;
  /** Where the time of day stands in a column of its own. */
  readonly time: number;
  readonly gravity: number;
  readonly temperature: number;
  readonly scale: "SG" | "P";
  readonly degrees: "C" | "F";
  readonly order: DateOrder;
  readonly zone: Zone;
  /** The device has taken its temperature into account already. */
  readonly corrected: boolean;
}

export interface Recognised {
  readonly choices: LogChoices;
  /** Dates with the year first need no question about the others. */
  readonly orderMatters: boolean;
  /** The dates fit both orders: only the user can tell. */
  readonly orderUnsure: boolean;
}

const headings = {
  when: /date|time|when|stamp|datum|zeit|fecha|heure|giorno|moment/i,
  time: /^(time|clock|hour|uhrzeit|zeit|hora|heure)\b/i,
  gravity: /gravity|\bsg\b|density|plato|°\s*p\b|extra[ck]t|brix|dichte|densit/i,
  temperature: /temp|°\s*[cf]\b|celsius|fahrenheit/i,
};

/** Finds the columns by the words of the heading and, where these say nothing, by what stands in them. */
export function recognise({ heading, rows }: TextTable): Recognised {
  const sample = rows.filter((_, index) => index % Math.max(1, Math.floor(rows.length / 200)) === 0);
  const texts = (column: number): string[] => sample.map((row) => row[column] ?? "").filter((cell) => cell !== "");
  const numbers = (column: number): number[] =>
    texts(column)
      .map(readDecimal)
      .filter((value) => value !== undefined);
  const columns = heading.map((_, index) => index);
  const share = (column: number, holds: (text: string) => boolean): number =>
    texts(column).length === 0 ? 0 : texts(column).filter(holds).length / texts(column).length;
  const dated = (column: number): boolean => share(column, looksLikeMoment) > 0.8;
  const best = (candidates: readonly number[], word: RegExp): number =>
    candidates.find((column) => word.test(heading[column] ?? "")) ?? candidates[0] ?? -1;

  const when = best(columns.filter(dated), headings.when);
  const time =
    columns.find((column) => column !== when && share(column, (text) => /^\d{1,2}:\d{2}(:\d{2})?(\s*[ap]m)?$/i.test(text)) > 0.8) ?? -1;
  const free = columns.filter(
    (column) => column !== when && column !== time && numbers(column).length > 0.5 * texts(column).length && numbers(column).length > 0,
  );
  const asGravity = (column: number): boolean => {
    const middle = median(numbers(column));
    return (middle > 0.97 && middle < 1.21) || (middle > 970 && middle < 1210);
  };
  const named = free.filter((column) => headings.gravity.test(heading[column] ?? "") && !headings.temperature.test(heading[column] ?? ""));
  const gravity =
    named.find(asGravity) ??
    named[0] ??
    free.find(asGravity) ??
    free.find((column) => !headings.temperature.test(heading[column] ?? "")) ??
    -1;
  const rest = free.filter((column) => column !== gravity);
  const temperature = rest.find((column) => headings.temperature.test(heading[column] ?? "")) ?? -1;
  const middleGravity = median(numbers(gravity));
  const told = orderToldBy(texts(when));
  return {
    choices: {
      when,
      time,
      gravity,
      temperature,
      scale: middleGravity > 1.3 && middleGravity < 970 ? "P" : "SG",
      degrees:
        /°?\s*f\b|fahrenheit/i.test(heading[temperature] ?? "") ||
        (!/°?\s*c\b|celsius/i.test(heading[temperature] ?? "") && median(numbers(temperature)) > 45)
          ? "F"
          : "C",
      order: told === "month first" ? "month first" : "day first",
      zone: "wall",
      corrected: true,
    },
    orderMatters: told !== "year first",
    orderUnsure: when >= 0 && told === undefined && texts(when).some((text) => /^\d{1,2}[-./]\d{1,2}[-./]\d{2,4}/.test(text)),
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
