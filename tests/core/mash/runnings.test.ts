import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { runnings } from "../../../src/core/mash/runnings";
import { decoctionVolume } from "../../../src/core/mash/decoction";
import { call } from "../../../src/functions/call";
import { functionNamed } from "../../../src/functions/registry";
import { readReferenceTable } from "../../support/reference-table";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("the runnings", () => {
  it("have the gravities of a tun that was drained gram by gram, to a quarter of a point", () => {
    const rows = readReferenceTable("mash/running-off.csv").filter((row) => row.function === "MASH.RUNNINGS");
    expect(rows).toHaveLength(5);
    for (const row of rows) {
      const answer = call(functionNamed("MASH.RUNNINGS"), JSON.parse(row.arguments) as unknown[]);
      const expected = JSON.parse(row.expected) as (string | number)[][];
      for (const [index, [what, , gravity]] of expected.entries())
        if (typeof gravity === "number")
          expect(Math.abs(Number(answer[index]?.[2]) - gravity), `${what} of ${row.arguments}`).toBeLessThan(0.00025);
    }
  });

  it("keep water and extract: what runs off and what stays is what went in, and the sugar leaves with the wort", () => {
    fc.assert(
      fc.property(
        number(2, 10),
        number(0.5, 0.8),
        number(2.5, 6),
        fc.array(number(1, 15), { maxLength: 4 }),
        (grain, share, thickness, sparges) => {
          const extract = share * grain;
          const { each, together } = runnings(grain, extract, thickness * grain, sparges, 1, 0.5);
          expect(each).toHaveLength(1 + sparges.length);
          expect(each[0]?.volumeL).toBeCloseTo((thickness - 1) * grain - 0.5, 9);
          expect(together.extractKg).toBeLessThan(extract);
          expect(together.extractKg).toBeCloseTo(
            each.reduce((sum, one) => sum + one.extractKg, 0),
            9,
          );
          // Each is thinner than the one before, and all together between the first and the last.
          for (const [index, one] of each.slice(1).entries()) expect(one.gravity).toBeLessThan(each[index]?.gravity ?? 0);
          // As much water as was added runs off again: mixing shrinks by next to nothing.
          for (const [index, litres] of sparges.entries()) expect(each[index + 1]?.volumeL).toBeCloseTo(litres, 1);
        },
      ),
    );
  });

  it("win most when the two are alike, and more in two batches than in one", () => {
    const won = (mashL: number, ...sparges: number[]) => runnings(5, 3.8, mashL, sparges, 1, 0).together.extractKg;
    expect(won(16, 11)).toBeGreaterThan(won(14, 13));
    expect(won(16, 11)).toBeGreaterThan(won(18, 9));
    expect(won(15, 6, 6)).toBeGreaterThan(won(15, 12));
    expect(won(15, 12)).toBeGreaterThan(won(27));
  });

  it("are refused where nothing would run off", () => {
    expect(() => runnings(5, 3.8, 5, [], 1, 0)).toThrow(/nothing would run off/);
    expect(() => runnings(5, 3.8, 6, [], 1, 1)).toThrow(/nothing would run off/);
  });
});

describe("a decoction", () => {
  it("is none for no warming, all for the boil, and refuses what it cannot do", () => {
    expect(decoctionVolume(20, 60, 60, 100)).toBe(0);
    expect(decoctionVolume(20, 60, 99.9, 100)).toBeCloseTo(20, 0);
    expect(() => decoctionVolume(20, 60, 55, 100)).toThrow(/cannot cool/);
    expect(() => decoctionVolume(20, 60, 100, 100)).toThrow(/below boils_at/);
  });
});
