import { askMark, takeMark } from "./writing-mark";

/** Longer than anything takes: what was begun later may be somebody's at work on the same workbook just now. */
const stillWritingMs = 60_000;

/** Sheets that a write left behind when it broke off with Excel or the pane, in the order of the tabs: two `context.sync()`. */
export async function leftBehind(context: Excel.RequestContext, now = Date.now()): Promise<string[]> {
  return (await marked(context))
    .filter(({ mark }) => !(now - Date.parse(mark.split(" ")[0] ?? "") < stillWritingMs))
    .map(({ sheet }) => sheet.name);
}

/**
 * Deletes those of the sheets that still carry the mark, or lets the brewer keep them: then only the mark goes, and
 * nobody asks again.
 */
export async function tidyUp(context: Excel.RequestContext, sheetNames: readonly string[], wish: "delete" | "keep"): Promise<void> {
  for (const { sheet } of (await marked(context)).filter(({ sheet: { name } }) => sheetNames.includes(name))) {
    if (wish === "delete") sheet.delete();
    else takeMark(sheet);
  }
  await context.sync();
}

async function marked(context: Excel.RequestContext): Promise<{ readonly sheet: Excel.Worksheet; readonly mark: string }[]> {
  const sheets = context.workbook.worksheets;
  sheets.load("items/name");
  await context.sync();
  const asked = sheets.items.map((sheet) => ({ sheet, markOf: askMark(sheet) }));
  await context.sync();
  return asked.flatMap(({ sheet, markOf }) => {
    const mark = markOf();
    return mark === undefined ? [] : [{ sheet, mark }];
  });
}
