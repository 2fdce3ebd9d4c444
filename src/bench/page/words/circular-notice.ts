import type { Session } from "../session";
import { columnLetters } from "../../../excel-stand-in/excel/address";
import { showNotice } from "./notices";

/** The grid calculates a formula that depends on itself once, without a word. We say so, and take it back when it is mended. */
export function warnOfCircles(session: Session): void {
  let shown = "";
  let close: (() => void) | undefined;
  let looking = false;

  async function look(): Promise<void> {
    if (looking) return;
    looking = true;
    await session.engine.calculated();
    looking = false;
    const cells = addressesOf(session);
    if (cells === shown) return;
    shown = cells;
    close?.();
    close =
      cells === ""
        ? undefined
        : showNotice({ kind: "warning", text: `These formulas depend on themselves, so their results mean nothing: ${cells}.` });
  }

  session.onChanged(() => void look());
}

function addressesOf(session: Session): string {
  const { univerAPI, circular } = session.engine;
  const here = circular.cells().filter(({ unitId }) => unitId === session.unitId);
  const some = here
    .slice(0, 5)
    .map(
      ({ sheetId, row, column }) =>
        `${univerAPI.getActiveWorkbook()?.getSheetBySheetId(sheetId)?.getSheetName() ?? "?"}!${columnLetters(column)}${row + 1}`,
    );
  return here.length > 5 ? `${some.join(", ")} and ${here.length - 5} more` : some.join(", ");
}
