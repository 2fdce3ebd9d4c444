import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterAll(() => bench.dispose());
beforeEach(() =>
  bench.load({ id: "book", sheetOrder: ["one", "two"], sheets: { one: { id: "one", name: "One" }, two: { id: "two", name: "Two" } } }),
);

describe("a workbook whose structure is protected", () => {
  it("keeps its list of sheets and lets cells be written", async () => {
    await bench.Excel.run(async (context) => {
      const { worksheets, protection } = context.workbook;
      protection.protect();
      protection.load("protected");
      await context.sync();
      expect(protection.protected).toBe(true);
      const two = worksheets.getItem("Two");
      const attempts: (() => unknown)[] = [
        () => worksheets.add("Three"),
        () => two.delete(),
        () => {
          two.name = "Second";
        },
        () => {
          two.position = 0;
        },
        () => {
          two.visibility = "Hidden";
        },
        () => two.copy("End"),
        () => protection.protect(),
      ];
      for (const attempt of attempts) {
        attempt();
        await expect(context.sync()).rejects.toMatchObject({ code: "AccessDenied" });
      }
      two.getRange("A1").values = [[1]];
      protection.unprotect();
      worksheets.add("Three");
      await context.sync();
    });
    expect(bench.valueAt("Two", "A1")).toBe(1);
    expect(bench.snapshot().sheetOrder).toHaveLength(3);
  });

  it("asks for its password", async () => {
    await bench.Excel.run(async (context) => {
      context.workbook.protection.protect("gravity");
      await context.sync();
      context.workbook.protection.unprotect();
      await expect(context.sync()).rejects.toMatchObject({ code: "InvalidArgument" });
      context.workbook.protection.unprotect("gravity");
      context.workbook.protection.load("protected");
      await context.sync();
      expect(context.workbook.protection.protected).toBe(false);
    });
  });
});

describe("visibility", () => {
  it("has three steps, and one sheet stays in sight", async () => {
    await bench.Excel.run(async (context) => {
      const [one, two] = ["One", "Two"].map((name) => context.workbook.worksheets.getItem(name)) as [
        ReturnType<typeof context.workbook.worksheets.getItem>,
        ReturnType<typeof context.workbook.worksheets.getItem>,
      ];
      for (const visibility of ["Hidden", "VeryHidden", "Visible", "VeryHidden"] as const) {
        two.visibility = visibility;
        two.load("visibility");
        await context.sync();
        expect(two.visibility).toBe(visibility);
      }
      one.visibility = "Hidden";
      await expect(context.sync()).rejects.toMatchObject({ code: "InvalidArgument" });
      one.delete();
      await expect(context.sync()).rejects.toMatchObject({ code: "InvalidArgument" });
    });
  });
});

it("the workbook's properties are texts that stay", async () => {
  const texts = {
    title: "Season",
    author: "Quillmarsh Brew Club",
    subject: "beer",
    comments: "for pupils",
    keywords: "gyle",
    category: "log",
    company: "club",
    manager: "none",
  };
  await bench.Excel.run(async (context) => {
    Object.assign(context.workbook.properties, texts);
    await context.sync();
  });
  await bench.load(bench.snapshot());
  await bench.Excel.run(async (context) => {
    const properties = context.workbook.properties.load("title,author,subject,comments,keywords,category,company,manager");
    await context.sync();
    expect(properties.toJSON()).toEqual(texts);
  });
});
