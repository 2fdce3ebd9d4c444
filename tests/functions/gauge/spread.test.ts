import { describe, expect, it } from "vitest";
import { CellError } from "../../../src/functions/cell-error";
import type { AnyDescriptor } from "../../../src/functions/describe";
import { call } from "../../../src/functions/call";
import { functionNamed, registry } from "../../../src/functions/registry";
import { answerOf, argumentsOf, placesOf } from "../../support/registry-probe";

const spread = (...typed: unknown[]) => answerOf(functionNamed("GAUGE.SPREAD"), typed)[0]?.[0];

describe("GAUGE.SPREAD", () => {
  it("lets a sheet show 5.3 % ± 0.4 from a hydrometer good to ±0.002", () => {
    expect(spread("BEER.ABV", [[1.05, 1.01]], [[0.002, 0.002]])).toBeCloseTo(0.375, 2);
    expect(spread("gyle.beer.abv", [[1.05], [1.01]], [[0.002], [0.002]])).toBe(spread("BEER.ABV", [[1.05, 1.01]], [[0.002, 0.002]]));
  });

  it("speaks the unit of the result: 5/9 of a spread in °F is the spread in °C", () => {
    const metric = Number(spread("PACK.RESIDUAL", [[20]], [[1]]));
    expect(spread("PACK.RESIDUAL", [[68, "us"]], [[1.8, ""]])).toBeCloseTo(metric, 6);
    expect(Number(spread("HEAT.WARM", [[20, 20, 70, 2.4]], [[1, "", "", ""]]))).toBeCloseTo(
      Number(answerOf(functionNamed("HEAT.WARM"), [20, 20, 70, 2.4])[0]?.[0]) / 20,
      6,
    );
  });

  it("waits while the function itself waits, and hands on its error", () => {
    expect(spread("BEER.ABV", [[1.05, ""]], [[0.002, 0.002]])).toBe("");
    expect(spread("BEER.ABV", [[1.05, 1.06]], [[0.002, 0.002]])).toMatch(/^#VALUE! arguments: final_gravity 1\.060 is above/);
    expect(spread("BEER.ABV", [[new CellError("#DIV/0!", "an input is #DIV/0!"), 1.01]], [[0.002, 0.002]])).toBe(
      "#DIV/0! an input is #DIV/0!",
    );
  });

  it("says in words what it cannot do", () => {
    expect(spread("BEER.STRENGTH", [[1]], [[1]])).toBe(
      '#VALUE! function is the text "BEER.STRENGTH", and there is no such function; type its name as text, for example "BEER.ABV"',
    );
    expect(spread("GAUGE.SPREAD", [[1]], [[1]])).toMatch(/there is no such function/);
    expect(spread("WORT.GRAVITY", [[1]], [[1]])).toBe(
      "#VALUE! function is GYLE.WORT.GRAVITY, which takes a range (fermentables); only functions of single cells have a ± here",
    );
    expect(spread("BEER.HEX", [[10]], [[1]])).toBe(
      "#VALUE! function is GYLE.BEER.HEX, which does not answer with one number, so it has no ±",
    );
    expect(spread("BEER.ABV", [[1.05, 1.01]], [[0.002]])).toBe("#VALUE! arguments and uncertainties must have the same number of cells");
    expect(spread("BEER.EBC", [[10, 1]], [[1, ""]])).toBe("#VALUE! arguments has more cells than GYLE.BEER.EBC has arguments (1)");
    expect(spread("BEER.ABV", [[1.05, 1.01, "kit"]], [[0.002, 0.002, 1]])).toBe(
      "#VALUE! uncertainties: method has a ± but no number; leave its ± blank",
    );
    expect(spread("BEER.ABV", [[1.05, 1.01]], [[-0.002, 0]])).toBe(
      "#VALUE! uncertainties: the ± of original_gravity must be a number of 0 or more, not -0.002",
    );
  });

  it("takes the name as it is typed into a cell, and a ± that is no number for none", () => {
    const plainly = spread("BEER.ABV", [[1.05, 1.01]], [[0.002, 0.002]]);
    for (const name of [" beer.abv ", "GYLE.BEER.ABV", "=GYLE.BEER.ABV"])
      expect(spread(name, [[1.05, 1.01]], [[0.002, 0.002]])).toBe(plainly);
    expect(spread("WORT.MIX", [[20]], [[1]])).toMatch(/^#VALUE! function is GYLE\.WORT\.MIX, which takes a range \(volumes\)/);
    for (const [wrong, shown] of [
      ["a bit", 'the text "a bit"'],
      [Infinity, "what is there"],
      [NaN, "what is there"],
      [true, "TRUE"],
    ] as const) {
      expect(spread("BEER.ABV", [[1.05, 1.01]], [[0.002, wrong]])).toBe(
        `#VALUE! uncertainties: the ± of final_gravity must be a number of 0 or more, not ${shown}`,
      );
    }
    expect(spread("BEER.ABV", [[1.05, 1.01]], [[0.002, new CellError("#REF!", "an input is #REF!")]])).toBe("#REF! an input is #REF!");
    expect(spread("WORT.THIN", [[20, 1.05, 1.04, ""]], [["", "", "", 1]])).toBe(
      "#VALUE! uncertainties: units has a ± but no number; leave its ± blank",
    );
  });

  it("answers at an edge: final gravity as high as the original", () => {
    const answer = spread("BEER.ABV", [[1.05, 1.05]], [[0.002, 0.002]]);
    expect(Number(answer)).toBeGreaterThan(0.1);
    expect(answer).toBe(spread("BEER.ABV", [[1.05, 1.05]], [[0.002, 0.002]]));
  });

  it("adds what the equation itself is off by, where its source says so", () => {
    // Terrill's linear curve is good to about ±0.002: a refractometer read without any error is no better than that.
    expect(spread("BEER.REFRACTOMETER", [[12, 6, 1]], [["", 1e-9, ""]])).toBeCloseTo(0.002, 6);
    expect(spread("BEER.REFRACTOMETER", [[12, 6, 1]], [["", 0.5, ""]])).toBeCloseTo(Math.hypot(0.0034941 * 0.5, 0.002), 6);
    expect(registry.filter(({ modelSpread }) => modelSpread !== undefined).map(({ id }) => id)).toEqual([
      "MASH.ACIDITY",
      "YEAST.EXPECT",
      "BEER.REFRACTOMETER",
    ]);
  });

  const eligible = registry.filter(
    (descriptor) =>
      descriptor.result.kind === "number" &&
      placesOf(descriptor).every(
        ({ parameter }) =>
          (parameter.kind !== "list" && parameter.kind !== "table" && parameter.kind !== "block" && parameter.kind !== "cells") ||
          parameter.optional === true,
      ),
  );

  it.each(eligible.map((descriptor): [string, AnyDescriptor] => [descriptor.id, descriptor]))(
    "answers for %s, and with nothing where nothing is uncertain",
    (id, descriptor) => {
      const [example] = descriptor.examples;
      if (example === undefined) return expect.fail("no example");
      const typed = argumentsOf(descriptor, example);
      const tiny = typed.map((cell, index) =>
        typeof cell === "number" && placesOf(descriptor)[index]?.parameter.kind === "number" ? 1e-4 * Math.max(Math.abs(cell), 1e-3) : "",
      );
      const [answer] = call(functionNamed("GAUGE.SPREAD"), [id, [typed], [tiny]]).flat();
      expect(answer instanceof CellError ? answer.message : typeof answer).toBe("number");
      expect(answer).toBeGreaterThanOrEqual(0);
      expect(call(functionNamed("GAUGE.SPREAD"), [id, [typed], [typed.map(() => "")]])).toEqual([[""]]);
    },
  );

  it("is tried on most functions", () => {
    expect(eligible.length).toBeGreaterThan(35);
  });
});
