import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { ExcelMembers } from "../support/excel-members";
import type { BenchContext } from "../support/member-table";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

/** What the manifest asks for: an Excel that has less is not offered the add-in. */
const manifest = readFileSync(new URL("../../../manifest.xml", import.meta.url), "utf8");
const ASKED_FOR = Number(/<Set Name="ExcelApi" MinVersion="1\.(\d+)"/.exec(manifest)?.[1]);

/** Called only where the file before has asked, and run without notes by tests/sheets/every-excel.test.ts. */
const askedBefore: Record<string, string> = {
  "src/workbook/exchange/unplug/look-at-copy.ts": "unplug-sheet.ts",
  "src/workbook/exchange/unplug/write-copy.ts": "unplug-sheet.ts",
};

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
  "WorksheetCollection.onNameChanged": ({ workbook }) => workbook.worksheets.onNameChanged,
  "WorksheetCollection.onMoved": ({ workbook }) => workbook.worksheets.onMoved,
};

const members = new ExcelMembers();

it("the manifest asks for the set of the newest member that our code uses without asking first whether it is there", () => {
  const files = [...members.usedByFile("src/workbook"), ...members.usedByFile("src/pane")].filter(([file]) => {
    const source = readFileSync(new URL(`../../../${file}`, import.meta.url), "utf8");
    return !/requirements\.isSetSupported\(|canPlugInAgain\(/.test(source) && !(file in askedBefore);
  });
  const unasked = files.flatMap(([file, used]) => [...used].map((member) => ({ set: members.excelApi(member), member, file })));
  // What hangs below a class that came later as a whole is reached through a member that somebody asked for.
  const entries = unasked.filter(({ member }) => !newestClasses(ASKED_FOR).has(member.split(".")[0]!));
  const newest = Math.max(...entries.map(({ set }) => set));
  expect(entries.filter(({ set }) => set === newest).map(({ member }) => member)).toContain("Range.getSpillParentOrNullObject");
  expect(newest).toBe(ASKED_FOR);
});

/** Classes that came later as a whole. */
function newestClasses(than: number): Set<string> {
  return new Set([...members.offered.keys()].filter((owner) => members.excelApi(owner) > than));
}

describe("an older Excel", () => {
  it("lacks all that Microsoft's comments call newer", () => {
    const entries = members
      .members()
      .filter((member) => members.excelApi(member) > ASKED_FOR && !newestClasses(ASKED_FOR).has(member.split(".")[0]!));
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
});
