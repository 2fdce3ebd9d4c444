import { CellAlertManagerService } from "@univerjs/sheets-ui";
import type { Engine } from "../engine/engine";

/** Hovering an error cell shows the function's own words instead of the grid's general ones. Call it once a workbook is open. */
export function showOwnErrorMessages(engine: Engine): void {
  const alerts = engine.injector.get(CellAlertManagerService);
  const show = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => {
    const { unitId, subUnitId, row, col } = alert.location;
    const message = engine.errorMessageAt(unitId, subUnitId, row, col);
    const shown = engine.spills.valueAt(unitId, subUnitId, row, col);
    show(message === undefined ? alert : { ...alert, title: String(shown), message });
  };
}
