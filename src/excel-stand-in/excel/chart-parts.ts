import type { Chart, ChartTarget } from "./chart";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { itemNotFound } from "./errors";
import type { ChartRecord, ChartSeriesRecord } from "./sheet-extras";
import type { StandsFor } from "./standing";

/** Base of a chart's parts: they stand for the chart itself. */
export abstract class ChartPart extends ClientObject<ChartTarget, Context> {
  constructor(protected readonly chart: Chart) {
    super(chart.context, { name: "chart", missing: "null", find: () => (chart.isNullObject ? undefined : chart.target) });
  }

  protected change(property: string, value: unknown, change: (record: ChartRecord) => void): void {
    this.set(property, value, () => this.chart.update(change));
  }
}

/** Stands in for the size of an Excel.ChartFont. */
export class ChartFont extends ChartPart implements StandsFor<Excel.ChartFont, keyof ChartFont> {
  constructor(
    chart: Chart,
    private readonly which: "titleSize" | "fontSize",
  ) {
    super(chart);
  }

  declare size: number;

  protected override changes() {
    return {
      size: (points: number) =>
        this.change("size", points, (chart) => {
          chart[this.which] = points;
        }),
    };
  }

  protected override readers() {
    return { size: () => this.chart.record()[this.which] ?? (this.which === "titleSize" ? 14 : 10) };
  }
}

/** Stands in for Excel.ChartTitle. */
export class ChartTitle extends ChartPart implements StandsFor<Excel.ChartTitle, keyof ChartTitle> {
  readonly format = { font: new ChartFont(this.chart, "titleSize") };

  declare text: string;

  protected override changes() {
    return {
      text: (text: string) =>
        this.change("text", text, (chart) => {
          chart.title = text;
        }),
    };
  }

  protected override readers() {
    return { text: () => this.chart.record().title ?? "" };
  }
}

/** Stands in for Excel.ChartLegend. */
export class ChartLegend extends ChartPart implements StandsFor<Excel.ChartLegend, keyof ChartLegend> {
  readonly legendEntries = new ChartLegendEntries(this.chart);

  declare visible: boolean;
  declare position: Excel.ChartLegend["position"];

  protected override changes() {
    return {
      visible: (visible: boolean) =>
        this.change("visible", visible, (chart) => {
          chart.showLegend = visible;
        }),
      position: (position: Excel.ChartLegend["position"]) =>
        this.change("position", position, (chart) => {
          chart.legendPosition = position;
        }),
    };
  }

  protected override readers() {
    return { visible: () => this.chart.record().showLegend ?? true, position: () => this.chart.record().legendPosition ?? "Right" };
  }
}

/** Stands in for Excel.ChartLegendEntryCollection: an entry for each series, in their order. */
export class ChartLegendEntries implements StandsFor<Excel.ChartLegendEntryCollection, keyof ChartLegendEntries> {
  constructor(private readonly chart: Chart) {}

  getItemAt(index: number): ChartLegendEntry {
    return new ChartLegendEntry(this.chart, index);
  }
}

/** Stands in for Excel.ChartLegendEntry. */
export class ChartLegendEntry extends ChartPart implements StandsFor<Excel.ChartLegendEntry, keyof ChartLegendEntry> {
  constructor(
    chart: Chart,
    private readonly index: number,
  ) {
    super(chart);
  }

  declare visible: boolean;

  protected override changes() {
    return {
      visible: (visible: boolean) =>
        this.change("visible", visible, (chart) => {
          const series = this.seriesOf(chart);
          if (visible) delete series.unlisted;
          else series.unlisted = true;
        }),
    };
  }

  protected override readers() {
    return { visible: () => this.seriesOf(this.chart.record()).unlisted !== true };
  }

  private seriesOf(chart: ChartRecord): ChartSeriesRecord {
    const series = chart.series[this.index];
    if (!series) throw itemNotFound("legend entry");
    return series;
  }
}
