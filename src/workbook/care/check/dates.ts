import type { BatchCell } from "../../batch/fields/cells";
import type { BatchSheet } from "../../batch/read/batch-sheets";
import { isoDay } from "../../grid/words/day-number";
import { dayLimits } from "../../batch/describe/day-limits";
import { columnLetters } from "../../grid/plan/addresses";
import type { Finding } from "./finding";

const year = (day: number): string => isoDay(day).slice(0, 4);

/** @param rule of the sheet's own checks that it tells more of */
type Look = (address: string, words: string, rule?: string) => Finding;

/** Days that cannot be, or that cannot follow one another; packaged before it was brewed is a rule of the sheet. @param today day number; later readings are slips */
export function dates(sheet: BatchSheet, today: number): Finding[] {
  const day = (name: BatchCell): number | undefined => {
    const value = sheet.number(name);
    return value === "" || value <= 0 ? undefined : value;
  };
  const look: Look = (address, words, rule) => ({
    sheet: sheet.sheetName,
    address,
    weight: "look",
    words,
    ...(rule !== undefined && { rule }),
  });
  const cell = (name: BatchCell): string => sheet.range(name).split(":")[0] ?? "";
  const [brewed, packaged, tasted] = [day("brewed_on"), day("packaged_on"), day("tasted_on")];
  const findings: Finding[] = [];
  for (const [name, value] of [
    ["brewed_on", brewed],
    ["packaged_on", packaged],
    ["tasted_on", tasted],
  ] as const) {
    if (value !== undefined && (value < dayLimits[0] || value > dayLimits[1]))
      findings.push(
        look(
          cell(name),
          `${String(value)} is no day between ${year(dayLimits[0])} and ${year(dayLimits[1])}: type a date such as 2026-09-05.`,
        ),
      );
  }
  if (packaged !== undefined && tasted !== undefined && Math.floor(tasted) < Math.floor(packaged))
    findings.push(look(cell("tasted_on"), `Tasted on ${isoDay(tasted)}, before it was packaged on ${isoDay(packaged)}.`));
  return [...findings, ...readingTimes(sheet, today, look), ...brewDayTimes(sheet, look)];
}

function readingTimes(sheet: BatchSheet, today: number, look: Look): Finding[] {
  const { from, to } = sheet.area("reading_times");
  const findings: Finding[] = [];
  let before: number | undefined;
  for (let row = from.row; row <= to.row; row += 1) {
    const when = sheet.at(row, from.column);
    const address = `${columnLetters(from.column)}${row}`;
    if (typeof when !== "number" || when <= 0) continue;
    if (when >= today + 2) findings.push(look(address, `Read on ${isoDay(when)}? That day is still to come.`));
    else if (before !== undefined && when < before)
      findings.push(look(address, `Read on ${isoDay(when)}, but the line above is later: is a date mistyped?`, "course.out-of-order"));
    before = when;
  }
  return findings;
}

/** Times of the day may pass midnight once. */
function brewDayTimes(sheet: BatchSheet, look: Look): Finding[] {
  const { from } = sheet.area("happened");
  const times = sheet.block("happened").map(([time]) => time);
  let before: number | undefined;
  return times.flatMap((time, index): Finding[] => {
    if (typeof time !== "number") return [];
    const earlier = before !== undefined && time < before - 1e-6 && !(before % 1 > 0.7 && time % 1 < 0.3);
    before = time;
    return earlier
      ? [look(`${columnLetters(from.column)}${from.row + index}`, "This step happened before the one above it: is a time mistyped?")]
      : [];
  });
}
