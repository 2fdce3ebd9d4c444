import { batchMark } from "../read/batch-sheets";
import { isNew, type Work } from "./migrate";
import { begunChart, undraw } from "./new-chart";

/**
 * Excel carries out what stands before the failing step: takes that back, sheet by sheet. The cells were empty, so
 * emptying them is how they were. A sheet that somebody else has brought along meanwhile is theirs and stays.
 */
export async function takeBack(context: Excel.RequestContext, work: readonly Work[]): Promise<void> {
  const begun = work.map((one) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(one.outlook.sheetName);
    return { ...one, sheet };
  });
  await context.sync();
  const there = begun.filter(({ sheet }) => !sheet.isNullObject).map((one) => ({
    ...one,
    names: one.additions.map(({ name }) => one.sheet.names.getItemOrNullObject(name)),
    version: one.sheet.getRange(one.cells.range(batchMark)).load("values"),
    chartNames: (isNew(one.chart) ? one.chart.names : []).map(({ name }) => one.sheet.names.getItemOrNullObject(name)),
    begun: begunChart(one.sheet),
    contents: one.additions.map(({ spot }) => one.sheet.getRange(spot.cell).load("values")),
  }));
  await context.sync();
  for (const { sheet, names, chartNames, additions, cells, outlook, version, contents, chart, begun } of there) {
    // Its old chart went last: this sheet has everything.
    if (isNew(chart) && begun.old.isNullObject) continue;
    const isOurs = additions.every(({ content }, index) => contents[index]?.values[0]?.[0] === content);
    const isBegun = names.some((name) => !name.isNullObject);
    if (!isBegun || (version.values[0]?.[0] !== outlook.version && !isOurs)) continue;
    for (const name of [...names, ...chartNames]) if (!name.isNullObject) name.delete();
    if (isNew(chart)) undraw(sheet, chart, begun);
    for (const { spot } of additions) for (const address of [spot.label, spot.cell]) sheet.getRange(address).clear("Contents");
    sheet.getRange(cells.range(batchMark)).values = [[outlook.version]];
  }
  await context.sync();
}
