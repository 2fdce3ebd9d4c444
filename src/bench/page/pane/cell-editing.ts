import type { FUniver } from "@univerjs/core/facade";
import type { CellEditing } from "../../../excel-stand-in/excel/host";

const betweenLooksMs = 50;

/** Tells the Excel stand-in whether somebody is typing in a cell: Excel refuses calls then. */
export function cellEditingOf(univerAPI: FUniver): CellEditing {
  const active = () => univerAPI.getActiveWorkbook()?.isCellEditing() === true;
  return {
    active,
    // By looking: the grid's own event for it was missed now and then, and the pane then waited for ever.
    ended: () =>
      new Promise((resolve) => {
        const look = (): void => {
          if (active()) setTimeout(look, betweenLooksMs);
          else resolve();
        };
        look();
      }),
  };
}
