import { batchMark } from "../../batch/read/batch-sheets";
import { isNew, type Work } from "./work";
import { begunChart, undraw } from "./new-chart";

/**
 * Excel carries out what stands before the failing step: takes that back, sheet by sheet. What stood in the cells was
 * nothing, or words and formulas of our own. A sheet that somebody else has brought along meanwhile is theirs and stays.
 */
export async function takeBack(context: Excel.RequestContext, work: readonly Work[]): Promise<void> {
  const begun = work.map((one) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(one.outlook.sheetName);
    return { ...one, sheet };
  });
  await context.sync();
  const there = begun
    .filter(({ sheet }) => !sheet.isNullObject)
    .map((one) => ({
      ...one,
      names: one.fresh.names.map(({ name }) => one.sheet.names.getItemOrNullObject(name)),
      version: one.sheet.getRange(one.cells.range(batchMark)).load("values"),
      chartNames: (isNew(one.chart) ? one.chart.names : []).map(({ name }) => one.sheet.names.getItemOrNullObject(name)),
      begun: begunChart(one.sheet),
      contents: one.fresh.cells.map(({ address }) => one.sheet.getRange(address).load("formulas")),
    }));
  await context.sync();
  for (const { sheet, names, chartNames, fresh, cells, outlook, version, contents, chart, begun } of there) {
    const isAsWritten = fresh.cells.map(({ content }, index) => contents[index]?.formulas[0]?.[0] === content);
    const isBegun = names.some((name) => !name.isNullObject);
    if (!isBegun || (version.values[0]?.[0] !== outlook.version && !isAsWritten.every(Boolean))) continue;
    for (const name of [...names, ...chartNames]) if (!name.isNullObject) name.delete();
    if (isNew(chart)) undraw(sheet, chart, begun);
    fresh.cells.forEach(({ address, was }, index) => {
      if (isAsWritten[index]) sheet.getRange(address).formulas = [[was]];
    });
    sheet.getRange(cells.range(batchMark)).values = [[outlook.version]];
  }
  await context.sync();
}
