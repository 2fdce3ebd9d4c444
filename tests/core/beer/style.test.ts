import { describe, expect, it } from "vitest";
import { fitOf, styleNamed, styles, stylesLike } from "../../../src/core/beer/style";

describe("the table of styles", () => {
  it("holds 102 styles with codes and names of their own, each range from low to high", () => {
    expect(styles).toHaveLength(102);
    expect(new Set(styles.map(({ code }) => code)).size).toBe(102);
    expect(new Set(styles.map(({ name }) => name)).size).toBe(102);
    for (const { code, name, originalGravity, finalGravity, abvPercent, ibu, srm } of styles) {
      expect(code).toMatch(/^\d{1,2}[A-I][a-g]?$/);
      expect(name).toMatch(/^[A-Z][^\d]+[^\d ]$/);
      for (const [low, high] of [originalGravity, finalGravity, abvPercent, ibu, srm]) expect(low).toBeLessThanOrEqual(high);
      expect(originalGravity[0]).toBeGreaterThan(1.02);
      expect(originalGravity[1]).toBeLessThan(1.135);
      expect(finalGravity[0]).toBeLessThan(originalGravity[0]);
      expect(srm[1]).toBeLessThanOrEqual(40);
    }
  });

  it("fits itself: the alcohol that the middles of the gravities make is near the middle of the alcohol", () => {
    const middle = ([low, high]: readonly [number, number]) => (low + high) / 2;
    // Eisbock is concentrated by freezing; Saison's gravities belong to one of its three strengths.
    const off = styles
      .filter(({ code }) => code !== "9B" && code !== "25B")
      .map(({ originalGravity, finalGravity, abvPercent }) =>
        Math.abs(131.25 * (middle(originalGravity) - middle(finalGravity)) - middle(abvPercent)),
      );
    expect(Math.max(...off)).toBeLessThan(1.2);
  });
});

describe("styleNamed", () => {
  it("finds a code and a name, however they are written", () => {
    for (const text of ["5B", "5b", " Kölsch ", "KOLSCH"]) expect(styleNamed(text)?.code).toBe("5B");
    expect(styleNamed("Sahti")?.code).toBe("27I");
    expect(styleNamed("Historical: Sahti")?.code).toBe("27I");
    expect(styleNamed("stout")).toBeUndefined();
  });

  it("finds every style by its code, its name, and the end of its name", () => {
    for (const style of styles)
      for (const text of [style.code, style.name, style.name.split(": ").at(-1) ?? ""]) expect(styleNamed(text)).toBe(style);
  });

  it("knows what somebody may have meant", () => {
    expect(stylesLike("stout").map(({ code }) => code)).toContain("15B");
    expect(stylesLike("no such beer")).toEqual([]);
  });
});

describe("fitOf", () => {
  it("counts the ends as inside, as they are printed", () => {
    for (const gravity of [1.036, 1.0356, 1.044, 1.0444]) expect(fitOf(gravity, [1.036, 1.044], 0.001)).toBe("inside");
    expect(fitOf(1.0354, [1.036, 1.044], 0.001)).toBe("below");
    expect(fitOf(1.0446, [1.036, 1.044], 0.001)).toBe("above");
    // Half a step, and the hair by which binary fractions miss it, still rounds to the end.
    expect([fitOf(1.0355, [1.036, 1.044], 0.001), fitOf(1.0445, [1.036, 1.044], 0.001)]).toEqual(["inside", "inside"]);
    expect([fitOf(1.03549, [1.036, 1.044], 0.001), fitOf(1.04451, [1.036, 1.044], 0.001)]).toEqual(["below", "above"]);
  });
});
