import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import type { FunctionMetadata, FunctionsMetadata } from "../../../src/excel-stand-in/engine/custom-functions-metadata";
import { loadHeadlessBench } from "../../support/headless-bench";

const parameter = (name: string, optional = false) => ({ name, type: "any", dimensionality: "matrix", optional });

/** Functions made for these tests, in the metadata shape of our own: every parameter a matrix of anything. */
const functions: FunctionMetadata[] = [
  {
    id: "SEE",
    name: "SEE",
    description: "What arrives.",
    parameters: [parameter("first"), parameter("second", true), parameter("third", true)],
    allowErrorForDataTypeAny: true,
  },
  { id: "SEE.STRICT", name: "SEE.STRICT", parameters: [parameter("first")] },
  { id: "GAP", name: "GAP", parameters: [parameter("high"), parameter("low")] },
  { id: "STEPS", name: "STEPS", parameters: [parameter("count")] },
  { id: "FAIL", name: "FAIL", parameters: [parameter("how")] },
];
const metadata: FunctionsMetadata = { functions };

/** What functions.js would be: a classic script that knows only the global CustomFunctions. */
const functionsScript = `
  CustomFunctions.associate("SEE", (a, b, c, invocation) => [[JSON.stringify([a, b, c]) + (invocation ? "" : " no invocation")]]);
  CustomFunctions.associate({
    "SEE.STRICT": (a) => [[JSON.stringify(a)]],
    GAP: (high, low) => [[high[0][0] - low[0][0]]],
    STEPS: (count) => Array.from({ length: count[0][0] }, (_, row) =>
      ["step " + (row + 1), row * 10, row === 1 ? new CustomFunctions.Error(CustomFunctions.ErrorCode.notAvailable, "no second value") : ""]),
    FAIL: (how) => {
      if (how[0][0] === "plain") throw new Error("plain failure");
      if (how[0][0] === "ragged") return [[1, 2], [3]];
      if (how[0][0] === "infinite") return [[Infinity]];
      if (how[0][0] === "number") return 7;
      throw new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidNumber, "out of range");
    },
  });
`;

export async function openTestBench(): Promise<HeadlessBench> {
  const { createHeadlessBench } = await loadHeadlessBench();
  return createHeadlessBench({ metadata, functionsScript });
}

/** Enters values and formulas as a program would, and waits for the results. */
export async function enter(
  bench: HeadlessBench,
  cells: Record<string, string | number | boolean | null>,
  sheetName = "Sheet1",
): Promise<void> {
  const sheet = bench.univerAPI.getActiveWorkbook()!.getSheetByName(sheetName)!;
  for (const [address, value] of Object.entries(cells)) {
    const isFormula = typeof value === "string" && value.startsWith("=");
    sheet.getRange(address).setValue(value === null ? { v: null, f: null } : isFormula ? { f: value } : value);
  }
  await bench.calculate();
}

/** The results of many formulas, entered together, far from the other cells and with room to spill. */
export async function evaluateAll(bench: HeadlessBench, formulas: readonly string[]): Promise<Map<string, unknown>> {
  const cells = formulas.map((formula, index) => [`P${100 + index * 8}`, formula] as const);
  await enter(bench, Object.fromEntries(cells));
  const results = new Map(cells.map(([cell, formula]) => [formula, bench.valueAt("Sheet1", cell) as unknown]));
  await enter(bench, Object.fromEntries(cells.map(([cell]) => [cell, null])));
  return results;
}

/** Bundling and starting the grid can take long on a busy machine. */
export const START_TIMEOUT = 120_000;
