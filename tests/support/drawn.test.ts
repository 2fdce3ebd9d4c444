import fc from "fast-check";
import { expect, it } from "vitest";
import { share } from "./drawn";

it.each([[40], [undefined]])("the share of made-up inputs is the one asked for, of %s as of fast-check's own 100", (numRuns) => {
  let tried = 0;
  fc.assert(
    fc.property(fc.nat(), () => {
      tried += 1;
    }),
    numRuns === undefined ? undefined : { numRuns },
  );
  expect(tried).toBe(Math.ceil((numRuns ?? 100) * share));
});
