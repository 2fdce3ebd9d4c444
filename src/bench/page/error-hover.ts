import { errorWords } from "../../excel-stand-in/engine/error-words";
import { ICommandService, type Injector } from "@univerjs/core";
import { SetSelectionsOperation } from "@univerjs/sheets";
import {
  CellAlertManagerService,
  CellAlertType,
  CellPopupManagerService,
  SheetCanvasPopManagerService,
  type ICellAlert,
} from "@univerjs/sheets-ui";
import type { Engine } from "../../excel-stand-in/engine/engine";
import { separatorWords, withOurSeparators } from "../../workbook/grid/formulas/exchanged-separators";

const ofSelection = "bench-error-of-selection";

/** What is behind an error is said in place of the grid's general words. Call it once a workbook is open. */
export function showOwnErrorMessages(engine: Engine): void {
  const alerts = engine.injector.get(CellAlertManagerService);
  const show = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => show({ ...alert, ...ownWords(engine, alert.location) });
  keepInWindow(engine.injector);
  showForSelection(engine, alerts, show);
}

/** Title and text of the box; undefined where the cell shows no error. */
function ownWords(
  engine: Engine,
  { unitId, subUnitId, row, col }: ICellAlert["location"],
): Pick<ICellAlert, "title" | "message"> | undefined {
  const place = { unitId, sheetId: subUnitId, row, column: col };
  const message = errorWords(engine, place);
  if (message === undefined) return undefined;
  const typed = withOurSeparators(engine.formulaAt(place));
  const { what, remedy } = typed === undefined ? { what: message, remedy: "" } : separatorWords(typed);
  return { title: String(engine.spills.valueAt(unitId, subUnitId, row, col)), message: `${what} ${remedy}`.trim() };
}

/** The grid puts these boxes beside their cell wherever that is. Below it, or above, they can be moved in from every edge. */
function keepInWindow(injector: Injector): void {
  const cells = injector.get(CellPopupManagerService);
  const showPopup = cells.showPopup.bind(cells);
  cells.showPopup = (location, popup) => showPopup(location, { ...popup, direction: "vertical" });
  const canvas = injector.get(SheetCanvasPopManagerService);
  const attach = canvas.attachPopupToCell.bind(canvas);
  canvas.attachPopupToCell = (row, column, popup, ...rest) =>
    attach(row, column, popup.noPushMinimumGap === true ? { ...popup, noPushMinimumGap: false, autoRelayout: true } : popup, ...rest);
}

/** The grid says it where a mouse hovers. A finger and the keyboard cannot: for them the cell that is gone to says it. */
function showForSelection(engine: Engine, alerts: CellAlertManagerService, show: (alert: ICellAlert) => void): void {
  let byMouse = true;
  const goes = (mouse: boolean): void => {
    byMouse = mouse;
    if (alerts.currentAlert.size > 0) alerts.clearAlert();
  };
  window.addEventListener("pointerdown", ({ pointerType }) => goes(pointerType === "mouse"), { capture: true });
  window.addEventListener("keydown", () => goes(false), { capture: true });
  const tell = (): void => {
    const range = byMouse ? undefined : engine.univerAPI.getActiveWorkbook()?.getActiveSheet().getActiveRange();
    if (!range) return;
    const location = { unitId: range.getUnitId(), subUnitId: range.getSheetId(), row: range.getRow(), col: range.getColumn() };
    const words = ownWords(engine, location);
    if (words) show({ type: CellAlertType.ERROR, ...words, location, width: 340, height: 74, key: ofSelection });
  };
  // The grid's own event for it comes for clicks only. The grid may have heard of the key before we do, hence the next turn.
  engine.injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (id === SetSelectionsOperation.id) setTimeout(tell, 0);
  });
}
