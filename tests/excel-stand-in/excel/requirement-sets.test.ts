import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { ExcelMembers } from "../support/excel-members";
import type { BenchContext } from "../support/member-table";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

/** What the manifest asks for: an Excel that lacks more than this does not offer the add-in. */
const ASKED_FOR = 12;

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());

/** An older Excel passes over an option that it does not know. */
const options = ["RunOptions.mergeUndoGroup"];

/** Where the members newer than that are reached; what hangs below them cannot be reached without them. */
const newer: Record<string, (context: BenchContext) => unknown> = {
  "Workbook.notes": ({ workbook }) => workbook.notes,
  "Worksheet.notes": ({ workbook }) => workbook.worksheets.getFirst().notes,
  "Worksheet.onNameChanged": ({ workbook }) => workbook.worksheets.getFirst().onNameChanged,
  "WorksheetCollection.onNameChanged": ({ workbook }) => workbook.worksheets.onNameChanged,
  "WorksheetCollection.onMoved": ({ workbook }) => workbook.worksheets.onMoved,
  "WorksheetCollection.onVisibilityChanged": ({ workbook }) => workbook.worksheets.onVisibilityChanged,
};

describe("an older Excel", () => {
  const members = new ExcelMembers();

  it("lacks all that Microsoft's comments call newer", () => {
    const entries = members
      .members()
      .filter((member) => members.excelApi(member) > ASKED_FOR && !newestClasses().has(member.split(".")[0]!));
    expect(entries.sort()).toEqual([...Object.keys(newer), ...options].sort());
  });

  it.each(Object.entries(newer))("without %s refuses it at once, in office.js's words", async (member, reach) => {
    const set = members.excelApi(member);
    bench.host.behave({ excelApi: set - 1 });
    const { requirements } = bench.Office.context;
    expect([set - 1, set].map((n) => requirements.isSetSupported("ExcelApi", `1.${n}`))).toEqual([true, false]);
    await bench.Excel.run(async (context) => {
      expect(() => reach(context)).toThrow(
        expect.objectContaining({
          code: "ApiNotFound",
          message: `The method or property ${member} is part of the ExcelApi 1.${set} requirement set, which is not available in your version of Excel.`,
        }),
      );
    });
    bench.host.behave({ excelApi: set });
    expect(requirements.isSetSupported("ExcelApi", `1.${set}`)).toBe(true);
    await bench.Excel.run(async (context) => expect(() => reach(context)).not.toThrow());
  });

  it("refuses a path that leads through such a member too", async () => {
    bench.host.behave({ excelApi: 17 });
    await bench.Excel.run(async (context) =>
      expect(() => context.workbook.worksheets.getFirst().load("notes/items/content")).toThrow(
        expect.objectContaining({ code: "ApiNotFound" }),
      ),
    );
  });

  /** Classes that came later as a whole. */
  function newestClasses(): Set<string> {
    return new Set([...members.offered.keys()].filter((owner) => members.excelApi(owner) > ASKED_FOR));
  }
});
