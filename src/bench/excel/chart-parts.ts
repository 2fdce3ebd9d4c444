import type { Chart, ChartTarget } from "./chart";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { ChartAxisRecord, ChartRecord } from "./sheet-extras";
import type { StandsFor } from "./standing";

/** Base of a chart's parts: they stand for the chart itself. */
abstract class ChartPart extends ClientObject<ChartTarget, Context> {
  constructor(protected readonly chart: Chart) {
    super(chart.context, { name: "chart", missing: "null", find: () => (chart.isNullObject ? undefined : chart.target) });
  }

  protected change(property: string, value: unknown, change: (record: ChartRecord) => void): void {
    this.set(property, value, () => this.chart.update(change));
  }
}

/** Stands in for Excel.ChartTitle. */
export class ChartTitle extends ChartPart implements StandsFor<Excel.ChartTitle, "text" | "visible"> {
  get text(): string { return this.get("text"); }
  set text(text: string) { this.change("text", text, (chart) => { chart.title = text; }); }
  get visible(): boolean { return this.get("visible"); }
  set visible(visible: boolean) { this.change("visible", visible, (chart) => { if (!visible) delete chart.title; }); }

  protected readers() {
    return { text: () => this.chart.record().title ?? "", visible: () => this.chart.record().title !== undefined };
  }
}

/** Stands in for Excel.ChartLegend. */
export class ChartLegend extends ChartPart implements StandsFor<Excel.ChartLegend, "visible" | "position"> {
  get visible(): boolean { return this.get("visible"); }
  set visible(visible: boolean) { this.change("visible", visible, (chart) => { chart.showLegend = visible; }); }
  get position(): Excel.ChartLegend["position"] { return this.get("position"); }
  set position(position: Excel.ChartLegend["position"]) { this.change("position", position, (chart) => { chart.legendPosition = position; }); }

  protected readers() {
    return { visible: () => this.chart.record().showLegend ?? true, position: () => this.chart.record().legendPosition ?? "Right" };
  }
}

/** Stands in for Excel.ChartAxis. */
export class ChartAxis extends ChartPart implements StandsFor<Excel.ChartAxis, "title" | "minimum" | "maximum" | "numberFormat"> {
  readonly title: ChartAxisTitle;

  constructor(chart: Chart, private readonly which: keyof ChartRecord["axes"]) {
    super(chart);
    this.title = new ChartAxisTitle(chart, which);
  }

  get minimum(): Excel.ChartAxis["minimum"] { return this.get("minimum"); }
  set minimum(value: Excel.ChartAxis["minimum"]) { this.put("minimum", value); }
  get maximum(): Excel.ChartAxis["maximum"] { return this.get("maximum"); }
  set maximum(value: Excel.ChartAxis["maximum"]) { this.put("maximum", value); }
  get numberFormat(): string { return this.get("numberFormat"); }
  set numberFormat(format: string) { this.put("numberFormat", format); }

  protected readers() {
    const axis = () => this.chart.record().axes[this.which];
    return { minimum: () => axis().minimum ?? "", maximum: () => axis().maximum ?? "", numberFormat: () => axis().numberFormat ?? "General" };
  }

  /** An empty text leaves the choice to Excel again. */
  private put(property: keyof ChartAxisRecord, value: unknown): void {
    this.change(property, value, (chart) => {
      const axis: Record<string, unknown> = { ...chart.axes[this.which], [property]: value };
      if (value === "") delete axis[property];
      chart.axes[this.which] = axis;
    });
  }
}

/** Stands in for Excel.ChartAxisTitle. */
export class ChartAxisTitle extends ChartPart implements StandsFor<Excel.ChartAxisTitle, "text" | "visible"> {
  constructor(chart: Chart, private readonly which: keyof ChartRecord["axes"]) {
    super(chart);
  }

  get text(): string { return this.get("text"); }
  set text(text: string) { this.change("text", text, (chart) => { chart.axes[this.which].title = text; }); }
  get visible(): boolean { return this.get("visible"); }
  set visible(visible: boolean) { this.change("visible", visible, (chart) => { if (!visible) delete chart.axes[this.which].title; }); }

  protected readers() {
    return { text: () => this.chart.record().axes[this.which].title ?? "", visible: () => this.chart.record().axes[this.which].title !== undefined };
  }
}
