import { expect, it } from "vitest";
import { mentionsIn } from "../../src/functions/mentions";

it("takes the functions out of a text, and leaves the words between them as they are", () => {
  expect(mentionsIn("Ask GYLE.PACK.CHECK first (GYLE.LOG.STEADY).", "PACK.PRIMING")).toEqual([
    { words: "Ask " },
    { id: "PACK.CHECK" },
    { words: " first (" },
    { id: "LOG.STEADY" },
    { words: ")." },
  ]);
  expect(mentionsIn("GYLE.PACK.CHECK", "BEER.ABV")).toEqual([{ id: "PACK.CHECK" }]);
});

it("leaves the function itself, and what is none, as words", () => {
  expect(mentionsIn("GYLE.PACK.CHECK and GYLE.PACK.NOTHING", "PACK.CHECK").every((piece) => "words" in piece)).toBe(true);
});
