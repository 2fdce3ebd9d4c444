import { describe, expect, it } from "vitest";
import { call, callScalar } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import { describeFunction } from "../../src/functions/describe";

/** A made-up function: no scalar of free words but a style's name is in the registry. */
const greeting = describeFunction({
  id: "TEST.GREETING",
  summary: "Greets whoever is named.",
  parameters: { name: { kind: "text", doc: "Who is greeted." } },
  result: { kind: "text", doc: "The greeting." },
  equation: "hello name",
  sources: [{ cite: "this test", where: "here" }],
  examples: [],
  compute: ({ name }) => `hello ${name}`,
});

describe("an argument of free words", () => {
  it("reaches compute as typed, a number as the word that it shows", () => {
    expect(callScalar(greeting, ["Ada"])).toBe("hello Ada");
    expect(callScalar(greeting, [7])).toBe("hello 7");
  });

  it("is not filled in yet when the cell is empty", () => {
    for (const blank of [null, "", " ", 0]) expect(callScalar(greeting, [[[blank]]])).toBe("");
  });

  it("is lifted over a range, and hands an error on", () => {
    const broken = new CellError("#REF!", "an input is #REF!");
    expect(call(greeting, [[["Ada"], [broken], [""]]])).toEqual([["hello Ada"], [broken], [""]]);
  });
});
