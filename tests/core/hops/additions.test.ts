import { describe, expect, it } from "vitest";
import { call, callScalar } from "../../../src/functions/call";
import { CellError } from "../../../src/functions/cell-error";
import { hopsIbu } from "../../../src/functions/hops/ibu";
import { hopsShare } from "../../../src/functions/hops/share";

const plain = [
  [30, 8, 60],
  [20, 4, 10],
];
const ibu = (additions: unknown[][], ...rest: unknown[]) => callScalar(hopsIbu, [additions, 20, 1.05, ...rest]);
const share = (additions: unknown[][], ...rest: unknown[]) => call(hopsShare, [additions, 20, 1.05, ...rest]);

function messageOf(answer: unknown): string {
  expect(answer).toBeInstanceOf(CellError);
  return (answer as CellError).message;
}

describe("the additions of HOPS.IBU and HOPS.SHARE", () => {
  it("may stand beside names and under a heading", () => {
    const named = [
      ["Hop", "Mass g", "Alpha %", "Minutes"],
      ["Perle", 30, 8, 60],
      ["Saaz", 20, 4, 10],
    ];
    expect(ibu(named)).toBe(ibu(plain));
    expect(ibu(named.slice(1))).toBe(ibu(plain));
    expect(share(named)).toEqual(share(plain));
  });

  it("keep their places in the share: blank rows and names without a mass stay empty", () => {
    const answer = share([
      ["Perle", 30, 8, 60],
      ["", null, 0, ""],
      ["Saaz", "", 4, 10],
      ["Saaz", 20, 4, 10],
      [null, null, null, null],
    ]);
    expect(answer).toHaveLength(5);
    expect(answer.map((row) => row.length)).toEqual([1, 1, 1, 1, 1]);
    expect([answer[1], answer[2], answer[4]]).toEqual([[""], [""], [""]]);
    expect(answer[0]).toEqual(share(plain)[0]);
    expect(answer[3]).toEqual(share(plain)[1]);
  });

  it("add up to the total", () => {
    const sum = share(plain, "rager", 95).reduce((total, [cell]) => total + (cell as number), 0);
    expect(sum).toBeCloseTo(ibu(plain, "rager", 95) as number, 10);
  });

  it("give the same beer in US units", () => {
    const us = callScalar(hopsIbu, [[[30 / 28.349523125, 8, 60]], 20 / 3.785411784, 1.05, null, 203, "us"]);
    expect(us).toBeCloseTo(ibu([[30, 8, 60]], null, 95) as number, 9);
  });

  it("take blank alpha and blank minutes as 0: hops that bring no bitterness", () => {
    expect(
      ibu([
        [30, "", 60],
        [20, 4, null],
      ]),
    ).toBe(0);
    expect(ibu([["", "", ""]])).toBe("");
  });

  it("refuse an alpha acid that lost its decimal point, or came as a share of 1", () => {
    expect(messageOf(ibu([[30, 55, 60]]))).toContain("write 5.5");
    expect(messageOf(ibu([[30, 0.055, 60]]))).toContain("write 5.5 for 5.5 %");
    expect(
      messageOf(
        ibu([
          [30, 8, 60],
          [30, 0.3, 60],
        ]),
      ),
    ).toContain("row 2");
    expect(ibu([[30, 0.31, 60]])).toBeGreaterThan(0);
  });

  it("refuse a boil that is no boil", () => {
    expect(messageOf(ibu(plain, null, 79))).toContain("boils_at");
    expect(ibu(plain, null, 0)).toBe(ibu(plain));
  });
});
