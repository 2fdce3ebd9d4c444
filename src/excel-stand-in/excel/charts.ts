import { generateRandomId } from "@univerjs/core";
import type { SheetBlock } from "./cell-writer";
import { Chart } from "./chart";
import { sourceSeries } from "./chart-source";
import { ClientCollection } from "./collection";
import type { Context } from "./context";
import type { Range } from "./range";
import type { ChartRecord } from "./sheet-extras";
import type { StandsFor } from "./standing";

/** Stands in for Excel.ChartCollection of a sheet. Charts are records in the sheet's extras; the page draws them. */
export class ChartCollection
  extends ClientCollection<Chart, string, Context>
  implements StandsFor<Excel.ChartCollection, keyof ChartCollection>
{
  add(type: Excel.ChartType | string, sourceData: Range | Excel.Range, seriesBy: Excel.ChartSeriesBy | string = "Auto"): Chart {
    const id = generateRandomId();
    this.write((sheetId) => {
      const { host } = this.context;
      const source: SheetBlock = (sourceData as Range).target;
      host.extras.update(host.unitId, sheetId, (extras) => {
        const record: ChartRecord = {
          id,
          name: `Chart ${(extras.charts?.length ?? 0) + 1}`,
          type,
          series: sourceSeries(host, source, type, seriesBy),
          position: { left: 48, top: 48, width: 360, height: 216 },
          axes: { category: {}, value: {} },
        };
        extras.charts = [...(extras.charts ?? []), record];
      });
    });
    return this.standIn(() => id, "throws");
  }

  getItem(name: string): Chart {
    return this.standIn(() => this.find(name), "throws");
  }
  getItemOrNullObject(name: string): Chart {
    return this.standIn(() => (this.isNullObject ? undefined : this.find(name)), "null");
  }
  getItemAt(index: number): Chart {
    return this.standIn(() => this.records()[index]?.id, "throws");
  }

  protected list(): Chart[] {
    return this.records().map(({ id }) => this.standIn(() => id, "throws"));
  }

  private records(): ChartRecord[] {
    return this.context.host.extras.ofSheet(this.context.host.unitId, this.target).charts ?? [];
  }

  private find(name: string): string | undefined {
    return this.records().find((chart) => chart.name === name || chart.id === name)?.id;
  }

  private standIn(find: () => string | undefined, missing: "throws" | "null"): Chart {
    const target = () => {
      const id = find();
      return id === undefined ? undefined : { sheetId: this.target, id };
    };
    return new Chart(this.context, { name: "chart", missing, find: target });
  }
}
