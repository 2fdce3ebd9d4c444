import { describe, expect, it } from "vitest";
import { call, callScalar } from "../../../src/functions/call";
import { CellError } from "../../../src/functions/cell-error";
import { functionNamed } from "../../../src/functions/registry";

const answer = (id: string, ...typed: unknown[]) => callScalar(functionNamed(id), typed);
const error = (id: string, ...typed: unknown[]): CellError => {
  const got = answer(id, ...typed);
  if (!(got instanceof CellError)) throw new Error(`${id} answered ${String(got)}`);
  return got;
};

describe("wort functions at the worksheet door", () => {
  it("one malt table with the colour beside it drives gravity and colour, heading and blank rows included", () => {
    const table = [
      ["kg", "yield %", "handling", "°L"],
      [4, 80, "mash", 3],
      ["", "", "", ""],
      [0.5, 100, "sugar", ""],
    ];
    const bare = [
      [4, 80, "mash"],
      [0.5, 100, "sugar"],
    ];
    expect(answer("WORT.GRAVITY", table, 20)).toBe(answer("WORT.GRAVITY", bare, 20));
    expect(answer("WORT.COLOUR", table, 20)).toBe(
      answer(
        "WORT.COLOUR",
        [
          [4, 3],
          [0.5, 0],
        ],
        20,
      ),
    );
    expect(answer("WORT.EFFICIENCY", table, 20, 1.05)).toBe(answer("WORT.EFFICIENCY", bare, 20, 1.05));
  });
  it("the same bill in pounds and gallons gives the same gravity and colour", () => {
    const pounds = 1 / 0.45359237;
    const gallons = 1 / 3.785411784;
    expect(answer("WORT.GRAVITY", [[4 * pounds, 80, "mash"]], 20 * gallons, 72, "us")).toBeCloseTo(
      answer("WORT.GRAVITY", [[4, 80, "mash"]], 20, 72) as number,
      10,
    );
    expect(answer("WORT.COLOUR", [[4 * pounds, 8]], 20 * gallons, "SRM", "us")).toBeCloseTo(
      answer("WORT.COLOUR", [[4, 8]], 20) as number,
      10,
    );
  });
  it("EBC in, EBC out: the beer of an equal malt bill in °L, times 25/12.7", () => {
    const malt = 1.3546 * 8 - 0.76;
    expect(answer("WORT.COLOUR", [[4, (malt * 25) / 12.7]], 20, "EBC")).toBeCloseTo(
      ((answer("WORT.COLOUR", [[4, 8]], 20) as number) * 25) / 12.7,
      9,
    );
  });
  it("shows blanks while a sheet is being filled in", () => {
    expect(answer("WORT.SG", 0)).toBe("");
    expect(answer("WORT.PLATO", null)).toBe("");
    expect(answer("WORT.HYDROMETER", 1.05, 0)).toBe("");
    expect(answer("WORT.HYDROMETER", 1.05, 0, null, null, "us")).toBe("");
    expect(answer("WORT.GRAVITY", [["", "", ""]], 20)).toBe("");
    expect(answer("WORT.GRAVITY", [[4, "", "mash"]], 20)).toBe("");
    expect(answer("WORT.MIX", [["", ""]], [["", ""]])).toBe("");
  });
  it("a calibration left blank is 20 °C, 68 °F", () => {
    expect(answer("WORT.HYDROMETER", 1.05, 86, 0, "", "us")).toBeCloseTo(answer("WORT.HYDROMETER", 1.05, 30) as number, 12);
    expect(answer("WORT.HYDROMETER", 1.05, 86, 68, "sg", "us")).toBeCloseTo(answer("WORT.HYDROMETER", 1.05, 30) as number, 12);
  });
  it("helps a brewer who typed another scale", () => {
    expect(error("WORT.HYDROMETER", 12, 25).message).toContain('looks like °P: set scale to "P"');
    expect(error("WORT.HYDROMETER", 1048, 25).message).toContain("write it as 1.048");
    expect(error("WORT.PLATO", 12).message).toContain("wrap it in GYLE.WORT.SG(12)");
    expect(error("WORT.SG", 1048).message).toContain("looks like a specific gravity");
    expect(error("WORT.THIN", 20, 1.05, 12).message).toContain("GYLE.WORT.SG(12)");
  });
  it("tells the range of the sugar table from impossible numbers", () => {
    expect(error("WORT.SG", 42).code).toBe("#N/A");
    expect(error("WORT.SG", 46).code).toBe("#VALUE!");
    expect(error("WORT.PLATO", 1.19).code).toBe("#N/A");
    expect(error("WORT.PLATO", 1.3).code).toBe("#VALUE!");
    expect(error("WORT.COLOUR", [[5, 500]], 5).code).toBe("#N/A");
    expect(error("WORT.THIN", 20, 1.05, 1).code).toBe("#NUM!");
    expect(error("WORT.YIELD", 386).message).toContain("pure sugar gives the most there is");
  });
  it("converts down to the driest beer and back", () => {
    expect(answer("WORT.SG", answer("WORT.PLATO", 0.98))).toBeCloseTo(0.98, 10);
    expect(answer("WORT.SG", answer("WORT.PLATO", 1.178))).toBeCloseTo(1.178, 10);
  });
  it("mixing needs both columns filled in alike", () => {
    expect(error("WORT.MIX", [[20], [5]], [[1.05]]).message).toContain("same number of cells");
    expect(error("WORT.MIX", [[20], [5]], [[1.05], [""]]).message).toContain("gravities row 2 is not filled in");
    expect(error("WORT.MIX", [[20], [""]], [[1.05], [1.04]]).message).toContain("volumes row 2 is not filled in");
    expect(answer("WORT.MIX", [["L"], [20], [""]], [["SG"], [1.05], [""]])).toBeCloseTo(1.05, 12);
  });
  it("serves a column of readings in one call", () => {
    const column = call(functionNamed("WORT.HYDROMETER"), [
      [[1.05], [1.04], [""]],
      [[20], [30], [25]],
    ]);
    expect(column).toHaveLength(3);
    expect(column[0]?.[0]).toBeCloseTo(1.05, 10);
    expect(column[1]?.[0]).toBeCloseTo(1.04275, 4);
    expect(column[2]?.[0]).toBe("");
  });
});
