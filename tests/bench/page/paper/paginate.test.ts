import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { columnWidths } from "../../../../src/bench/page/paper/column-widths";
import { paginate, type PrintedRow } from "../../../../src/bench/page/paper/paginate";

const row = (height: number, more: Partial<PrintedRow> = {}): PrintedRow => ({
  height,
  breakBefore: false,
  empty: false,
  tiedToAbove: false,
  ...more,
});

const anyRow = fc.record({
  height: fc.integer({ min: 1, max: 60 }),
  breakBefore: fc.boolean(),
  empty: fc.boolean(),
  tiedToAbove: fc.boolean(),
});

describe("rows on pages", () => {
  it("are all printed, once, in their order, and no page is fuller than it can be", () => {
    fc.assert(
      fc.property(fc.array(anyRow, { minLength: 1, maxLength: 80 }), (rows) => {
        const pages = paginate(rows, 100);
        expect(pages.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, index) => from + index))).toEqual(
          rows.map((_, index) => index),
        );
        for (const { from, to } of pages) {
          const height = rows.slice(from, to).reduce((sum, { height }) => sum + height, 0);
          expect(height <= 100 || to === from + 1, `rows ${from} to ${to} are ${height}`).toBe(true);
          expect(rows.slice(from + 1, to).some(({ breakBefore }) => breakBefore)).toBe(false);
        }
      }),
    );
  });
  it("go on after the last empty row, if the page is well filled by then", () => {
    const rows = [row(40), row(30), row(5, { empty: true }), row(20), row(20)];
    expect(paginate(rows, 100)).toEqual([
      { from: 0, to: 3 },
      { from: 3, to: 5 },
    ]);
    // Half a page would be wasted.
    expect(paginate([row(30), row(5, { empty: true }), row(40), row(40)], 100)[0]).toEqual({ from: 0, to: 3 });
  });
  it("keep a chart or a merged cell whole", () => {
    const rows = [row(60), row(30), row(30, { tiedToAbove: true }), row(10)];
    expect(paginate(rows, 100)).toEqual([
      { from: 0, to: 1 },
      { from: 1, to: 4 },
    ]);
  });
});

describe("columns on paper", () => {
  it("keep their widths where everything has room", () => expect(columnWidths([30, 50], [20, 20], 100)).toEqual([30, 50]));
  it("give to a number what others can spare, in proportion", () => {
    // 10 are lacking in the first; the others have 30 and 10 to spare.
    expect(columnWidths([20, 50, 30], [30, 20, 20], 100)).toEqual([30, 42.5, 27.5]);
  });
  it("never are wider than the page together", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 1, max: 90 })), { minLength: 1, maxLength: 20 }),
        (columns) => {
          const widths = columnWidths(
            columns.map(([scaled]) => scaled),
            columns.map(([, needed]) => needed),
            200,
          );
          const total = widths.reduce((sum, width) => sum + width, 0);
          expect(total).toBeLessThanOrEqual(200.001);
          if (columns.reduce((sum, [, needed]) => sum + needed, 0) > 200) return;
          widths.forEach((width, index) => expect(width).toBeGreaterThanOrEqual(columns[index]![1] - 1e-9));
        },
      ),
    );
  });
});
