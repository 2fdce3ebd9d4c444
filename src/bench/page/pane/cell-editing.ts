import type { FUniver } from "@univerjs/core/facade";
import type { CellEditing } from "../../excel/host";

/** Tells the Excel stand-in whether somebody is typing in a cell: Excel refuses calls then. */
export function cellEditingOf(univerAPI: FUniver): CellEditing {
  const active = () => univerAPI.getActiveWorkbook()?.isCellEditing() === true;
  return {
    active,
    ended: () => new Promise((resolve) => {
      if (!active()) return resolve();
      const listening = univerAPI.addEvent(univerAPI.Event.SheetEditEnded, () => {
        listening.dispose();
        resolve();
      });
    }),
  };
}
