import type { Session } from "../session";
import { columnLetters } from "../../../excel-stand-in/xlsx/addresses";
import { showNotice } from "./notices";

type Cells = ReturnType<Session["engine"]["circular"]["cells"]>;

/** The grid calculates a formula that depends on itself once, without a word. We say so, and take it back when it is put right. */
export function warnOfCircles(session: Session): void {
  const text = (cells: string) => `These formulas depend on themselves, so their results mean nothing: ${cells}.`;
  warnOfCells(session, () => session.engine.circular.cells(), text);
}

/** A formula that would have frozen the page shows an error; the notice says which. */
export function warnOfRunaways(session: Session): void {
  const text = (cells: string) => `These formulas took too long and were stopped, so they show #CALC!: ${cells}.`;
  warnOfCells(session, () => session.engine.runaways.cells(), text);
}

function warnOfCells(session: Session, cellsNow: () => Cells, text: (cells: string) => string): void {
  let shown = "";
  let close: (() => void) | undefined;
  let looking = false;

  async function look(): Promise<void> {
    if (looking) return;
    looking = true;
    await session.engine.calculated();
    looking = false;
    const cells = addressesOf(session, cellsNow());
    if (cells === shown) return;
    shown = cells;
    close?.();
    close = cells === "" ? undefined : showNotice({ kind: "warning", text: text(cells) });
  }

  session.onChanged(() => void look());
}

function addressesOf(session: Session, cells: Cells): string {
  const { univerAPI } = session.engine;
  const here = cells.filter(({ unitId }) => unitId === session.unitId);
  const some = here
    .slice(0, 5)
    .map(
      ({ sheetId, row, column }) =>
        `${univerAPI.getActiveWorkbook()?.getSheetBySheetId(sheetId)?.getSheetName() ?? "?"}!${columnLetters(column)}${row + 1}`,
    );
  return here.length > 5 ? `${some.join(", ")} and ${here.length - 5} more` : some.join(", ");
}
