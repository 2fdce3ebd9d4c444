import { expect, it } from "vitest";
import { isSetSupported } from "../../../src/excel-stand-in/excel/requirement-sets";
import { ExcelMembers } from "../support/excel-members";
import { tableMembers } from "../support/member-table";

/** What Office's callbacks hand over are plain results, no classes of the stand-in: office.test.ts reads each of these, in "getFileAsync". */
const handedByCallbacks: readonly string[] = ["AsyncResult.status", "AsyncResult.value", "AsyncResult.error", "Error.message"];

/** Asked of the TypeScript compiler, so that no list has to be kept by hand. */
const members = new ExcelMembers();

it.each(["src/workbook", "src/pane"])("the stand-in offers every member of Excel's and Office's objects that %s uses", (folder) => {
  const used = members.usedIn(folder);
  const missing = [...used]
    .filter(([member]) => !members.offers(member) && !handedByCallbacks.includes(member))
    .map(([member, place]) => `${member} (${place})`);
  expect(missing).toEqual([]);
  if (folder === "src/workbook") expect(used.size).toBeGreaterThan(60);
});

it("a member that is not there would be noticed", () => {
  expect([members.offers("Range.values"), members.offers("Range.flashFill"), members.offers("Shape.delete")]).toEqual([true, false, false]);
});

it("the requirement set that is claimed is that of the newest member", () => {
  const newest = Math.max(...members.members().map((member) => members.excelApi(member)));
  expect([isSetSupported("ExcelApi", `1.${newest}`), isSetSupported("ExcelApi", `1.${newest + 1}`)]).toEqual([true, false]);
});

it("the tests of this folder touch every member that the stand-in offers", () => {
  const tested = members.testedMembers();
  const offered = members.members();
  expect(offered.length).toBeGreaterThan(200);
  const untested = offered.filter((member) => !tested.has(member) && !tableMembers.has(member));
  expect(untested).toEqual([]);
});
