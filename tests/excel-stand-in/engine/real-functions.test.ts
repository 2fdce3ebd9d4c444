import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { FunctionsMetadata } from "../../../src/excel-stand-in/engine/custom-functions-metadata";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { functionsJson } from "../../../src/functions/metadata";
import { registry } from "../../../src/functions/registry";
import type { Example } from "../../../src/functions/describe";
import { loadHeadlessBench } from "../../support/headless-bench";
import { START_TIMEOUT } from "../support/test-bench";

/** Every example of every function, typed as a formula: the whole path from the cell to the core and back. */
const SPACING = 80;
const examples = registry
  .flatMap((descriptor) =>
    (descriptor.examples as readonly Example[]).map((example, index) => ({
      name: `${descriptor.id} ${index + 1}`,
      example,
      formula: `=GYLE.${descriptor.id}(${example.arguments.map(literal).join(",")})`,
    })),
  )
  .map((one, index) => ({ ...one, row: index * SPACING + 1 }));

let bench: HeadlessBench;
beforeAll(async () => {
  const script = await build({ entryPoints: ["src/addin/functions.ts"], bundle: true, format: "iife", write: false, logLevel: "error" });
  const { createHeadlessBench } = await loadHeadlessBench();
  bench = createHeadlessBench({
    metadata: functionsJson(registry) as unknown as FunctionsMetadata,
    functionsScript: script.outputFiles[0]!.text,
  });
  await bench.Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    for (const { formula, row } of examples) sheet.getRange(`A${row}`).formulas = [[formula]];
    await context.sync();
  });
  await bench.calculate();
}, START_TIMEOUT);
afterAll(() => bench.dispose());

describe("the functions script in the grid", () => {
  it("knows every function of the registry", () => {
    expect(bench.engine.functions.functions.size).toBe(registry.length);
    expect(examples.length).toBeGreaterThanOrEqual(registry.length);
  });

  it.each(examples)("$name: $formula", ({ example, row }) => {
    const expected = Array.isArray(example.value) ? example.value : [[example.value]];
    expected.forEach((line, r) =>
      line.forEach((value, c) =>
        expectValue(bench.valueAt("Sheet1", `${String.fromCharCode(65 + c)}${row + r}`), value, example.tolerance),
      ),
    );
  });
});

function expectValue(actual: unknown, expected: unknown, tolerance = 1e-9): void {
  if (typeof expected !== "number") return expect(actual).toBe(expected);
  expect(actual).toBeTypeOf("number");
  expect(Math.abs((actual as number) - expected)).toBeLessThanOrEqual(tolerance);
}

function literal(argument: Example["arguments"][number]): string {
  if (argument === null) return "";
  if (typeof argument === "string") return `"${argument.replaceAll('"', '""')}"`;
  if (typeof argument === "boolean") return argument ? "TRUE" : "FALSE";
  if (typeof argument === "number") return String(argument);
  return `{${argument.map((row) => row.map((cell) => literal(cell) || '""').join(",")).join(";")}}`;
}
