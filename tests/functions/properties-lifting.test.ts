import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import { registry } from "../../src/functions/registry";
import { arbitraryCall, typedCall } from "../support/arbitrary-call";
import { allDrawn } from "../support/drawn";
import { isScalar, placesOf } from "../support/registry-probe";

/** Batches side by side: a column for each scalar argument, over the whole domain, beside the same tables. */
const rows = 4;
const liftable = registry
  .filter((descriptor) => descriptor.result.kind !== "grid" && placesOf(descriptor).some(isScalar))
  .map((descriptor) => [descriptor.id, descriptor] as const);

describe.each(liftable)("GYLE.%s of columns", (_, descriptor) => {
  const scalars = placesOf(descriptor).map(isScalar);

  it("is what it is of each row alone, in both unit systems", () => {
    let numbers = 0;
    fc.assert(
      fc.property(
        fc.array(arbitraryCall(descriptor), { minLength: rows, maxLength: rows }),
        fc.array(fc.constantFrom("metric" as const, "us" as const), { minLength: rows, maxLength: rows }),
        (cores, systems) => {
          // The first row brings the tables; an empty cell in a column is an argument left out in that row.
          const calls = cores.map((core, row) => typedCall(descriptor, core, systems[row] ?? "metric"));
          const [first = []] = calls;
          const alone = calls.map((typed) => first.map((whole, index) => (scalars[index] === true ? (typed[index] ?? null) : whole)));
          const columns = first.map((whole, index) => (scalars[index] === true ? alone.map((typed) => [typed[index]]) : whole));
          const answer = call(descriptor, columns);
          expect(answer).toEqual(alone.map((typed) => call(descriptor, typed)[0]));
          numbers += answer.flat().filter((cell) => !(cell instanceof CellError) && cell !== "").length;
        },
      ),
      { numRuns: 40 },
    );
    if (allDrawn) expect(numbers).toBeGreaterThan(3);
  });
});

describe("these columns", () => {
  it("are those of most functions", () => {
    expect(liftable.length).toBeGreaterThan(45);
  });
});
