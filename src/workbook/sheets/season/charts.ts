import type { SheetBuilder } from "../../grid/plan/sheet-builder";
import { printedTo } from "./season-columns";

const rows = 13;
/* From Okabe and Ito's palette for any kind of colour blindness, with a dark grey; the looks differ as well, for a print without colour. */
const colors = { reached: "#1D1B16", planned: "#0072B2", other: "#C24E00" };

/**
 * 3. Planned and reached, over time. The charts are drawn from the kept figures, since those are numbers or nothing: Excel draws a
 * text at height 0, and passes an empty cell over.
 */
export function charts(b: SheetBuilder, kept: (letter: string) => string): void {
  b.height(18);
  b.put("A", "3  Planned and reached", { style: "section", mergeTo: "D" });
  b.put("E", "One point a batch, by its day; the pane keeps the figures that are drawn up to date", {
    style: "sectionHint",
    mergeTo: printedTo,
  });
  const [first, last] = [b.row + 1, b.row + rows];
  const across = kept("D");
  b.chart({
    name: "Gravity planned and reached",
    title: "Original gravity",
    horizontal: { format: "date" },
    vertical: { format: "gravity", span: [1] },
    series: [
      { name: "Planned", across, values: kept("F"), color: colors.planned, look: "dots with marks" },
      { name: "Reached", across, values: kept("G"), color: colors.reached, look: "marks" },
    ],
    from: `A${first}`,
    to: `E${last}`,
  });
  b.chart({
    name: "Efficiency and bitterness",
    title: "Mash efficiency and bitterness",
    horizontal: { format: "date" },
    vertical: { format: "whole", title: "Efficiency, %", span: [0, 100] },
    secondary: { format: "whole", title: "IBU", span: [0] },
    series: [
      { name: "Efficiency, %", across, values: kept("AE"), color: colors.reached, look: "marks" },
      { name: "Bitterness, IBU", across, values: kept("M"), color: colors.other, look: "dots with marks", onSecondary: true },
    ],
    from: `F${first}`,
    to: `O${last}`,
  });
  b.chart({
    name: "Scores",
    title: "Scores",
    horizontal: { format: "date" },
    vertical: { format: "one", span: [0, 5] },
    series: [{ name: "Score", across, values: kept("U"), color: colors.reached, look: "marks" }],
    from: `P${first}`,
    to: `${printedTo}${last}`,
  });
  b.row = last + 1;
  b.gap();
}
