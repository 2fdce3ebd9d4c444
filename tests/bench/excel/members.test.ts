import { expect, it } from "vitest";
import { isSetSupported } from "../../../src/bench/excel/requirement-sets";
import { ExcelMembers } from "../support/excel-members";
import { tableMembers } from "../support/member-table";

/** Members without a test of their own yet. A new member does not join them: it gets an entry in member-table.ts or a test. */
const untestedSoFar: readonly string[] = [
  "Chart.id", "ChartLineFormat.lineStyle", "ChartLineFormat.weight", "ChartSeries.markerBackgroundColor",
  "ChartSeries.markerForegroundColor", "ChartSeries.markerSize", "ConditionalFormat.delete", "ConditionalFormat.id",
  "ConditionalRangeFill.clear", "Context.contentLanguage", "Context.diagnostics", "Context.displayLanguage", "Context.host",
  "Context.platform", "ContextInformation.host", "ContextInformation.platform", "ContextInformation.version", "Document.url",
  "OfficeTheme.bodyBackgroundColor", "OfficeTheme.bodyForegroundColor", "OfficeTheme.controlBackgroundColor",
  "OfficeTheme.controlForegroundColor", "RequestContext.application", "RequestContext.trackedObjects", "Settings.remove", "Table.id",
  "Worksheet.onDeactivated", "Worksheet.onVisibilityChanged", "WorksheetCollection.onCalculated", "WorksheetCollection.onSelectionChanged",
];

/** What Office's callbacks hand over are plain results, not classes of the stand-in: office.test.ts reads each of them. */
const handedByCallbacks: readonly string[] = ["AsyncResult", "Error", "File", "Slice"];

/** Asked of the TypeScript compiler, so that no list has to be kept by hand. */
const members = new ExcelMembers();

it.each(["src/workbook", "src/pane"])("the stand-in offers every member of Excel's and Office's objects that %s uses", (folder) => {
  const used = members.usedIn(folder);
  const missing = [...used].filter(([member]) => !members.offers(member) && !handedByCallbacks.includes(member.split(".")[0] ?? "")).map(([member, place]) => `${member} (${place})`);
  expect(missing).toEqual([]);
  if (folder === "src/workbook") expect(used.size).toBeGreaterThan(60);
});

it("a member that is not there would be noticed", () => {
  expect([members.offers("Range.values"), members.offers("Range.flashFill"), members.offers("Shape.delete")]).toEqual([true, false, false]);
});

it("the requirement set that is claimed is that of the newest member", () => {
  const newest = members.newestExcelApi();
  expect([isSetSupported("ExcelApi", `1.${newest}`), isSetSupported("ExcelApi", `1.${newest + 1}`)]).toEqual([true, false]);
});

it("the tests of this folder touch every member that the stand-in offers", () => {
  const tested = members.testedMembers();
  const offered = members.members();
  expect(offered.length).toBeGreaterThan(200);
  const untested = offered.filter((member) => !tested.has(member) && !tableMembers.has(member));
  expect(untested.sort()).toEqual([...untestedSoFar].sort());
});
