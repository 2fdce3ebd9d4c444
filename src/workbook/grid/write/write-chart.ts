import { block } from "../plan/addresses";
import type { ChartAxisPlan, ChartPlan, ChartSeriesPlan } from "../plan/sheet-plan";
import { numberFormats } from "../plan/styles";

/** In points: on paper the chart is as much smaller as its sheet. */
const fontSizes = { chart: 11, title: 13 };

/** Queues a native chart with its series, each told apart by its look as well as by its colour. */
export function writeChart(sheet: Excel.Worksheet, plan: ChartPlan): void {
  const [first, ...others] = plan.series;
  const chart = sheet.charts.add(
    first.look === "columns" ? "ColumnClustered" : "XYScatter",
    sheet.getRange(first.values),
    isOneRow(first.values) ? "Rows" : "Columns",
  );
  chart.name = plan.name;
  chart.title.text = plan.title;
  writeSeries(sheet, chart.series.getItemAt(0), first);
  for (const series of others) writeSeries(sheet, chart.series.add(series.name), series);
  if (others.length === 0) chart.legend.visible = false;
  else chart.legend.position = "Bottom";
  plan.series.forEach(({ unnamed }, index) => {
    if (unnamed) chart.legend.legendEntries.getItemAt(index).visible = false;
  });
  writeAxis(chart.axes.categoryAxis, plan.horizontal);
  writeAxis(chart.axes.valueAxis, plan.vertical);
  if (plan.secondary) writeAxis(chart.axes.getItem("Value", "Secondary"), plan.secondary);
  // Last, when every part that it concerns is there.
  chart.format.font.size = fontSizes.chart;
  chart.title.format.font.size = fontSizes.title;
  chart.setPosition(plan.from, plan.to);
}

const looks: Readonly<
  Record<
    Exclude<ChartSeriesPlan["look"], "columns">,
    {
      readonly type: Excel.ChartSeries["chartType"];
      readonly line?: Excel.ChartLineFormat["lineStyle"];
      readonly weight?: number;
      readonly marker: Excel.ChartSeries["markerStyle"];
      readonly size?: number;
    }
  >
> = {
  marks: { type: "XYScatter", marker: "Circle", size: 7 },
  line: { type: "XYScatterLinesNoMarkers", line: "Continuous", weight: 2, marker: "None" },
  dashes: { type: "XYScatterLinesNoMarkers", line: "Dash", weight: 1, marker: "None" },
  "dots with marks": { type: "XYScatterLines", line: "RoundDot", weight: 1.25, marker: "Diamond", size: 6 },
};

function writeSeries(sheet: Excel.Worksheet, series: Excel.ChartSeries, plan: ChartSeriesPlan): void {
  series.name = plan.name;
  series.setValues(sheet.getRange(plan.values));
  series.setXAxisValues(sheet.getRange(plan.across));
  if (plan.look === "columns") {
    series.format.fill.setSolidColor(plan.color);
    return;
  }
  const { type, line, weight, marker, size } = looks[plan.look];
  series.chartType = type;
  if (plan.onSecondary) series.axisGroup = "Secondary";
  series.markerStyle = marker;
  if (size) {
    series.markerSize = size;
    series.markerBackgroundColor = plan.color;
    series.markerForegroundColor = plan.color;
  }
  if (!line) return;
  series.format.line.color = plan.color;
  series.format.line.lineStyle = line;
  if (weight) series.format.line.weight = weight;
}

function writeAxis(axis: Excel.ChartAxis, { format, title, span }: ChartAxisPlan): void {
  axis.numberFormat = numberFormats[format];
  if (title) axis.title.text = title;
  if (!span) return;
  axis.minimum = span[0];
  if (span[1] !== undefined) axis.maximum = span[1];
}

/** One series, whether its figures stand in a column or in a row. */
function isOneRow(range: string): boolean {
  const { from, to } = block(range);
  return from.row === to.row;
}
