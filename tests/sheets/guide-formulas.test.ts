import { afterAll, beforeAll, expect, it } from "vitest";
import { guidePages } from "../../src/build/guide/pages";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { benchTimeout, openBatchBench } from "../support/batch-bench";

/* The formulas that the guide tells somebody to type, as they stand there, with cells of a sheet of one's own. */

const page = guidePages.find(({ file }) => file === "formulas.html")!;
const words = page.sections.flatMap(({ paragraphs = [], steps = [] }) => [...paragraphs, ...steps]).join("\n");
/** What stands as code and names cells. */
const formulas = [...words.matchAll(/<code>(=GYLE\.[^<]*\b[A-Z]\d[^<]*)<\/code>/g)].map(([, formula = ""]) => formula);

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

const type = async (cells: Readonly<Record<string, string | number>>): Promise<void> => {
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    for (const [cell, content] of Object.entries(cells)) sheet.getRange(cell).formulas = [[content]];
    await context.sync();
  });
  await bench.calculate();
};

it("the guide's first formula shows what the guide says, and follows its cells", async () => {
  expect(formulas).toHaveLength(2);
  const shows = Number(/B4 shows ([\d.]+)/.exec(words)?.[1]);
  await type({ B2: 1.05, B3: 1.01, B4: formulas[0]! });
  expect(shows).toBeGreaterThan(5);
  expect(bench.valueAt("Sheet1", "B4")).toBeCloseTo(shows, 2);
  await type({ B3: 1.02 });
  expect(Number(bench.valueAt("Sheet1", "B4"))).toBeLessThan(shows - 1);
});

it("the guide's column gives one answer for each reading, and none for an empty one", async () => {
  // By the sugar tables of NBS Circular 440 (from memory): 1.0400 is 9.99 °P, 1.0600 is 14.74 °P.
  await type({ B2: 1.04, B3: "", B4: 1.06, D2: formulas[1]! });
  const [first, empty, third, after] = ["D2", "D3", "D4", "D5"].map((cell) => bench.valueAt("Sheet1", cell));
  expect(first).toBeCloseTo(9.99, 1);
  expect(empty ?? "").toBe("");
  expect(third).toBeCloseTo(14.74, 1);
  expect(after ?? "").toBe("");
});
