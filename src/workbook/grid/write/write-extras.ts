import type { SheetPlan, ValidationPlan } from "../plan/sheet-plan";
import { marginsPt } from "../plan/print-scale";
import { writeChart } from "./write-chart";

/** Queues validation, highlights, notes, the chart, frozen rows and the print set-up. */
export function writeExtras(sheet: Excel.Worksheet, plan: SheetPlan): void {
  sheet.showGridlines = false;
  sheet.freezePanes.freezeRows(plan.frozenRows);
  writeLooks(sheet, plan);
  for (const chart of plan.charts) writeChart(sheet, chart);
  printSetUp(sheet, plan);
}

/** Queues what goes along with cells: validation, highlights, notes. */
export function writeLooks(sheet: Excel.Worksheet, plan: Pick<SheetPlan, "validations" | "highlights" | "notes">): void {
  for (const validation of plan.validations) validate(sheet, validation);
  for (const { range, formula, fill, color, bold } of plan.highlights) {
    const rule = sheet.getRange(range).conditionalFormats.add("Custom").custom;
    rule.rule.formula = formula;
    if (fill) rule.format.fill.color = fill;
    if (color) rule.format.font.color = color;
    if (bold) rule.format.font.bold = true;
  }
  // Notes came with ExcelApi 1.18; where they are missing the sheet works without them.
  if (Office.context.requirements.isSetSupported("ExcelApi", "1.18"))
    for (const { address, text } of plan.notes) sheet.notes.add(address, text);
}

function validate(sheet: Excel.Worksheet, plan: ValidationPlan): void {
  const { dataValidation } = sheet.getRange(plan.range);
  dataValidation.rule =
    plan.kind === "list"
      ? { list: { inCellDropDown: true, source: plan.choices.join(",") } }
      : { decimal: { formula1: plan.from, formula2: plan.to, operator: "Between" } };
  dataValidation.ignoreBlanks = true;
  dataValidation.errorAlert = { showAlert: true, style: "Stop", title: "Gylebook", message: plan.message };
}

function printSetUp(sheet: Excel.Worksheet, { print }: SheetPlan): void {
  const layout = sheet.pageLayout;
  layout.orientation = print.landscape ? "Landscape" : "Portrait";
  layout.paperSize = print.paper === "letter" ? "Letter" : "A4";
  layout.zoom = { horizontalFitToPages: 1, ...(print.onePage && { verticalFitToPages: 1 }) };
  layout.centerHorizontally = true;
  layout.leftMargin = marginsPt.side;
  layout.rightMargin = marginsPt.side;
  layout.topMargin = marginsPt.top;
  layout.bottomMargin = marginsPt.bottom;
  layout.footerMargin = marginsPt.bottom / 3;
  layout.headersFooters.defaultForAllPages.centerFooter = print.footer;
  layout.setPrintArea(print.area);
  for (const row of print.breaksBeforeRow) sheet.horizontalPageBreaks.add(`A${row}`);
}
