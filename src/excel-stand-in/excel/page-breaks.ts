import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { Range } from "./range";
import type { StandsFor } from "./standing";

/** Stands in for Excel.PageBreakCollection (horizontal breaks); kept with the sheet's extras. */
export class PageBreakCollection
  extends ClientObject<string, Context>
  implements StandsFor<Excel.PageBreakCollection, keyof PageBreakCollection>
{
  /** The page breaks above the range's first row. */
  add(at: Range | Excel.Range | string): void {
    this.write((sheetId) =>
      this.context.host.extras.update(this.context.host.unitId, sheetId, (extras) => {
        const row =
          at instanceof Range
            ? at.target.row
            : this.context.host
                .sheet(sheetId)
                .getRange(at as string)
                .getRow();
        extras.horizontalPageBreaks = [...new Set([...(extras.horizontalPageBreaks ?? []), row])].sort((a, b) => a - b);
      }),
    );
  }
}
