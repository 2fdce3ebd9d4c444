import { afterEach, beforeEach, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeEach(async () => {
  bench = await openTestBench();
}, START_TIMEOUT);
afterEach(() => {
  bench.dispose();
});

/** The number of 32 bits under which the published engine keeps a formula of more than 64 characters. */
function published(text: string): number {
  let hash = 0;
  for (let at = 0; at < text.length; at++) hash = text.charCodeAt(at) + (hash << 6) + (hash << 16) - hash;
  return hash >>> 0;
}

/** Two long formulas that the engine as published takes for one another: among a million there are such pairs. */
function pairOfOneNumber(): [string, string] {
  const seen = new Map<number, string>();
  for (let turn = 1; turn < 1_000_000; turn++) {
    const tail = [2_654_435_761, 40_503, 668_265_263]
      .map((factor) => String(Math.imul(turn ^ factor, factor) >>> 0).padStart(10, "0"))
      .join(" ");
    const formula = `="a text long enough to be kept under a number and not as it stands: ${tail}"`;
    // The engine puts the workbook's own id before it; a hash of this kind stays equal under one and the same beginning.
    const other = seen.get(published(formula));
    if (other !== undefined) return [other, formula];
    seen.set(published(formula), formula);
  }
  throw new Error("no pair found");
}

it("two formulas that would share a number in the engine's memory are each calculated by themselves", async () => {
  const [one, other] = pairOfOneNumber();
  expect(one).not.toBe(other);
  await enter(bench, { A1: one, A2: other });
  expect([bench.valueAt("Sheet1", "A1"), bench.valueAt("Sheet1", "A2")]).toEqual([one.slice(2, -1), other.slice(2, -1)]);
});
