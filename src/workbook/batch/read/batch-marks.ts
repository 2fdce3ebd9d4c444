import { batchMark } from "./batch-sheets";
import { rangeOf } from "../../grid/read/read-sheets";

/** A batch sheet and the mark of its batch; copies of a sheet share it, and sheets of the first plan have none. */
export interface BatchMark {
  readonly sheetName: string;
  readonly id: string;
}

export interface SheetMarks {
  readonly sheet: Excel.Worksheet;
  readonly name: string;
  /** Ranges of the names that were asked for, where the sheet has them. */
  readonly ranges: ReadonlyMap<string, string>;
}

/** Which of these sheet-scoped names each sheet of the workbook has, in the order of the tabs: two `context.sync()`. */
export async function sheetMarks(context: Excel.RequestContext, wanted: readonly string[]): Promise<readonly SheetMarks[]> {
  const sheets = context.workbook.worksheets;
  sheets.load("items/name");
  await context.sync();
  const asked = sheets.items.map((sheet) => ({
    sheet,
    items: wanted.map((name) => [name, sheet.names.getItemOrNullObject(name).load("formula")] as const),
  }));
  await context.sync();
  return asked.map(({ sheet, items }) => ({
    sheet,
    name: sheet.name,
    ranges: new Map(
      items.flatMap(([name, item]) => {
        const range = item.isNullObject ? undefined : rangeOf(String(item.formula));
        return range === undefined ? [] : [[name, range] as const];
      }),
    ),
  }));
}

/** Asks for the marks of the batch sheets among them, or of the unplugged ones; after the next `context.sync()` the answer can be called. */
export function loadBatchMarks(marks: readonly SheetMarks[], wanted = batchMark): () => BatchMark[] {
  const loaded = marks
    .filter(({ ranges }) => ranges.has(wanted))
    .map(({ sheet, name, ranges }) => {
      const range = ranges.get("batch_id");
      return { sheetName: name, cell: range === undefined ? undefined : sheet.getRange(range).load("values") };
    });
  return () => loaded.map(({ sheetName, cell }) => ({ sheetName, id: String(cell?.values[0]?.[0] ?? "") }));
}

/** Tells of each sheet whether it has this one of the names that were asked for. */
export function hasCell(marks: readonly SheetMarks[], name: string): (sheetName: string) => boolean {
  const having = new Set(marks.filter(({ ranges }) => ranges.has(name)).map((one) => one.name));
  return (sheetName) => having.has(sheetName);
}
