import type { Chart } from "./chart";
import { ClientCollection } from "./collection";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { invalidArgument, itemNotFound } from "./errors";
import type { Range } from "./range";
import type { CellBlock, ChartSeriesRecord } from "./sheet-extras";
import type { StandsFor } from "./standing";

/** Stands in for Excel.ChartSeriesCollection. */
export class ChartSeriesCollection
  extends ClientCollection<ChartSeries, string, Context>
  implements StandsFor<Excel.ChartSeriesCollection, keyof ChartSeriesCollection>
{
  constructor(private readonly chart: Chart) {
    super(chart.context, { name: "series", missing: "null", find: () => (chart.isNullObject ? undefined : chart.target.id) });
  }

  add(name?: string, index?: number): ChartSeries {
    let record: ChartSeriesRecord | undefined;
    this.write(() =>
      this.chart.update((chart) => {
        record = name === undefined ? {} : { name };
        chart.series.splice(index ?? chart.series.length, 0, record);
      }),
    );
    return new ChartSeries(this.chart, () => record);
  }

  getItemAt(index: number): ChartSeries {
    return new ChartSeries(this.chart, () => this.chart.record().series[index]);
  }

  protected list(): ChartSeries[] {
    return this.chart.record().series.map((record) => new ChartSeries(this.chart, () => record));
  }
}

/** Stands in for Excel.ChartSeries. One colour serves line and marks: the bench draws no others. */
export class ChartSeries extends ClientObject<ChartSeriesRecord, Context> implements StandsFor<Excel.ChartSeries, keyof ChartSeries> {
  readonly format = { line: new SeriesLine(this), fill: { setSolidColor: (color: string): void => this.change({ color }) } };

  constructor(
    private readonly chart: Chart,
    find: () => ChartSeriesRecord | undefined,
  ) {
    super(chart.context, { name: "series", missing: "throws", find });
  }

  declare name: string;
  declare axisGroup: Excel.ChartSeries["axisGroup"];
  declare chartType: Excel.ChartSeries["chartType"];
  declare markerStyle: Excel.ChartSeries["markerStyle"];
  declare markerSize: number;
  declare markerBackgroundColor: string;
  declare markerForegroundColor: string;

  setValues(source: Range | Excel.Range): void {
    this.write((series) =>
      this.chart.update(() => {
        series.values = blockOf(source as Range);
      }),
    );
  }
  setXAxisValues(source: Range | Excel.Range): void {
    this.write((series) =>
      this.chart.update(() => {
        series.xValues = blockOf(source as Range);
      }),
    );
  }

  change(part: Partial<ChartSeriesRecord>): void {
    this.write((series) =>
      this.chart.update(() => {
        Object.assign(series, part);
      }),
    );
  }

  protected override changes() {
    return {
      name: (name: string) =>
        this.set("name", name, (series) =>
          this.chart.update(() => {
            series.name = name;
            delete series.nameFrom;
          }),
        ),
      axisGroup: (group: Excel.ChartSeries["axisGroup"]) => this.put("axisGroup", group, { secondary: group === "Secondary" }),
      /** Excel mixes columns with lines too; the bench draws one family in a chart. */
      chartType: (type: Excel.ChartSeries["chartType"]) =>
        this.set("chartType", type, (series) =>
          this.chart.update((chart) => {
            if (!["XYScatter", "Line"].some((family) => type.startsWith(family) && chart.type.startsWith(family)))
              throw invalidArgument(`The bench draws no ${type} in a chart of the type ${chart.type}.`);
            series.type = type;
          }),
        ),
      markerStyle: (style: Excel.ChartSeries["markerStyle"]) => this.put("markerStyle", style, { markerStyle: style }),
      markerSize: (size: number) => this.put("markerSize", size, { markerSize: size }),
      markerBackgroundColor: (color: string) => this.put("markerBackgroundColor", color, { color }),
      markerForegroundColor: (color: string) => this.put("markerForegroundColor", color, { color }),
    };
  }

  protected override readers() {
    return {
      name: (series: ChartSeriesRecord) => series.name ?? "",
      axisGroup: (series: ChartSeriesRecord) => (series.secondary ? "Secondary" : "Primary"),
      chartType: (series: ChartSeriesRecord) => series.type ?? this.chart.record().type,
      markerStyle: (series: ChartSeriesRecord) => series.markerStyle ?? "Automatic",
      markerSize: (series: ChartSeriesRecord) => series.markerSize ?? 5,
      markerBackgroundColor: (series: ChartSeriesRecord) => series.color ?? "",
      markerForegroundColor: (series: ChartSeriesRecord) => series.color ?? "",
    };
  }

  private put(property: string, value: unknown, part: Partial<ChartSeriesRecord>): void {
    this.set(property, value, (series) =>
      this.chart.update(() => {
        Object.assign(series, part);
      }),
    );
  }
}

/** Stands in for a series' Excel.ChartLineFormat. */
class SeriesLine extends ClientObject<ChartSeriesRecord, Context> implements StandsFor<Excel.ChartLineFormat, keyof SeriesLine> {
  constructor(private readonly series: ChartSeries) {
    super(series.context, { name: "format", missing: "null", find: () => (series.isNullObject ? undefined : series.target) });
  }

  declare color: string;
  declare lineStyle: Excel.ChartLineFormat["lineStyle"];
  declare weight: number;

  protected override changes() {
    return {
      color: (color: string) => this.put("color", color, { color }),
      lineStyle: (style: Excel.ChartLineFormat["lineStyle"]) => this.put("lineStyle", style, { lineStyle: style }),
      weight: (points: number) => this.put("weight", points, { lineWeight: points }),
    };
  }

  protected override readers() {
    return {
      color: (series: ChartSeriesRecord) => series.color ?? "",
      lineStyle: (series: ChartSeriesRecord) => series.lineStyle ?? "Automatic",
      weight: (series: ChartSeriesRecord) => series.lineWeight ?? 0,
    };
  }

  private put(property: string, value: unknown, part: Partial<ChartSeriesRecord>): void {
    this.set(property, value, () => this.series.change(part));
  }
}

function blockOf(range: Range): CellBlock {
  const { sheetId, row, column, rowCount, columnCount } = range.target;
  if (!sheetId) throw itemNotFound("range");
  return { sheetId, row, column, rowCount, columnCount };
}
