import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import type { DocumentFile, DocumentSlice, FileResult } from "../../../src/excel-stand-in/excel/document-file";
import { openWorkbook } from "../../../src/excel-stand-in/xlsx";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(() => bench.load({ id: "book", sheetOrder: ["one"], sheets: { one: { id: "one", name: "Sheet1" } } }));

const getFile = (options: { sliceSize?: number }, type = "compressed") =>
  new Promise<FileResult<DocumentFile>>((resolve) => bench.Office.context.document.getFileAsync(type, options, resolve));

describe("getFileAsync", () => {
  it("gives the workbook's file slice by slice", async () => {
    await bench.Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").getRange("A1:A2").formulas = [["mine"], ["=1+1"]];
    });
    const result = await getFile({ sliceSize: 1000 });
    if (result.status !== "succeeded") throw new Error("no file");
    const file = result.value;
    expect(file.sliceCount).toBe(Math.ceil(file.size / 1000));
    const bytes: number[] = [];
    for (let index = 0; index < file.sliceCount; index++) {
      const slice = await new Promise<DocumentSlice>((resolve, reject) =>
        file.getSliceAsync(index, (answer) =>
          answer.status === "succeeded" ? resolve(answer.value) : reject(new Error(answer.error.message)),
        ),
      );
      expect(slice.data).toHaveLength(slice.size);
      expect(slice.index).toBe(index);
      bytes.push(...slice.data);
    }
    expect(bytes).toHaveLength(file.size);
    const { snapshot, computed } = await openWorkbook(new Uint8Array(bytes));
    const [id = ""] = snapshot.sheetOrder;
    expect([snapshot.sheets[id]?.name, snapshot.sheets[id]?.cellData?.[0]?.[0]?.v, computed[id]?.values[1]?.[0]]).toEqual([
      "Sheet1",
      "mine",
      2,
    ]);
    await new Promise<void>((resolve) => file.closeAsync(() => resolve()));
  });

  it("refuses other kinds, slices that are too large, and a third file", async () => {
    expect(await getFile({}, "pdf")).toEqual({
      status: "failed",
      error: { code: 1009, name: "Error", message: "The bench has the workbook as a compressed file only." },
    });
    expect(await getFile({ sliceSize: 5_000_000 })).toMatchObject({
      status: "failed",
      error: { message: "The slice size must lie between 1 and 4194304 bytes." },
    });
    const [first, second, third] = [await getFile({}), await getFile({}), await getFile({})];
    expect([first.status, second.status, third.status]).toEqual(["succeeded", "succeeded", "failed"]);
    if (third.status === "failed") expect(third.error.message).toBe("Two files are open already: close one first.");
    for (const one of [first, second]) if (one.status === "succeeded") one.value.closeAsync();
    const again = await getFile({});
    expect(again.status).toBe("succeeded");
    if (again.status !== "succeeded") return;
    const file = again.value;
    const slice = (index: number) => new Promise<FileResult<DocumentSlice>>((resolve) => file.getSliceAsync(index, resolve));
    expect(await slice(file.sliceCount)).toMatchObject({ status: "failed", error: { message: "There is no such slice." } });
    expect((await slice(0)).status).toBe("succeeded");
    file.closeAsync();
    expect(await slice(0)).toMatchObject({ status: "failed", error: { message: "There is no such slice." } });
  });
});

describe("settings", () => {
  it("are added, read, changed and deleted", async () => {
    await bench.Excel.run(async (context) => {
      const { settings } = context.workbook;
      settings.add("paper", "a4");
      const [paper, none] = [settings.getItem("paper").load("value"), settings.getItemOrNullObject("none")];
      settings.load("items/key");
      const count = settings.getCount();
      await context.sync();
      expect([paper.value, none.isNullObject, settings.items.map(({ key }) => key), count.value]).toEqual(["a4", true, ["paper"], 1]);
      paper.value = { size: "letter" };
      await context.sync();
      expect(bench.host.extras.of("book").settings).toEqual({ paper: { size: "letter" } });
      paper.delete();
      await context.sync();
      expect(bench.host.extras.of("book").settings).toEqual({});
    });
  });
});

describe("another workbook", () => {
  it("is handed to the host as bytes", async () => {
    await bench.Excel.createWorkbook(btoa("PK file"));
    await bench.Excel.createWorkbook();
    expect(bench.opened.map((bytes) => bytes && String.fromCharCode(...bytes))).toEqual(["PK file", undefined]);
    await expect(bench.Excel.createWorkbook("***")).rejects.toMatchObject({ code: "InvalidArgument" });
  });
});

it.each([
  ["ExcelApi", "1.1", true],
  ["ExcelApi", "1.9", true],
  ["ExcelApi", "1.20", true],
  ["ExcelApi", "1.21", false],
  ["ExcelApi", "2.0", false],
  ["excelapi", undefined, true],
  ["SharedRuntime", "1.1", true],
  ["SharedRuntime", "1.2", false],
  ["CompressedFile", undefined, true],
  ["DialogApi", "1.1", false],
  ["WordApi", "1.1", false],
] as const)("requirement set %s %s: %s", (name, version, supported) => {
  expect(bench.Office.context.requirements.isSetSupported(name, version)).toBe(supported);
});

it("says where it runs, as onReady does", async () => {
  const { platform } = await bench.Office.onReady();
  expect(bench.Office.context.diagnostics.platform).toBe(platform);
});

it("the theme is that of the moment, with its paper and its ink", () => {
  const before = bench.Office.context.officeTheme;
  expect([before.isDarkTheme, before.bodyBackgroundColor, before.bodyForegroundColor]).toEqual([false, "#FFFFFF", "#1F1F1F"]);
  bench.host.theme = { bodyBackgroundColor: "#000000", bodyForegroundColor: "#FFFF00", isDarkTheme: true };
  const { bodyBackgroundColor, bodyForegroundColor, isDarkTheme } = bench.Office.context.officeTheme;
  expect([isDarkTheme, bodyBackgroundColor, bodyForegroundColor]).toEqual([true, "#000000", "#FFFF00"]);
  // What was handed out before does not follow.
  expect(before.isDarkTheme).toBe(false);
  bench.host.theme = before;
});
