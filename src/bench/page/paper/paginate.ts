export interface PrintedRow {
  readonly height: number;
  /** The sheet asks for a new page here. */
  readonly breakBefore: boolean;
  /** Nothing stands in it: a good place to end a page. */
  readonly empty: boolean;
  /** A merged cell or a chart reaches from the row above into this one. */
  readonly tiedToAbove: boolean;
}

/** A page that ends early at an empty row is at least this full. */
const fullEnough = 0.6;

/**
 * Which rows come on which page: the sheet's own breaks first; what does not fit goes on where a section ends, if that
 * leaves the page well filled, else at the last row that fits. A chart or a merged cell is not cut while it fits a page.
 *
 * @returns for each page the index of its first row and of the row after its last one
 */
export function paginate(rows: readonly PrintedRow[], room: number): { from: number; to: number }[] {
  const pages: { from: number; to: number }[] = [];
  for (let from = 0; from < rows.length;) {
    const to = pageEnd(rows, from, room);
    pages.push({ from, to });
    from = to;
  }
  return pages;
}

function pageEnd(rows: readonly PrintedRow[], from: number, room: number): number {
  let height = 0;
  let atSection: number | undefined;
  let atRow: number | undefined;
  for (let index = from; index < rows.length; index += 1) {
    const row = rows[index]!;
    if (index > from && row.breakBefore) return index;
    if (index > from && !row.tiedToAbove) {
      atRow = index;
      if (rows[index - 1]!.empty && height >= fullEnough * room) atSection = index;
    }
    height += row.height;
    // A hundredth for what rounding adds.
    if (height > room + 0.01) return atSection ?? atRow ?? Math.max(index, from + 1);
  }
  return rows.length;
}
