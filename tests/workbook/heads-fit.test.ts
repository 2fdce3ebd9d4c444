import { expect, it } from "vitest";
import { columnNumber, position } from "../../src/workbook/grid/plan/addresses";
import type { SheetPlan } from "../../src/workbook/grid/plan/sheet-plan";
import { planSeason } from "../../src/workbook/sheets/season/season-plan";
import { planStores } from "../../src/workbook/sheets/stores/stores-plan";

/* A letter of bold Calibri is on average about 0.95 as wide as the digit that column widths are counted in (our estimate). */
const wideAs = (words: string): number => words.length * 0.95 + 0.5;

/** Heads that are wider than the columns they stand over, with both widths. */
function tooNarrow({ cells, columnWidths, print }: SheetPlan): string[] {
  const last = position(print.area.split(":")[1]!).column;
  return cells.flatMap(({ address, content, style, mergeTo }) => {
    const from = position(address).column;
    if (!style.startsWith("heading") || from > last || typeof content !== "string" || content.startsWith("=")) return [];
    const to = mergeTo ? columnNumber(mergeTo) : from;
    const room = columnWidths.slice(from - 1, to).reduce((sum, width) => sum + width, 0);
    const needed = wideAs(content) + (style === "heading" ? 1 : 0);
    return needed > room ? [`${content} (${address}): ${needed.toFixed(1)} wide, room ${room}`] : [];
  });
}

it.each([
  ["season", planSeason({ sheetName: "Season", units: "metric", today: 46270, rows: [] })],
  ["stores", planStores({ sheetName: "Stores", units: "metric", today: 46270 })],
  ["stores in US units", planStores({ sheetName: "Stores", units: "us", today: 46270 })],
])("%s: every head fits over its columns", (_, plan) => expect(tooNarrow(plan)).toEqual([]));
