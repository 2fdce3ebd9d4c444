import { number } from "../../src/functions/vocabulary";

/** For functions made up in tests of the call wrapper: what a description must have besides, whatever the function does. */
export const words = {
  summary: "Made up for a test of the door.",
  equation: "none",
  sources: [{ cite: "this test", where: "here" }],
  examples: [],
};

export const count = (doc: string, blank: "missing" | "zero" = "missing") =>
  number("number", { doc, limits: { atLeast: -1e6, atMost: 1e6 }, typical: 1, blank });
