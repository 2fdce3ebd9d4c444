import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { Range } from "./range";
import type { StandsFor } from "./standing";

/** Stands in for Excel.WorksheetFreezePanes. */
export class FreezePanes extends ClientObject<string, Context> implements StandsFor<Excel.WorksheetFreezePanes, keyof FreezePanes> {
  freezeRows(count = 1): void {
    this.write((sheetId) => {
      this.context.host.sheet(sheetId).setFreeze({ xSplit: 0, ySplit: count, startRow: count || -1, startColumn: -1 });
    });
  }

  getLocationOrNullObject(): Range {
    const find = () => {
      if (this.isNullObject) return undefined;
      const sheet = this.context.host.sheet(this.target);
      const { startRow, startColumn } = sheet.getFreeze();
      if (startRow <= 0 && startColumn <= 0) return undefined;
      const [rowCount, columnCount] = [startRow > 0 ? startRow : sheet.getMaxRows(), startColumn > 0 ? startColumn : sheet.getMaxColumns()];
      return { sheetId: this.target, row: 0, column: 0, rowCount, columnCount };
    };
    return new Range(this.context, { name: "range", missing: "null", find });
  }
}
