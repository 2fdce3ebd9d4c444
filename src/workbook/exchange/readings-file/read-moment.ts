import { dayNumber, dayNumberOf, millisecondsSince1970 } from "../../grid/words/day-number";

export type DateOrder = "day first" | "month first";
/** What a time without a zone of its own means: the clock on the wall of the brewery, or universal time. */
export type Zone = "wall" | "utc";

/** Turns universal time (milliseconds since 1970) into what the wall shows, as a day number. */
export type WallClock = (utcMilliseconds: number) => number;

/** The wall clock of this computer, summer time and all. */
export const wallClockHere: WallClock = (utcMilliseconds) =>
  dayNumberOf(utcMilliseconds - new Date(utcMilliseconds).getTimezoneOffset() * 60_000);

const pattern =
  /^(\d{1,4})[-./](\d{1,2})[-./](\d{1,4})(?:[T ,]+(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*([ap]\.?m\.?)?)?\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?$/i;

/**
 * A date with its time as a day number on the wall clock; undefined where the text is none. Understands year-first and
 * the two other orders, 12 and 24 hours, times with a zone of their own, seconds or milliseconds since 1970, and Excel's day numbers.
 */
export function readMoment(text: string, order: DateOrder, zone: Zone, wallClock: WallClock): number | undefined {
  const plain = text.trim();
  if (/^\d+([.,]\d+)?$/.test(plain)) return fromNumber(Number(plain.replace(",", ".")), wallClock);
  const match = pattern.exec(plain);
  if (!match) return undefined;
  const [, one = "", two = "", three = "", hour = "0", minute = "0", second = "0", half, offset] = match;
  const [year, month, day] = one.length === 4 ? [one, two, three] : order === "day first" ? [three, two, one] : [three, one, two];
  const clock = hourOf(Number(hour), half);
  if (clock === undefined || Number(minute) > 59 || Number(second) > 59) return undefined;
  const wall = dayOf(fullYear(year), month, day);
  if (wall === undefined) return undefined;
  const written = wall + clock / 24 + Number(minute) / 1440 + Number(second) / 86_400;
  if (!offset && zone === "wall") return written;
  return wallClock(millisecondsSince1970(written) - minutesOf(offset) * 60_000);
}

function fromNumber(value: number, wallClock: WallClock): number | undefined {
  // Years 2000 to 2100, as seconds or milliseconds since 1970, or as Excel counts days.
  if (value > 946_684_800 && value < 4_102_444_800) return wallClock(value * 1000);
  if (value > 946_684_800_000 && value < 4_102_444_800_000) return wallClock(value);
  return value >= 36_526 && value < 73_051 ? value : undefined;
}

const fullYear = (year: string): string => (year.length === 2 ? `20${year}` : year);

function dayOf(year: string, month: string, day: string): number | undefined {
  try {
    return dayNumber(`${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`);
  } catch {
    return undefined;
  }
}

function hourOf(hour: number, half: string | undefined): number | undefined {
  if (!half) return hour <= 23 ? hour : undefined;
  if (hour < 1 || hour > 12) return undefined;
  return (hour % 12) + (half.toLowerCase().startsWith("p") ? 12 : 0);
}

function minutesOf(offset: string | undefined): number {
  const match = /^([+-])(\d{2}):?(\d{2})$/.exec(offset ?? "");
  return match ? (match[1] === "-" ? -1 : 1) * (Number(match[2]) * 60 + Number(match[3])) : 0;
}

/** The order that the dates themselves tell: a first number above 12 is a day; undefined where both orders fit. */
export function orderToldBy(texts: readonly string[]): DateOrder | "year first" | undefined {
  const parts = texts.map((text) => pattern.exec(text.trim())).filter((match) => match !== null);
  if (parts.length > 0 && parts.every(([, one = ""]) => one.length === 4)) return "year first";
  if (parts.some(([, one = "", two = ""]) => one.length < 3 && Number(one) > 12 && Number(two) <= 12)) return "day first";
  if (parts.some(([, one = "", two = ""]) => one.length < 3 && Number(two) > 12)) return "month first";
  return undefined;
}
