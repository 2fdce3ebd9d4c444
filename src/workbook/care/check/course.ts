import type { BatchSheet } from "../../batch/read/batch-sheets";
import { lineCells } from "../../batch/derived/table-places";
import { batchFields } from "../../batch/fields";
import { courseLine, ofOneReading } from "../../batch/rules/course";
import { finishedLine } from "../../batch/rules/finished";
import type { CheckLine } from "../../batch/rules/rule";
import { laidOver, saidBy, saidOnlyBy, type Proposed, type Said } from "../../batch/rules/what-it-says";
import { OnlyTheSheetKnows } from "../../grid/evaluate/evaluate";
import type { LaidOver } from "../../grid/evaluate/laid-over";
import { address } from "../../grid/plan/addresses";
import type { CellValue } from "../../grid/read/named-cells";
import type { Finding } from "./finding";

/** A line of the log; `index` counts from the first one of the table. */
interface Line {
  readonly index: number;
  readonly when: CellValue;
  readonly gravity: CellValue;
}

/**
 * Where in the log the sheet's line about its course comes from, and what the same rules said on the days before: the rules are
 * asked of the log with some of its lines left out.
 *
 * @param said by the rules of the sheet as it stands
 */
export function courseOfReadings(sheet: BatchSheet, said: readonly Said[] | undefined): Finding[] {
  const lines = logOf(sheet);
  try {
    return [
      ...(said?.some(({ line }) => line === "course") === false ? [] : wrongReadings(sheet, lines)),
      ...rising(sheet, lines),
      ...packagedTooEarly(sheet, lines),
    ];
  } catch (problem) {
    if (problem instanceof OnlyTheSheetKnows) return [];
    throw problem;
  }
}

function logOf(sheet: BatchSheet): Line[] {
  const { from, to } = sheet.area("readings");
  const [times, gravities] = [sheet.area("reading_times").from.column, sheet.area("gravities").from.column];
  return Array.from({ length: to.row - from.row + 1 }, (_, index) => ({
    index,
    when: sheet.at(from.row + index, times),
    gravity: sheet.at(from.row + index, gravities),
  }));
}

/** The sheet as it is with only some of its readings. */
function withOnly(sheet: BatchSheet, lines: readonly Line[], isKept: (line: Line) => boolean): LaidOver {
  return laidOver(
    sheet,
    lines
      .filter((line) => !isKept(line))
      .flatMap(({ index }): Proposed[] =>
        lineCells(batchFields.readings, index, { when: "", reading: "", scale: "", sampleTemperature: "" }),
      ),
  );
}

/** The sheet's line about its log. */
function courseOf(sheet: BatchSheet): CheckLine {
  const { from, to } = sheet.area("readings");
  return courseLine({ first: from.row, last: to.row });
}

/** Readings that break a rule each by itself. */
function wrongReadings(sheet: BatchSheet, lines: readonly Line[]): Finding[] {
  const { from } = sheet.area("readings");
  const times = sheet.area("reading_times").from.column;
  const line = courseOf(sheet);
  return lines
    .filter(({ index, when }) => when !== "" || sheet.at(from.row + index, from.column) !== "")
    .flatMap((one) =>
      saidOnlyBy(
        withOnly(sheet, lines, ({ index }) => index === one.index),
        line,
        ofOneReading,
      ).map(({ rule, state, words }): Finding => ({
        sheet: sheet.sheetName,
        address: address(from.row + one.index, /time-text|undated|brew-day/.test(rule) ? times : from.column),
        weight: state,
        words,
        rule,
      })),
    );
}

const dated = (lines: readonly Line[]): { index: number; when: number; gravity: number }[] =>
  lines
    .flatMap(({ index, when, gravity }) => (typeof when === "number" && typeof gravity === "number" ? [{ index, when, gravity }] : []))
    .sort((one, other) => one.when - other.when);

/** The reading at which the sheet would first have said that gravity rose, however it went on. */
function rising(sheet: BatchSheet, lines: readonly Line[]): Finding[] {
  const { from } = sheet.area("readings");
  const line = courseOf(sheet);
  const byRising = new Set(["course.rising"]);
  const inTime = dated(lines);
  let lowest = Infinity;
  let rose = false;
  return inTime.flatMap(({ index, gravity }, place): Finding[] => {
    const before = lowest;
    lowest = Math.min(lowest, gravity);
    // What stands no higher than all before it need not be asked.
    const known = new Set(inTime.slice(0, place + 1).map((one) => one.index));
    const said =
      gravity > before
        ? saidOnlyBy(
            withOnly(sheet, lines, (one) => known.has(one.index)),
            line,
            byRising,
          )
        : [];
    const [found] = said;
    const wasRising = rose;
    rose = found !== undefined;
    if (!found || wasRising) return [];
    const words = `${found.words} Here it went from ${before.toFixed(3)} to ${gravity.toFixed(3)}; sugar or fruit that you added may do so.`;
    return [{ sheet: sheet.sheetName, address: address(from.row + index, from.column), weight: found.state, words, rule: found.rule }];
  });
}

/** Judged by what was known on the day of packaging, whatever was measured later. */
function packagedTooEarly(sheet: BatchSheet, lines: readonly Line[]): Finding[] {
  const packagedOn = sheet.number("packaged_on");
  if (packagedOn === "" || packagedOn <= 0) return [];
  const world = withOnly(sheet, lines, ({ when }) => typeof when !== "number" || when < Math.floor(packagedOn) + 1);
  return saidBy(world, finishedLine)
    .filter(({ state }) => state === "stop")
    .map(({ rule, state, words }): Finding => {
      const verdict = world.value("verdict");
      const upToThen =
        typeof verdict === "string" && verdict !== "" && rule !== "finished.before-brewed"
          ? ` The readings up to then say “${verdict}”.`
          : "";
      return {
        sheet: sheet.sheetName,
        address: sheet.range("packaged_on").split(":")[0] ?? "",
        weight: state,
        words: words + upToThen,
        rule,
      };
    });
}
