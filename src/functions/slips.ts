import type { Limits } from "./describe";
import { quantity, type QuantityName, type UnitSystem } from "./quantities";

/** A date as people write one: digits in three groups, or a month by its name. */
const readsAsDate = (text: string): boolean =>
  /^\d{1,4}[-./]\d{1,2}[-./]\d{1,4}/.test(text) || /\d.*(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)|^\d{1,2}:\d\d/i.test(text);

/** How a text that was meant as a number is put right; nothing where it cannot be told what was meant. */
export function textHint(typed: unknown, name: QuantityName, units: UnitSystem): string | undefined {
  if (typeof typed !== "string") return undefined;
  // Digits of full width and spaces that do not break look like ordinary ones.
  const text = typed.normalize("NFKC").trim();
  const unit = quantity(name).unit[units];
  if (/^[-+]?(\d+\.?\d*|\.\d+)$/.test(text)) return "it is kept as a text: type it again";
  if (/^[-+]?\d+,\d+$/.test(text)) return "it is kept as a text: type it again with the decimal sign of your spreadsheet";
  if (readsAsDate(text))
    return name === "date" || name === "days" ? "this date or time is kept as a text: type it again" : "it looks like a date or a time";
  const [, number, word] = /^([-+]?[\d.,]+)\s*(\D+)$/.exec(text) ?? [];
  if (number === undefined || word === undefined) return undefined;
  // Five gallons are not five litres: only the unit that is asked for may simply be left away.
  return unit === "" || word.toLowerCase() === unit.toLowerCase()
    ? `type ${number} alone`
    : name === "gravity"
      ? "type the number alone"
      : `give it in ${unit}, as a number alone`;
}

/** "77 looks like °F": a temperature that would be allowed on the other scale. */
export function scaleHint(
  typed: number,
  name: QuantityName,
  { atLeast = -Infinity, atMost = Infinity }: Limits,
  units: UnitSystem,
): string | undefined {
  if (name !== "temperature") return undefined;
  const other = units === "us" ? "metric" : "us";
  const { unit, toCore, fromCore } = quantity(name);
  const meant = toCore(typed, other);
  if (meant < atLeast || meant > atMost) return undefined;
  const converted = `${typed} looks like ${unit[other]}, which is ${Number(fromCore(meant, units).toFixed(1))} ${unit[units]}`;
  return units === "us" ? converted : `${converted}; for US units give "us" as units`;
}
