import { describe, expect, it } from "vitest";
import { functionNamed, registry } from "../../src/functions/registry";
import { answerOf, argumentsOf, placesOf, withArgument } from "../support/registry-probe";

const ask = (id: string, ...typed: unknown[]) => answerOf(functionNamed(id), typed);
const one = (id: string, ...typed: unknown[]) => ask(id, ...typed)[0]?.[0];

describe("a salt of which there is nothing", () => {
  const base = [[60], [10], [5], [15], [25], [180]];
  const rows = (mass: unknown) => [
    ["gypsum", 4],
    ["table salt", mass],
    ["chalk", ""],
  ];

  it.each([0, null, ""])("leaves the others standing (%j)", (mass) => {
    expect(ask("WATER.IONS", rows(mass), 20, base)).toEqual(ask("WATER.IONS", [["gypsum", 4]], 20, base));
  });

  it("leaves the water as it was when it is the only one", () => {
    expect(ask("WATER.IONS", [["gypsum", 0]], 20, base).map(([, mg]) => mg)).toEqual(base.flat());
  });
});

describe("a colour above what the curve was stated for", () => {
  const black = [[2, 500]];

  it("is shown, has a colour on the screen, and a place in a style", () => {
    const srm = one("WORT.COLOUR", black, 10);
    // Morey's curve by hand: MCU = 8.3454 × 2 × 500 / 10 = 834.5, 1.4922 × 834.5^0.6859 = 150.5.
    expect(srm).toBeCloseTo(150.5, 0);
    expect(one("WORT.COLOUR", black, 10, "EBC")).toBeTypeOf("number");
    expect(one("BEER.HEX", srm)).toMatch(/^#[0-4][0-9A-F]0000$|^#000000$/);
    expect(ask("BEER.STYLE", "20C", null, null, null, null, srm)[4]?.[4]).toBe("above");
  });

  it("is refused where no grist gets, and then says what to look at", () => {
    expect(one("WORT.COLOUR", [[20, 500]], 10)).toMatch(/^#N\/A .*check malt colours, volume, units and scale/);
  });
});

describe("an alkalinity that is not known", () => {
  it.each(["", null])("makes no answer, while distilled water's 0 makes one (%j)", (blank) => {
    expect(one("WATER.ALKALINITY", [[blank]], 60, 10)).toBe("");
    expect(one("WATER.ALKALINITY", 0, 60, 10)).toBeLessThan(0);
    expect(one("WATER.ACID", 20, [[blank]], 30)).toBe("");
    // All of the alkalinity taken out, because the target was not yet typed, would be the most acid there is.
    expect(one("WATER.ACID", 20, 150, [[blank]])).toBe("");
    expect(one("WATER.ACID", 20, 150, 0)).toBeTypeOf("number");
  });
});

describe("a word that is in every JavaScript object", () => {
  const words = ["constructor", "toString", "valueOf", "hasOwnProperty", "__proto__", "isPrototypeOf"];

  it.each(registry.map((descriptor) => [descriptor.id, descriptor] as const))("is to GYLE.%s a word like any other", (_, descriptor) => {
    const [example] = descriptor.examples;
    const typed = example ? argumentsOf(descriptor, example) : [];
    for (const word of words) {
      for (const { index } of placesOf(descriptor)) {
        const shown = JSON.stringify(answerOf(descriptor, withArgument(typed, index, word)));
        expect(shown).not.toMatch(/native code|function Object|\[object|internal error/);
      }
    }
  });
});

describe("alcohol of a beer that did not ferment", () => {
  it.each(["extract", "simple", "kit"])("is none, not a hair less (%s)", (method) => {
    for (const gravity of [1.05, 1.0123, 0.999, 1]) {
      expect(one("BEER.ABV", gravity, gravity + 5e-10, method)).toBe(0);
      expect(one("BEER.ABW", gravity, gravity + 5e-10, method)).toBe(0);
      expect(one("BEER.ABV", gravity, gravity, method)).toBeGreaterThanOrEqual(0);
    }
    expect(one("BEER.ENERGY", 1.05, 1.05 + 5e-10, 500)).toBeGreaterThan(0);
  });
});

describe("a yield that is typed as points", () => {
  const bill = (typed: number) => [[3, typed, "extract"]];

  it.each([
    [36, "77.9"],
    [25, "54.1"],
    [46, "99.6"],
    [20, "43.3"],
  ])("is refused, with the yield that was meant (%s)", (points, meant) => {
    const refused = `#VALUE! fermentables row 1: yield is ${points} %; no malt, extract or sugar gives 20 to 47 % (${points} looks like points: GYLE.WORT.YIELD(${points},"us") is ${meant})`;
    expect(one("WORT.GRAVITY", bill(points), 20, 75)).toBe(refused);
    expect(one("WORT.EFFICIENCY", [[3, points, "mash"]], 20, 1.04)).toBe(refused);
  });

  it("says the same of points per kilogram", () => {
    expect(one("WORT.GRAVITY", bill(300), 20, 75)).toMatch(/at most 100 % \(300 looks like points: GYLE\.WORT\.YIELD\(300\) is 77\.8\)$/);
    expect(one("WORT.GRAVITY", bill(0.8), 20, 75)).toMatch(/\(write 80 for 80 %\)$/);
  });

  it("lets the poorest malt and the pulp of fruit pass", () => {
    for (const typed of [5, 12, 19.9, 47, 54, 100]) expect(one("WORT.GRAVITY", bill(typed), 20, 75)).toBeTypeOf("number");
  });
});
