import { batchMark } from "../../../workbook/batch/read/batch-sheets";
import { sheetMarks } from "../../../workbook/batch/read/batch-marks";
import { onTheWall } from "../../../workbook/grid/words/day-number";
import { seasonMark } from "../../../workbook/sheets/season/season-plan";

/**
 * What a workbook is about: the name of its season with its years, of its batch, or of the first of several; undefined where there is
 * none. Three round trips.
 */
export async function contentName(context: Excel.RequestContext): Promise<string | undefined> {
  const marks = await sheetMarks(context, [batchMark, "batch_name", "brewed_on", seasonMark]);
  const batches = marks
    .filter(({ ranges }) => ranges.has(batchMark))
    .map(({ sheet, name, ranges }) => {
      const cell = (wanted: string) => {
        const range = ranges.get(wanted);
        return range === undefined ? undefined : sheet.getRange(range).load("values");
      };
      return { sheetName: name, batchName: cell("batch_name"), brewedOn: cell("brewed_on") };
    });
  await context.sync();
  const season = marks.find(({ ranges }) => ranges.has(seasonMark));
  if (season)
    return `${season.name}${yearsOf(
      season.name,
      batches.map(({ brewedOn }) => brewedOn?.values[0]?.[0]),
    )}`;
  const [first] = batches;
  if (!first) return undefined;
  const name = String(first.batchName?.values[0]?.[0] ?? "").trim() || first.sheetName;
  return batches.length === 1 ? name : `${name} and ${batches.length - 1} more`;
}

/** " 2026" or " 2026-2027"; nothing where the sheet is called by a year already. */
function yearsOf(sheetName: string, days: readonly unknown[]): string {
  const years = days.filter((day) => typeof day === "number" && day > 0).map((day) => onTheWall(day as number).getUTCFullYear());
  if (years.length === 0 || /\d{4}/u.test(sheetName)) return "";
  const [from, to] = [Math.min(...years), Math.max(...years)];
  return from === to ? ` ${from}` : ` ${from}-${to}`;
}
