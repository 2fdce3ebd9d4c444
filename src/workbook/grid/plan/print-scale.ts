/** Paper less margins, in points: ISO 216 A4 is 210 × 297 mm, US Letter 8.5 × 11 in. A quarter of an inch at the sides is what printers need. */
export const marginsPt = { side: 18, top: 34, bottom: 42 };
export type Paper = "a4" | "letter";
const paperPt: Readonly<Record<Paper, { width: number; height: number }>> = {
  a4: { width: 595, height: 842 },
  letter: { width: 612, height: 792 },
};

/** A column of so many characters is 7 pixels each plus 5, at 96 pixels an inch (ECMA-376, part 1, 18.3.1.13). */
export const columnWidthPt = (characters: number): number => (characters * 7 + 5) * 0.75;

/** Programs and fonts differ a little: a line that spills onto another page would be worse than a little room left. */
const safetyDown = 0.96;

/** The scale at which these columns fill the width of the paper, at most 1: every program finds it by itself ("fit to one page wide"). */
export function widthScale(columnCharacters: readonly number[], paper: Paper, landscape = false): number {
  const { width, height } = paperPt[paper];
  const wide = columnCharacters.reduce((sum, characters) => sum + columnWidthPt(characters), 0);
  return Math.min(1, ((landscape ? height : width) - 2 * marginsPt.side) / wide);
}

/** How tall the rows of a page may be together, in points before scaling, when the columns fill its width. */
export function pageHeight(columnCharacters: readonly number[], paper: Paper, landscape = false): number {
  const { width, height } = paperPt[paper];
  const room = ((landscape ? width : height) - marginsPt.top - marginsPt.bottom) * safetyDown;
  return room / widthScale(columnCharacters, paper, landscape);
}
