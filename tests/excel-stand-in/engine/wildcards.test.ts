import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { wildcards } from "../../../src/excel-stand-in/engine/wildcards";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

/** What Excel's help on wildcards says, letter by letter: slow, but there is nothing in it to get wrong. */
function asDefined(pattern: string, text: string): boolean {
  if (pattern === "") return text === "";
  const [sign, rest] = [pattern[0]!, pattern.slice(1)];
  if (sign === "*") return asDefined(rest, text) || (text !== "" && asDefined(pattern, text.slice(1)));
  if (text === "") return false;
  if (sign === "?") return asDefined(rest, text.slice(1));
  if (sign === "~" && rest !== "") return rest[0]!.toLowerCase() === text[0]!.toLowerCase() && asDefined(rest.slice(1), text.slice(1));
  return sign.toLowerCase() === text[0]!.toLowerCase() && asDefined(rest, text.slice(1));
}

const letters = (alphabet: string, maxLength: number) =>
  fc.array(fc.constantFrom(...alphabet), { maxLength }).map((drawn) => drawn.join(""));

describe("a text with wildcards", () => {
  it("lets through what Excel's definition lets through", () => {
    fc.assert(
      fc.property(letters("aB*?~", 7), letters("abB*~", 8), (pattern, text) => {
        expect(wildcards(pattern).matches(text)).toBe(asDefined(pattern, text));
      }),
      { numRuns: 5000 },
    );
  });

  it("is found where it begins first", () => {
    fc.assert(
      fc.property(letters("ab*?~", 5), letters("ab~", 8), (pattern, text) => {
        const starts = Array.from({ length: text.length + 1 }, (_, at) => at).filter((at) => asDefined(`${pattern}*`, text.slice(at)));
        // A ~ at the end stands for itself; with the * of this test behind it, it would stand for that.
        fc.pre(!/(?:^|[^~])(?:~~)*~$/u.test(pattern));
        expect(wildcards(pattern).indexIn(text)).toBe(starts[0] ?? -1);
      }),
      { numRuns: 5000 },
    );
  });

  it("counts a letter outside the first 65,536 as one, and where it stands as Excel does", () => {
    expect(wildcards("?").matches("🍺")).toBe(true);
    expect(wildcards("b").indexIn("🍺b")).toBe(2);
  });
});

describe("a pattern of many *", () => {
  let bench: HeadlessBench;
  beforeAll(async () => {
    bench = await openTestBench();
  }, START_TIMEOUT);
  afterAll(() => bench.dispose());

  it("comes to an end in every function that takes wildcards", async () => {
    const pattern = `"${"a*".repeat(25)}b"`;
    const functions = [
      `COUNTIF(A1:A3,${pattern})`,
      `MATCH(${pattern},A1:A3,0)`,
      `XLOOKUP(${pattern},A1:A3,A1:A3,0,2)`,
      `SEARCH(${pattern},A1)`,
      `VLOOKUP(${pattern},A1:A3,1,FALSE)`,
    ];
    await enter(bench, {
      A1: `=REPT("a",3000)`,
      A2: `="b"&REPT("a",3000)`,
      A3: "ab",
      ...Object.fromEntries(functions.map((call, row) => [`C${row + 1}`, `=${call}`])),
    });
    expect(functions.map((_, row) => bench.valueAt("Sheet1", `C${row + 1}`))).toEqual([0, "#N/A", 0, "#VALUE!", "#N/A"]);
    expect(bench.engine.runaways.cells()).toEqual([]);
  });
});
