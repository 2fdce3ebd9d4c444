import { Worksheet } from "@univerjs/core";
import { Spreadsheet } from "@univerjs/engine-render";

type Cell = ReturnType<Worksheet["getCell"]>;

/** More columns than any sheet has. */
const columns = 16_384;

/**
 * For one picture of a sheet the grid asks for each cell it shows some eight times (lines, fills, text, marks), and each time works out
 * number format, conditional formats and validation anew: a fifth of all that a page does. Nothing changes while a picture is
 * drawn, so each cell is worked out once for it.
 */
export function readCellsOnce(): void {
  let read: Map<Worksheet, Map<number, Cell>> | undefined;
  const { getCell } = Worksheet.prototype;
  Worksheet.prototype.getCell = function (row, column) {
    if (!read || row < 0 || column < 0) return getCell.call(this, row, column);
    let cells = read.get(this);
    if (!cells) read.set(this, (cells = new Map()));
    const place = row * columns + column;
    let cell = cells.get(place);
    if (cell === undefined) cells.set(place, (cell = getCell.call(this, row, column) ?? null));
    return cell;
  };

  const { render } = Spreadsheet.prototype;
  Spreadsheet.prototype.render = function (...given) {
    read = new Map();
    try {
      return render.apply(this, given);
    } finally {
      read = undefined;
    }
  };
}
