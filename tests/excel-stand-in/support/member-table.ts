import type { HeadlessBench } from "../../../src/excel-stand-in/headless";

export type BenchContext = InstanceType<HeadlessBench["Excel"]["RequestContext"]>;
type Loadable = { load(options: string): unknown };

/** How one of Excel's classes is reached in the sample workbook of every-member.test.ts, and what its properties hold. */
export interface Subject {
  at(context: BenchContext): object;
  /** Properties that can be set, each with a value other than the one it has. */
  sets?: Record<string, unknown>;
  /** Properties that are only read, each with what it holds. */
  reads?: Record<string, unknown>;
}

const sheet = (context: BenchContext) => context.workbook.worksheets.getItem("Malts");
const table = (context: BenchContext) => sheet(context).tables.getItem("Bill");
const chart = (context: BenchContext) => sheet(context).charts.getItem("Shares");
const layout = (context: BenchContext) => sheet(context).pageLayout;
const cells = (context: BenchContext) => sheet(context).getRange("A2:B3");
const look = (context: BenchContext) => cells(context).format;
const rule = (context: BenchContext) => sheet(context).getRange("B2").conditionalFormats.getItemAt(0);

export const subjects: Record<string, Subject> = {
  DocumentProperties: {
    at: ({ workbook }) => workbook.properties,
    sets: { title: "a", author: "b", subject: "c", comments: "d", keywords: "e", category: "f", company: "g", manager: "h" },
  },
  Setting: { at: ({ workbook }) => workbook.settings.getItem("paper"), sets: { value: "letter" }, reads: { key: "paper" } },
  WorkbookProtection: { at: ({ workbook }) => workbook.protection, reads: { protected: false } },
  Worksheet: {
    at: sheet,
    reads: { id: "one" },
    sets: { name: "Grain", position: 1, tabColor: "#112233", showGridlines: false, visibility: "Hidden" },
  },
  WorksheetProtection: { at: (context) => sheet(context).protection, reads: { protected: false } },
  Range: {
    at: cells,
    sets: {
      values: [
        ["Rye", 1],
        ["Oats", 2],
      ],
      formulas: [
        ["=1+1", 3],
        ["a", "=B2"],
      ],
      numberFormat: [
        ["0.0", "0.00"],
        ["@", "0"],
      ],
    },
    reads: {
      address: "Malts!A2:B3",
      rowIndex: 1,
      columnIndex: 0,
      rowCount: 2,
      columnCount: 2,
      text: [
        ["Pale", "4"],
        ["Dark", "1"],
      ],
      valueTypes: [
        ["String", "Double"],
        ["String", "Double"],
      ],
    },
  },
  RangeFormat: {
    at: look,
    sets: { horizontalAlignment: "Center", verticalAlignment: "Top", wrapText: true, indentLevel: 2, columnWidth: 120, rowHeight: 30 },
  },
  RangeFont: {
    at: (context) => look(context).font,
    sets: { bold: true, italic: true, color: "#AA0000", size: 14, name: "Georgia" },
  },
  RangeFill: { at: (context) => look(context).fill, sets: { color: "#EEDDCC" } },
  RangeBorder: {
    at: (context) => look(context).borders.getItem("EdgeBottom"),
    sets: { style: "Continuous", color: "#123456", weight: "Thick" },
  },
  FormatProtection: { at: (context) => look(context).protection, sets: { locked: false } },
  DataValidation: {
    at: (context) => sheet(context).getRange("B2").dataValidation,
    reads: { type: "Decimal" },
    sets: { ignoreBlanks: false },
  },
  ConditionalFormat: { at: rule, reads: { type: "Custom" } },
  ConditionalFormatRule: { at: (context) => rule(context).custom.rule, sets: { formula: "=B2>9" } },
  ConditionalRangeFill: { at: (context) => rule(context).custom.format.fill, sets: { color: "#FFEE00" } },
  ConditionalRangeFont: { at: (context) => rule(context).custom.format.font, sets: { color: "#00AA00", bold: true } },
  NamedItem: {
    at: (context) => sheet(context).names.getItem("total"),
    sets: { formula: "=Malts!$B$9", visible: false, comment: "sum" },
    reads: { name: "total", type: "Range", scope: "Worksheet", value: "Malts!$B$6" },
  },
  Note: { at: (context) => sheet(context).notes.getItem("B6"), sets: { content: "All of it" } },
  Table: {
    at: table,
    sets: {
      name: "Grist",
      style: "TableStyleLight3",
      showBandedRows: false,
      showFilterButton: false,
      showHeaders: false,
      showTotals: true,
    },
  },
  Chart: { at: chart, sets: { name: "Grist", chartType: "Line", left: 10, top: 20, width: 300, height: 200 } },
  ChartTitle: { at: (context) => chart(context).title, sets: { text: "Malt" } },
  ChartLegend: { at: (context) => chart(context).legend, sets: { visible: false, position: "Top" } },
  ChartAxis: { at: (context) => chart(context).axes.valueAxis, sets: { maximum: 9, numberFormat: "0.0" } },
  ChartAxisTitle: { at: (context) => chart(context).axes.valueAxis.title, sets: { text: "kg" } },
  ChartSeries: {
    at: (context) => chart(context).series.getItemAt(0),
    sets: { name: "Kilograms", axisGroup: "Secondary", markerSize: 9, markerBackgroundColor: "#AA0000", markerForegroundColor: "#00AA00" },
  },
  ChartLineFormat: {
    at: (context) => chart(context).series.getItemAt(0).format.line,
    sets: { color: "#0000AA", lineStyle: "Dash", weight: 2.25 },
  },
  PageLayout: {
    at: layout,
    sets: {
      orientation: "Landscape",
      paperSize: "A4",
      zoom: { scale: 80 },
      leftMargin: 10,
      rightMargin: 11,
      topMargin: 12,
      bottomMargin: 13,
      headerMargin: 14,
      footerMargin: 15,
      centerHorizontally: true,
    },
  },
  HeaderFooter: {
    at: (context) => layout(context).headersFooters.defaultForAllPages,
    sets: { centerFooter: "e", rightFooter: "f" },
  },
};

/** The properties above as "Range.values": every-member.test.ts holds each to load and sync. */
export const tableMembers = new Set(
  Object.entries(subjects).flatMap(([name, { sets = {}, reads = {} }]) =>
    [...Object.keys(sets), ...Object.keys(reads)].map((property) => `${name}.${property}`),
  ),
);

export const value = (subject: object, property: string): unknown => (subject as Record<string, unknown>)[property];
export const load = (subject: object, property: string): void => void (subject as Loadable).load(property);
export const put = (subject: object, property: string, to: unknown): void => {
  (subject as Record<string, unknown>)[property] = to;
};
