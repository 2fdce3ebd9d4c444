import { describe, expect, it } from "vitest";
import { functionNamed } from "../../../src/functions/registry";
import { answerOf } from "../../support/registry-probe";

const answer = (id: string, ...typed: unknown[]) => answerOf(functionNamed(id), typed);
const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);
const amounts = (rows: (string | number)[][]) => rows.map(([, amount]) => amount);

describe("the water under the salts of WATER.IONS", () => {
  const salts = [["table salt", 1]];
  // 1 g in 10 L: 100 mg/L, of which 22.98977 / 58.4428 Na and 35.453 / 58.4428 Cl.
  const [sodium, chloride] = [39.337, 60.663];

  it("may stand across, and under a heading", () => {
    const expected = [60, 10, 5 + sodium, 15 + chloride, 25, 180].map((amount) => expect.closeTo(amount, 2) as number);
    for (const base of [column(60, 10, 5, 15, 25, 180), [[60, 10, 5, 15, 25, 180]], column("mg/L", 60, 10, 5, 15, 25, 180)])
      expect(amounts(answer("WATER.IONS", salts, 10, base))).toEqual(expected);
  });

  it("may have blank cells, which count as 0", () => {
    expect(amounts(answer("WATER.IONS", salts, 10, column(60, "", "", "", "", 180)))).toEqual([
      60,
      0,
      expect.closeTo(sodium, 2),
      expect.closeTo(chloride, 2),
      0,
      180,
    ]);
  });

  it("must be six numbers: five, seven, or a heading and five are refused", () => {
    const refused = (count: number) => [
      [`#VALUE! base must hold six numbers, not ${count}: calcium, magnesium, sodium, chloride, sulfate, bicarbonate`],
    ];
    expect(answer("WATER.IONS", salts, 10, column(60, 10, 5, 15, 25))).toEqual(refused(5));
    expect(answer("WATER.IONS", salts, 10, column(60, 10, 5, 15, 25, 180, 7))).toEqual(refused(7));
    expect(answer("WATER.IONS", salts, 10, column("mg/L", 60, 10, 5, 15, 25))).toEqual(refused(5));
  });
});

describe("the shares of WATER.BLEND", () => {
  const tap = [120, 10, 20, 30, 50, 300];
  const pure = [0, 0, 0, 0, 0, 0];

  it("stand one beside each water: a heading above both, or above either, is left out", () => {
    const half = tap.map((amount) => amount / 2);
    expect(amounts(answer("WATER.BLEND", column(1, 1), [tap, pure]))).toEqual(half);
    expect(amounts(answer("WATER.BLEND", column("L", 1, 1), [["Ca", "Mg", "Na", "Cl", "SO4", "HCO3"], tap, pure]))).toEqual(half);
    expect(amounts(answer("WATER.BLEND", column("L", 1, 1), [tap, pure]))).toEqual(half);
    expect(amounts(answer("WATER.BLEND", column(1, ""), [tap, pure]))).toEqual(tap);
  });

  it("are refused when they are more or fewer than the waters, also where a number stands in place of the heading", () => {
    const refused = (shares: number) => [
      [`#VALUE! shares must hold one number for each row of profiles: there are ${shares} and 2, headings not counted`],
    ];
    expect(answer("WATER.BLEND", column(1, 1, 1), [tap, pure])).toEqual(refused(3));
    expect(answer("WATER.BLEND", column(1), [tap, pure])).toEqual(refused(1));
  });
});
