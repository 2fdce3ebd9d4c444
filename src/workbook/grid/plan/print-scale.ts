/** Paper less margins, in points: ISO 216 A4 is 210 × 297 mm, US Letter 8.5 × 11 in. */
export const marginsPt = { side: 28, top: 34, bottom: 42 };
export type Paper = "a4" | "letter";
const paperPt: Readonly<Record<Paper, { width: number; height: number }>> = {
  a4: { width: 595, height: 842 },
  letter: { width: 612, height: 792 },
};

/** A column of so many characters is 7 pixels each plus 5, at 96 pixels an inch (ECMA-376, part 1, 18.3.1.13). */
export const columnWidthPt = (characters: number): number => (characters * 7 + 5) * 0.75;

/**
 * Programs and fonts differ a little (LibreOffice draws columns 6 % wider); a column or a line that spills onto another
 * page would be worse than a slightly smaller print.
 */
const safety = { across: 0.91, down: 0.96 };

interface Room {
  readonly across: number;
  readonly down: number;
}

/** Width and height that a page has for its cells, in points as printed. */
function roomOn(paper: Paper, landscape: boolean): Room {
  const { width: short, height: long } = paperPt[paper];
  const [paperWidth, paperHeight] = landscape ? [long, short] : [short, long];
  return {
    across: (paperWidth - 2 * marginsPt.side) * safety.across,
    down: (paperHeight - marginsPt.top - marginsPt.bottom) * safety.down,
  };
}

const widthOf = (columnCharacters: readonly number[]): number =>
  columnCharacters.reduce((sum, characters) => sum + columnWidthPt(characters), 0);

/** Largest whole percentage, at most 100, at which all columns fit the width and each page's rows its height. */
export function fittingScale(
  columnCharacters: readonly number[],
  pageHeightsPt: readonly number[],
  paper: Paper,
  landscape = false,
): number {
  const { across, down } = roomOn(paper, landscape);
  return Math.min(100, Math.floor(100 * Math.min(across / widthOf(columnCharacters), down / Math.max(...pageHeightsPt)) + 1e-9));
}

/** How tall the rows of an upright page may be together, in points before scaling, without making the print smaller than these columns ask for. */
export function heightWithoutShrinking(columnCharacters: readonly number[], paper: Paper): number {
  const { across, down } = roomOn(paper, false);
  return (down * widthOf(columnCharacters)) / across;
}
