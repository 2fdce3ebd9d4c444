import type { Chart } from "./chart";
import { ChartPart } from "./chart-parts";
import { invalidArgument } from "./errors";
import type { ChartAxisRecord, ChartRecord } from "./sheet-extras";
import type { StandsFor } from "./standing";

type Which = "category" | "value" | "secondary";

/** Stands in for Excel.ChartAxes. */
export class ChartAxes implements StandsFor<Excel.ChartAxes, keyof ChartAxes> {
  readonly categoryAxis: ChartAxis;
  readonly valueAxis: ChartAxis;

  constructor(private readonly chart: Chart) {
    this.categoryAxis = new ChartAxis(chart, "category");
    this.valueAxis = new ChartAxis(chart, "value");
  }

  /** The second value axis is there once a series was put on it, as in Excel. */
  getItem(type: Excel.ChartAxisType | string, group: Excel.ChartAxisGroup | string = "Primary"): ChartAxis {
    if (type === "Category" && group === "Primary") return this.categoryAxis;
    if (type === "Value" && group === "Primary") return this.valueAxis;
    if (type === "Value" && group === "Secondary") return new ChartAxis(this.chart, "secondary");
    throw invalidArgument(`The bench draws no axis "${type}", "${group}".`);
  }
}

/** Stands in for Excel.ChartAxis. */
export class ChartAxis extends ChartPart implements StandsFor<Excel.ChartAxis, keyof ChartAxis> {
  readonly title: ChartAxisTitle;

  constructor(
    chart: Chart,
    private readonly which: Which,
  ) {
    super(chart);
    this.title = new ChartAxisTitle(chart, which);
  }

  declare minimum: Excel.ChartAxis["minimum"];
  declare maximum: Excel.ChartAxis["maximum"];
  declare numberFormat: string;

  protected override changes() {
    return {
      minimum: (value: Excel.ChartAxis["minimum"]) => this.put("minimum", value),
      maximum: (value: Excel.ChartAxis["maximum"]) => this.put("maximum", value),
      numberFormat: (format: string) => this.put("numberFormat", format),
    };
  }

  protected override readers() {
    const axis = () => axisOf(this.chart.record(), this.which);
    return {
      minimum: () => axis().minimum ?? "",
      maximum: () => axis().maximum ?? "",
      numberFormat: () => axis().numberFormat ?? "General",
    };
  }

  /** An empty text leaves the choice to Excel again. */
  private put(property: keyof ChartAxisRecord, value: unknown): void {
    this.change(property, value, (chart) => {
      const axis: Record<string, unknown> = { ...axisOf(chart, this.which), [property]: value };
      if (value === "") delete axis[property];
      chart.axes[this.which] = axis;
    });
  }
}

/** Stands in for Excel.ChartAxisTitle. */
export class ChartAxisTitle extends ChartPart implements StandsFor<Excel.ChartAxisTitle, keyof ChartAxisTitle> {
  constructor(
    chart: Chart,
    private readonly which: Which,
  ) {
    super(chart);
  }

  declare text: string;

  protected override changes() {
    return {
      text: (text: string) =>
        this.change("text", text, (chart) => {
          axisOf(chart, this.which).title = text;
        }),
    };
  }

  protected override readers() {
    return {
      text: () => axisOf(this.chart.record(), this.which).title ?? "",
    };
  }
}

function axisOf(chart: ChartRecord, which: Which): ChartAxisRecord {
  if (which !== "secondary") return chart.axes[which];
  if (!chart.series.some(({ secondary }) => secondary)) throw invalidArgument("No series stands on a second axis.");
  return (chart.axes.secondary ??= {});
}
