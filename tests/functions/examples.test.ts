import { describe, expect, it } from "vitest";
import type { Example } from "../../src/functions/describe";
import { registry } from "../../src/functions/registry";
import { answerOf, argumentsOf } from "../support/registry-probe";

/** Numbers without a tolerance are meant exactly, up to the rounding of binary sums. */
function expectAnswer(answer: (string | number)[][], { value, tolerance = 1e-9 }: Example): void {
  const expected = Array.isArray(value) ? value : [[value]];
  expect(answer.map((row) => row.length)).toEqual(expected.map((row) => row.length));
  for (const [row, cells] of expected.entries()) {
    for (const [column, wanted] of cells.entries()) {
      const found = answer[row]?.[column];
      if (typeof wanted === "string" || typeof found !== "number") expect(found, `row ${row + 1}, column ${column + 1}`).toBe(wanted);
      else expect(Math.abs(found - wanted), `${found} for ${wanted}`).toBeLessThanOrEqual(tolerance + 1e-12 * Math.abs(wanted));
    }
  }
}

describe.each(registry.map((descriptor) => [descriptor.id, descriptor] as const))("GYLE.%s", (_, descriptor) => {
  it("has two examples or more", () => {
    expect(descriptor.examples.length).toBeGreaterThanOrEqual(2);
  });

  it.each(descriptor.examples.map((example) => [JSON.stringify(example.arguments), example] as const))(
    "answers %s as its example says",
    (__, example) => {
      expect(example.arguments.length).toBeLessThanOrEqual(Object.keys(descriptor.parameters as object).length);
      expectAnswer(answerOf(descriptor, argumentsOf(descriptor, example)), example);
      expect(example.from.length, "where the value comes from").toBeGreaterThan(10);
    },
  );
});

describe("the comparison of an answer with its example", () => {
  const example = { arguments: [], from: "made up for this test" };

  it("sees a number off by more than the tolerance, a wrong text, a wrong shape", () => {
    expect(() => expectAnswer([[1.02]], { ...example, value: 1, tolerance: 0.01 })).toThrow();
    expect(() => expectAnswer([[1]], { ...example, value: 1 + 1e-8 })).toThrow();
    expect(() => expectAnswer([["#VALUE! no"]], { ...example, value: 1, tolerance: 9 })).toThrow();
    expect(() => expectAnswer([["close"]], { ...example, value: "within" })).toThrow();
    expect(() => expectAnswer([[1, 2]], { ...example, value: [[1], [2]] })).toThrow();
    expect(() => expectAnswer([[1, 2]], { ...example, value: 1 })).toThrow();
  });

  it("lets a number within the tolerance pass", () => {
    expect(() => expectAnswer([[1.009, "L"]], { ...example, value: [[1, "L"]], tolerance: 0.01 })).not.toThrow();
  });
});
