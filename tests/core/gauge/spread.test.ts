import { describe, expect, it } from "vitest";
import { BrewingError } from "../../../src/core/brewing-error";
import { linearSpread, sampledSpread, spreadOf, type Measurand } from "../../../src/core/gauge/spread";
import { normalHypercube, normalQuantile, uniformDraws } from "../../../src/core/math/normal-draws";

describe("the minimal standard generator", () => {
  it("is the one whose 10,000th number from 1 is 1043618065 (Park and Miller 1988)", () => {
    const [ours, theirs] = [uniformDraws(), uniforms(20081)];
    for (let count = 0; count < 100; count += 1) expect(ours()).toBe(theirs() / 2147483647);
    const fromOne = uniforms(1);
    expect(Array.from({ length: 10000 }, fromOne).at(-1)).toBe(1043618065);
  });

  const uniforms = (start: number) => {
    let state = start;
    return () => (state = (state * 16807) % 2147483647);
  };
});

describe("normalQuantile", () => {
  /** Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, Table 26.5: x for a tail Q. */
  it.each([
    [0.5, 0],
    [0.4, 0.25335],
    [0.25, 0.67449],
    [0.1, 1.28155],
    [0.05, 1.64485],
    [0.025, 1.95996],
    [0.01, 2.32635],
    [0.001, 3.09023],
    [0.0001, 3.71902],
    [0.000001, 4.75342],
  ])("leaves a tail of %s beyond %s", (tail, x) => {
    expect(normalQuantile(1 - tail)).toBeCloseTo(x, 4);
    expect(normalQuantile(tail)).toBeCloseTo(-x, 4);
  });

  it("undoes the normal distribution, summed up in small steps, and rises without a jump", () => {
    // Simpson's rule over the density from −12 to x.
    const below = (x: number): number => {
      const steps = 4000;
      const h = (x + 12) / steps;
      let sum = 0;
      for (let i = 0; i <= steps; i += 1) sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp(-((-12 + i * h) ** 2) / 2);
      return (sum * h) / 3 / Math.sqrt(2 * Math.PI);
    };
    for (const p of [1e-13, 1e-11, 1e-6, 0.0749, 0.0751, 0.3, 0.9249, 0.9251]) expect(below(normalQuantile(p)) / p).toBeCloseTo(1, 4);
  });
});

describe("normalHypercube", () => {
  it("gives each variable every stretch once, shuffled, the same each time", () => {
    const [one = [], other = []] = normalHypercube(2, 500);
    expect(normalHypercube(2, 500)).toEqual([one, other]);
    const inOrder = Array.from({ length: 500 }, (_, index) => normalQuantile((index + 0.5) / 500));
    const sorted = (row: number[]) => [...row].sort((a, b) => a - b);
    expect(sorted(one)).toEqual(inOrder);
    expect(sorted(other)).toEqual(inOrder);
    const correlation = one.reduce((sum, value, index) => sum + value * (other[index] ?? 0), 0) / 500;
    expect(Math.abs(correlation)).toBeLessThan(0.1);
  });
});

describe("spreadOf", () => {
  it("adds in quadrature what is straight (JCGM 100:2008, equation 10)", () => {
    expect(spreadOf(([a = 0, b = 0]) => 3 * a - 4 * b, [1, 1], [1, 1])).toBeCloseTo(5, 12);
    expect(spreadOf(([a = 0]) => a, [7], [0])).toBe(0);
  });

  // JCGM 100:2008, H.2.2: R = V cos φ / I = 127.732 Ω with V = 4.9990 V, I = 19.6610 mA, φ = 1.04446 rad and
  // u = 0.0032 V, 0.0095 mA, 0.00075 rad; the sensitivities differentiated by hand, the correlations left out.
  it("gives the resistance of the Guide's example H.2 what its partial derivatives give", () => {
    const resistance: Measurand = ([volt = 0, ampere = 0, phase = 0]) => (volt * Math.cos(phase)) / ampere;
    const inputs = [4.999, 19.661e-3, 1.04446];
    const uncertainties = [0.0032, 0.0095e-3, 0.00075];
    const [volt = 0, ampere = 1, phase = 0] = inputs;
    const byHand = Math.hypot(
      (Math.cos(phase) / ampere) * 0.0032,
      ((volt * Math.cos(phase)) / ampere ** 2) * 0.0095e-3,
      ((volt * Math.sin(phase)) / ampere) * 0.00075,
    );
    expect(resistance(inputs)).toBeCloseTo(127.732, 2);
    expect(spreadOf(resistance, inputs, uncertainties)).toBeCloseTo(byHand, 5);
  });

  it("samples a bend, a step and an edge, the same each time", () => {
    const square: Measurand = ([x = 0]) => x * x;
    expect(linearSpread(square, [0], [1], 0)).toBeUndefined();
    // x² of a normal x with 95 % inside ±1: chi-squared with one degree of freedom, quantiles 0.00098 and 5.0239 times 1/1.96².
    expect(spreadOf(square, [0], [1])).toBeCloseTo((5.0239 - 0.00098) / 1.96 ** 2 / 2, 1);
    expect(spreadOf(square, [0], [1])).toBe(spreadOf(square, [0], [1]));

    const packs: Measurand = ([x = 0]) => Math.ceil(x);
    expect(linearSpread(packs, [1.95], [0.2], 2)).toBeUndefined();
    expect(spreadOf(packs, [1.95], [0.2])).toBe(0.5);

    const hollow: Measurand = ([x = 0]) => (Math.abs(x) > 0.9 ? undefined : x);
    expect(linearSpread(hollow, [0], [1], 0)).toBeUndefined();
    expect(spreadOf(hollow, [0], [1])).toBeCloseTo(0.83, 1);
  });

  it("takes the inner side alone where the outer one has no answer", () => {
    const share: Measurand = ([x = 0]) => (x > 100 ? undefined : 2 * x);
    expect(spreadOf(share, [100], [1])).toBe(2);
    expect(spreadOf(share, [99], [1])).toBe(2);
    // Half a step outwards still has an answer: there it must go on as straight as before.
    expect(linearSpread(share, [99.3], [1], 198.6)).toBeCloseTo(2, 9);
    const runsAway: Measurand = ([x = 0]) => (x > 100 ? undefined : 1 / (100.2 - x));
    expect(linearSpread(runsAway, [99.3], [1], 1 / 0.9)).toBeUndefined();
    const depth: Measurand = ([x = 0]) => (x < 0 ? undefined : 3 * x + 1);
    expect(spreadOf(depth, [0], [2])).toBe(6);
    // One input at its edge does not hide the other: √(2² + 1²).
    const both: Measurand = ([x = 0, y = 0]) => (x > 100 ? undefined : 2 * x + y);
    expect(linearSpread(both, [100, 5], [1, 1], 205)).toBeCloseTo(Math.sqrt(5), 12);
  });

  it("counts a slope that falls like one that rises, up to steps that differ by a fifth", () => {
    expect(linearSpread(([x = 0]) => 7 - 2 * x, [3], [1], 1)).toBeCloseTo(2, 12);
    const bent =
      (steeper: number): Measurand =>
      ([x = 0]) =>
        x > 0 ? steeper * x : x;
    expect(linearSpread(bent(1.24), [0], [1], 0)).toBeCloseTo(1.12, 12);
    expect(linearSpread(bent(1.26), [0], [1], 0)).toBeUndefined();
    expect(linearSpread(bent(0.79), [0], [1], 0)).toBeUndefined();
    expect(linearSpread(bent(0.81), [0], [1], 0)).toBeCloseTo(0.905, 12);
    expect(linearSpread(([x = 0]) => -(bent(0.81)([x]) ?? NaN), [0], [1], 0)).toBeCloseTo(0.905, 12);
    expect(linearSpread(([x = 0]) => -(bent(1.24)([x]) ?? NaN), [0], [1], 0)).toBeCloseTo(1.12, 12);
    expect(linearSpread(([x = 0]) => -(bent(1.26)([x]) ?? NaN), [0], [1], 0)).toBeUndefined();
    expect(linearSpread(([x = 0]) => -(bent(0.79)([x]) ?? NaN), [0], [1], 0)).toBeUndefined();
  });

  it("looks at both corners where inputs move together", () => {
    // Straight along each input and towards the upper corner; below, the two together fall twice as far.
    const cliff: Measurand = ([a = 0, b = 0]) => (a < -0.5 && b < -0.5 ? 2 * (a + b) : a + b);
    expect(linearSpread(cliff, [0, 0], [1, 1], 0)).toBeUndefined();
    expect(linearSpread(([a = 0, b = 0]) => -(cliff([-a, -b]) ?? NaN), [0, 0], [1, 1], 0)).toBeUndefined();
    // Against each other: the difference is farthest where one is up and the other down.
    const rift: Measurand = ([a = 0, b = 0]) => (a < -0.5 && b > 0.5 ? 2 * (a - b) : a - b);
    expect(linearSpread(rift, [0, 0], [1, 1], 0)).toBeUndefined();
  });

  it("samples what runs away towards its edge, where the inner side looks tame", () => {
    // Chilling to a degree above the tap: minutes go as ln(1 / (1 - x)), and tap water a degree warmer has no answer.
    const minutes: Measurand = ([x = 0]) => (x >= 1 ? undefined : -Math.log(1 - x));
    expect(linearSpread(minutes, [0], [1], 0)).toBeUndefined();
    // The quantiles of x are ∓1, cut at 1: of 0.975 of the draws the 95 % middle lies between the quantiles 0.024375 and 0.950625.
    expect(spreadOf(minutes, [0], [1])).toBeCloseTo((-Math.log(1 - 1.6513 / 1.96) + Math.log(1 + 1.9709 / 1.96)) / 2, 1);
    expect(linearSpread(([x = 0]) => (x > 0.5 ? undefined : 2 * x), [0], [1], 0)).toBe(2);
  });

  it("sees a bend that shows only when inputs move together", () => {
    const product: Measurand = ([a = 0, b = 0]) => a * b;
    expect(linearSpread(product, [1, 1], [0.9, 0.9], 1)).toBeUndefined();
    expect(linearSpread(product, [1, 1], [0.1, 0.1], 1)).toBeCloseTo(Math.hypot(0.1, 0.1), 12);
  });

  it("agrees with itself: what is straight, sampled, gives the same within the draws", () => {
    const plane: Measurand = ([a = 0, b = 0]) => 2 * a + b;
    const straight = spreadOf(plane, [1, 1], [0.3, 0.4]);
    expect(Math.abs(sampledSpread(plane, [1, 1], [0.3, 0.4]) / straight - 1)).toBeLessThan(0.04);
  });

  /** An independent generator, many draws and no hypercube, for functions that do not add up. */
  it.each<[string, Measurand, number[], number[]]>([
    ["a product", ([a = 0, b = 0]) => a * b, [1, 1], [0.9, 0.9]],
    ["a quotient near its pole", ([a = 0, b = 0]) => a / (b + 3), [2, 0], [0.5, 1.5]],
    ["a power of three", ([a = 0, b = 0, c = 0]) => a * Math.exp(b) - c ** 2, [1, 0.5, 1], [0.4, 0.6, 0.8]],
    ["the larger of two", ([a = 0, b = 0]) => Math.max(a, b), [1, 1], [1, 1]],
  ])("samples %s within 4 in a hundred of what 400,000 plain draws give", (_, measurand, inputs, spreads) => {
    let state = 12345;
    const uniform = () => (state = (state * 48271) % 2147483647) / 2147483647;
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const results = Float64Array.from(
      { length: 400_000 },
      () => measurand(inputs.map((value, index) => value + ((spreads[index] ?? 0) / 1.959964) * normal())) ?? NaN,
    ).sort();
    const truth = ((results[390_000] ?? NaN) - (results[10_000] ?? NaN)) / 2;
    expect(Math.abs(sampledSpread(measurand, inputs, spreads) / truth - 1)).toBeLessThan(0.04);
  });

  it("refuses where most of the draws have no answer", () => {
    expect(() => spreadOf(([x = 0]) => (Math.abs(x) < 0.01 ? x : undefined), [0], [1])).toThrow(BrewingError);
    expect(() => spreadOf(() => undefined, [0], [1])).toThrow("no answer to take the ± of");
  });
});
