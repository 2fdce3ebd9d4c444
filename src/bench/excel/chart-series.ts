import type { Chart } from "./chart";
import { ClientCollection } from "./collection";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { itemNotFound } from "./errors";
import type { Range } from "./range";
import type { CellBlock, ChartSeriesRecord } from "./sheet-extras";
import type { StandsFor } from "./standing";

/** Stands in for Excel.ChartSeriesCollection. */
export class ChartSeriesCollection extends ClientCollection<ChartSeries, string, Context>
  implements StandsFor<Excel.ChartSeriesCollection, "add" | "getItemAt" | "items" | "getCount"> {
  constructor(private readonly chart: Chart) {
    super(chart.context, { name: "series", missing: "null", find: () => (chart.isNullObject ? undefined : chart.target.id) });
  }

  add(name?: string, index?: number): ChartSeries {
    let record: ChartSeriesRecord | undefined;
    this.write(() => this.chart.update((chart) => {
      record = name === undefined ? {} : { name };
      chart.series.splice(index ?? chart.series.length, 0, record);
    }));
    return new ChartSeries(this.chart, () => record);
  }

  getItemAt(index: number): ChartSeries {
    return new ChartSeries(this.chart, () => this.chart.record().series[index]);
  }

  protected list(): ChartSeries[] {
    return this.chart.record().series.map((record) => new ChartSeries(this.chart, () => record));
  }
}

/** Stands in for Excel.ChartSeries. */
export class ChartSeries extends ClientObject<ChartSeriesRecord, Context>
  implements StandsFor<Excel.ChartSeries, "name" | "axisGroup" | "setValues" | "setXAxisValues" | "delete"> {
  readonly format = { line: new SeriesColor(this), fill: { setSolidColor: (color: string): void => this.paint(color) } };

  constructor(private readonly chart: Chart, find: () => ChartSeriesRecord | undefined) {
    super(chart.context, { name: "series", missing: "throws", find });
  }

  get name(): string { return this.get("name"); }
  set name(name: string) {
    this.set("name", name, (series) => this.chart.update(() => {
      series.name = name;
      delete series.nameFrom;
    }));
  }
  get axisGroup(): Excel.ChartSeries["axisGroup"] { return this.get("axisGroup"); }
  set axisGroup(group: Excel.ChartSeries["axisGroup"]) {
    this.set("axisGroup", group, (series) => this.chart.update(() => { series.secondary = group === "Secondary"; }));
  }

  setValues(source: Range | Excel.Range): void { this.write((series) => this.chart.update(() => { series.values = blockOf(source as Range); })); }
  setXAxisValues(source: Range | Excel.Range): void { this.write((series) => this.chart.update(() => { series.xValues = blockOf(source as Range); })); }

  delete(): void {
    this.write((series) => this.chart.update((chart) => { chart.series = chart.series.filter((one) => one !== series); }));
  }

  paint(color: string): void { this.write((series) => this.chart.update(() => { series.color = color; })); }

  protected readers() {
    return {
      name: (series: ChartSeriesRecord) => series.name ?? "",
      axisGroup: (series: ChartSeriesRecord) => (series.secondary ? "Secondary" : "Primary"),
    };
  }
}

class SeriesColor implements StandsFor<Excel.ChartLineFormat, "color"> {
  private chosen = "";
  constructor(private readonly series: ChartSeries) {}
  get color(): string { return this.chosen; }
  set color(color: string) {
    this.chosen = color;
    this.series.paint(color);
  }
}

function blockOf(range: Range): CellBlock {
  const { sheetId, row, column, rowCount, columnCount } = range.target;
  if (!sheetId) throw itemNotFound("range");
  return { sheetId, row, column, rowCount, columnCount };
}
