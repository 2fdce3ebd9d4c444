import type { IWorkbookData } from "@univerjs/core";
import { SHEET_EXTRAS_RESOURCE, type WorkbookExtras } from "../../../../src/excel-stand-in/excel/sheet-extras";
import type { ComputedValues } from "../../../../src/excel-stand-in/xlsx";
import { makeResource, RESOURCE } from "../../../../src/excel-stand-in/xlsx/resources";

const block = (startRow: number, startColumn: number, endRow = startRow, endColumn = startColumn) => ({
  startRow,
  startColumn,
  endRow,
  endColumn,
});
const line = (s: number, rgb: string) => ({ s, cl: { rgb } });

/** Two batch sheets and a hidden list: everything a snapshot can hold that a file can hold too. Invented numbers. */
export function fullWorkbook(): { snapshot: IWorkbookData; computed: ComputedValues } {
  const batch = (id: string, name: string, gravity: number) => ({
    id,
    name,
    hidden: 0,
    tabColor: "#7A5C2E",
    showGridlines: 0,
    rightToLeft: 0,
    zoomRatio: 1.1,
    freeze: { xSplit: 1, ySplit: 3, startRow: 3, startColumn: 1 },
    mergeData: [block(0, 0, 0, 3)],
    defaultColumnWidth: 72,
    defaultRowHeight: 24,
    rowCount: 200,
    columnCount: 26,
    columnData: { 0: { w: 182 }, 1: { w: 84 }, 5: { w: 70, hd: 1 } },
    rowData: { 0: { h: 40, ia: 0 }, 7: { h: 24, ia: 0, hd: 1 } },
    cellData: {
      0: { 0: { v: `Batch "${name}" <&>`, t: 1, s: "title" } },
      1: { 0: { v: "Original gravity", t: 1, s: "label" }, 1: { v: gravity, t: 2, s: "input", custom: { unlocked: true } } },
      2: { 0: { v: "Final gravity", t: 1 }, 1: { v: 1.012, t: 2, s: "input", custom: { unlocked: true } } },
      3: { 0: { v: "Alcohol", t: 1 }, 1: { f: "=GYLE.BEER.ABV(og,fg)", v: 5.1, t: 2, s: "result" } },
      4: { 0: { v: "In words", t: 1 }, 1: { f: "=GYLE.BEER.WORD(og)", v: "strong", t: 1 }, 2: { f: '=B5&"!"', v: "strong!", t: 1 } },
      5: { 0: { v: "Nested", t: 1 }, 1: { f: "=ROUND(GYLE.BEER.ABV(og,fg)*2,1)", v: 10.2, t: 2 }, 2: { f: "=GYLE.BEER.ABV(fg,og)" } },
      6: {
        0: { v: "Empty text", t: 1 },
        1: { f: "=GYLE.BEER.STATUS(og,fg)", v: "", t: 1 },
        2: { v: 1, t: 3 },
        3: { f: "=B2>1", v: 1, t: 3 },
      },
      8: { 0: { v: "Brewed on", t: 1 }, 1: { v: 46082, t: 2, s: "date" } },
      9: { 0: { v: "Style", t: 1 }, 1: { v: "pale", t: 1 }, 2: { v: "007", t: 1 } },
      10: { 0: { f: "=GYLE.PLAN(3)", v: "heat", t: 1 } },
      15: { 0: { v: "Malt", t: 1 }, 1: { v: "Mass", t: 1 } },
      16: { 0: { v: "pale", t: 1 }, 1: { v: 4.2, t: 2 } },
      17: { 0: { v: "wheat", t: 1 }, 1: { v: 1.3, t: 2 } },
      18: {
        0: { v: "Sum", t: 1 },
        1: { f: `=SUM(Malts${id}[Mass])`, v: 5.5, t: 2 },
        2: { f: `=LET(m,Malts${id}[Mass],SUM(m*2))`, v: 11, t: 2 },
      },
      19: { 1: { f: "=B17+1", v: 5.2, t: 2, si: "once" } },
      20: { 1: { si: "once", v: 2.3, t: 2 } },
    },
  });
  const results = (): ComputedValues[string] => ({
    values: {
      3: { 1: 5.1 },
      4: { 1: "strong", 2: "strong!" },
      5: { 1: 10.2, 2: { error: "#VALUE!" } },
      6: { 1: "", 3: true },
      10: { 0: "heat", 1: 20 },
      11: { 0: "mash", 1: 66 },
      12: { 0: "", 1: { error: "#N/A" } },
      18: { 1: 5.5, 2: 11 },
      19: { 1: 5.2 },
      20: { 1: 2.3 },
    },
    spills: [block(10, 0, 12, 1)],
  });
  const snapshot: IWorkbookData = {
    id: "book",
    name: "Brews",
    appVersion: "0.25.1",
    locale: "enUS" as IWorkbookData["locale"],
    styles: {
      title: { ff: "Georgia", fs: 16, bl: 1, cl: { rgb: "#5B3A1A" }, bg: { rgb: "#F3E6D0" }, ht: 2, vt: 2 },
      label: { it: 1, ul: { s: 1 }, pd: { l: 18 }, ht: 1, tb: 3, vt: 1 },
      input: {
        bg: { rgb: "#FFF8E1" },
        n: { pattern: "0.000" },
        bd: { t: line(1, "#999999"), b: line(7, "#333333"), l: line(4, "#999999"), r: line(13, "#112233") },
      },
      result: { n: { pattern: '0.0" % vol"' }, st: { s: 1 }, ht: 3 },
      date: { n: { pattern: "yyyy-mm-dd" }, tr: { a: -45 } },
    },
    defaultStyle: { ff: "Calibri", fs: 11 },
    sheetOrder: ["one", "two", "lists"],
    sheets: {
      one: batch("one", "Pale No. 1", 1.052),
      two: batch("two", "O'Hara's 2nd", 1.061),
      lists: {
        id: "lists",
        name: "Lists",
        hidden: 1,
        showGridlines: 1,
        mergeData: [],
        cellData: { 0: { 0: { v: "pale", t: 1 } }, 1: { 0: { v: "dark", t: 1 } } },
      },
    } as IWorkbookData["sheets"],
    resources: [
      makeResource(RESOURCE.conditionalFormats, Object.fromEntries(["one", "two"].map((id) => [id, conditionalFormats]))),
      makeResource(RESOURCE.dataValidation, { one: validations, two: validations }),
      makeResource(RESOURCE.tables, {
        one: { tables: [table("one")], tableFilteredOutRows: [] },
        two: { tables: [table("two")], tableFilteredOutRows: [] },
      }),
      makeResource(RESOURCE.notes, {
        one: {
          1: { 1: { id: "n", row: 1, col: 1, width: 230, height: 120, note: "Measured at 20 °C\nwith a <hydrometer>", show: false } },
        },
      }),
      makeResource(RESOURCE.names, names()),
      makeResource(SHEET_EXTRAS_RESOURCE, extras()),
    ],
  };
  return { snapshot, computed: { one: results(), two: results() } };
}

const conditionalFormats = [
  {
    cfId: "cf1",
    ranges: [block(1, 1, 2, 1)],
    stopIfTrue: true,
    rule: {
      type: "highlightCell",
      subType: "formula",
      value: '=AND($B2<>"",$B2<1)',
      style: { bg: { rgb: "#FFD0D0" }, cl: { rgb: "#8A0000" }, bl: 1 },
    },
  },
  {
    cfId: "cf2",
    ranges: [block(16, 1, 17, 1), block(19, 1)],
    stopIfTrue: false,
    rule: { type: "highlightCell", subType: "number", operator: "between", value: [1, 2], style: { bg: { rgb: "#D0FFD0" } } },
  },
  {
    cfId: "cf3",
    ranges: [block(16, 1, 17, 1)],
    stopIfTrue: false,
    rule: {
      type: "colorScale",
      config: [
        { index: 0, color: "#FFFFFF", value: { type: "num", value: 0 } },
        { index: 1, color: "#C08040", value: { type: "max" } },
      ],
    },
  },
];

const told = {
  showErrorMessage: true,
  errorTitle: "Not so",
  error: "Pick one of the list",
  errorStyle: 2,
  showInputMessage: true,
  promptTitle: "Style",
  prompt: "What kind of beer",
};
const plain = { showErrorMessage: true, errorStyle: 1, showInputMessage: false };
const validations = [
  { uid: "dv1", ranges: [block(9, 1)], type: "list", formula1: "=Lists!$A$1:$A$2", allowBlank: true, ...told },
  { uid: "dv2", ranges: [block(9, 2), block(9, 4, 10, 4)], type: "list", formula1: '["litres","gallons"]', allowBlank: false, ...plain },
  {
    uid: "dv3",
    ranges: [block(1, 1, 2, 1)],
    type: "decimal",
    operator: "between",
    formula1: "0.98",
    formula2: "1.2",
    allowBlank: true,
    ...plain,
  },
  { uid: "dv4", ranges: [block(8, 1)], type: "date", operator: "greaterThanOrEqual", formula1: "36526", allowBlank: true, ...plain },
  { uid: "dv5", ranges: [block(20, 3)], type: "custom", formula1: "=LEN(D21)<5", allowBlank: true, ...plain },
  { uid: "dv6", ranges: [block(20, 4)], type: "whole", operator: "lessThan", formula1: "=$B$2", allowBlank: true, ...plain },
];

const table = (id: string) => ({
  id: `table-Malts${id}`,
  name: `Malts${id}`,
  range: block(15, 0, 17, 1),
  options: { showHeader: true, showFooter: false, tableStyleId: "table-default-0" },
  filters: { tableColumnFilterList: [] },
  meta: {},
  columns: ["Malt", "Mass"].map((displayName, index) => ({
    id: `column-${index + 1}`,
    displayName,
    dataType: "string",
    formula: "",
    meta: {},
    style: {},
  })),
});

function names() {
  const list = [
    { name: "fg", formulaOrRefString: "'Pale No. 1'!$B$3", localSheetId: "one" },
    { name: "fg", formulaOrRefString: "'O''Hara''s 2nd'!$B$3", localSheetId: "two" },
    { name: "og", formulaOrRefString: "'Pale No. 1'!$B$2", localSheetId: "one" },
    { name: "og", formulaOrRefString: "'O''Hara''s 2nd'!$B$2", localSheetId: "two" },
    { name: "strength", formulaOrRefString: "=GYLE.BEER.ABV(1.05,1.01)", localSheetId: "AllDefaultWorkbook", comment: "invented" },
    { name: "styles", formulaOrRefString: "Lists!$A$1:$A$2", localSheetId: "AllDefaultWorkbook" },
    { name: "tax", formulaOrRefString: "=0.19", localSheetId: "AllDefaultWorkbook", hidden: true },
  ];
  return Object.fromEntries(list.map((name, index) => [`name${index + 1}`, { id: `name${index + 1}`, ...name }]));
}

function extras(): WorkbookExtras {
  const cells = (sheetId: string, row: number, column: number, rowCount: number) => ({ sheetId, row, column, rowCount, columnCount: 1 });
  const chart = (sheetId: string) => ({
    id: `c-${sheetId}`,
    name: "Malts & more",
    type: "XYScatterLines",
    title: "Mass <kg>",
    showLegend: true,
    legendPosition: "Bottom",
    series: [
      { nameFrom: cells(sheetId, 15, 1, 1), xValues: cells(sheetId, 16, 1, 2), values: cells(sheetId, 16, 1, 2), color: "#AA5500" },
      { name: "right", xValues: cells(sheetId, 16, 1, 2), values: cells(sheetId, 19, 1, 2), secondary: true },
    ],
    position: { left: 337.5, top: 120, width: 300, height: 180 },
    axes: { category: { title: "Mass", numberFormat: "0.0" }, value: { title: "Part", minimum: 0, maximum: 10 } },
  });
  const withLooks = (plain: ReturnType<typeof chart>, values: ReturnType<typeof cells>) => ({
    ...plain,
    titleSize: 12,
    fontSize: 9,
    series: [
      ...plain.series,
      {
        name: "edge",
        xValues: values,
        values,
        color: "#0072B2",
        type: "XYScatterLinesNoMarkers",
        lineStyle: "Dash",
        lineWeight: 1,
        unlisted: true,
      },
      { name: "marks", xValues: values, values, color: "#D55E00", type: "XYScatter", markerStyle: "Diamond", markerSize: 7 },
    ],
    axes: { ...plain.axes, secondary: { title: "Beer °F", numberFormat: "0" } },
  });
  return {
    sheets: {
      one: {
        pageLayout: {
          orientation: "Landscape",
          paperSize: "A4",
          zoom: { horizontalFitToPages: 1, verticalFitToPages: 0 },
          leftMargin: 36,
          rightMargin: 36,
          topMargin: 54,
          bottomMargin: 54,
          headerMargin: 18,
          footerMargin: 18,
          centerHorizontally: true,
          printGridlines: true,
          blackAndWhite: true,
          headerFooter: { leftHeader: "Quillmarsh && Brew Club", centerFooter: "Page &P of &N", rightFooter: "&D" },
        },
        printArea: "A1:H40",
        printTitleRows: "$1:$3",
        horizontalPageBreaks: [20],
        charts: [withLooks(chart("one"), cells("one", 19, 1, 2))],
        tables: {
          "table-Maltsone": {
            style: "TableStyleLight1",
            showBandedRows: true,
            showBandedColumns: false,
            showFilterButton: false,
            showTotals: false,
          },
        },
        protection: {
          options: {
            allowAutoFilter: false,
            allowDeleteColumns: false,
            allowDeleteRows: false,
            allowEditObjects: false,
            allowEditScenarios: false,
            allowFormatCells: true,
            allowFormatColumns: true,
            allowFormatRows: false,
            allowInsertColumns: false,
            allowInsertHyperlinks: false,
            allowInsertRows: true,
            allowPivotTables: false,
            allowSort: false,
            selectionMode: "Unlocked",
          },
        },
      },
      two: {
        pageLayout: { orientation: "Portrait", paperSize: "Letter", zoom: { scale: 80 } },
        charts: [
          {
            ...chart("two"),
            type: "Line",
            position: { left: 253.5, top: 84, width: 324, height: 270 },
            anchor: { startCell: "D5", endCell: "J20" },
          },
        ],
        tables: { "table-Maltstwo": { showBandedRows: false, showBandedColumns: true, showFilterButton: true, showTotals: false } },
      },
    },
    properties: { title: "Brews of the Quillmarsh Brew Club", subject: "invented", comments: "for tests" },
    settings: { units: "metric", "a <key>": [1, { b: null }] },
  };
}
