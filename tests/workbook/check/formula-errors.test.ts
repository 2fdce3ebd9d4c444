import { describe, expect, it } from "vitest";
import { formulaErrors, typedSpelling } from "../../../src/workbook/care/check/formula-errors";
import { sheetsByName, worldOfSheets } from "../../../src/workbook/grid/evaluate/sheets-world";
import { NamedCells, type CellValue } from "../../../src/workbook/grid/read/named-cells";

/** Column A of a sheet: what each cell shows, and its formula. `og` is the name of A1. */
function found(...cells: readonly (readonly [shows: CellValue, formula?: string])[]): string[] {
  const column = cells.map(([shows, formula = shows]) => [shows, formula] as const);
  const sheet = new NamedCells(
    "By hand",
    new Map([["og", "A1"]]),
    { row: 1, column: 1 },
    column.map(([shows]) => [shows]),
    column.map(([, formula]) => [formula]),
  );
  return formulaErrors(sheet, worldOfSheets(sheetsByName([sheet]), new Map([["kettle", "='By hand'!A1"]]), "By hand")).map(
    ({ address, weight, words, repair }) =>
      `${weight} ${address}: ${words}${repair ? ` [${repair.kind} ${repair.formula}, was ${String(repair.was)}]` : ""}`,
  );
}

describe("a formula as Excel's files spell it", () => {
  it("is turned into what a user types, whatever stands before it or around it", () => {
    expect(typedSpelling("=_xldudf_GYLE_BEER_ABV(1.05,1.01)")).toBe("=GYLE.BEER.ABV(1.05,1.01)");
    expect(typedSpelling("=[2]!_xldudf_GYLE_BEER_ABV(1.05,1.01)")).toBe("=GYLE.BEER.ABV(1.05,1.01)");
    expect(typedSpelling("=_xldudf_gyle_beer_ebc (10)+2*[12]!_xldudf_GYLE_BEER_EBC(5)")).toBe("=GYLE.BEER.EBC (10)+2*GYLE.BEER.EBC(5)");
    expect(typedSpelling("=GYLE.BEER.EBC(10)")).toBe("=GYLE.BEER.EBC(10)");
    expect(typedSpelling('="_xldudf_GYLE_BEER_EBC"')).toBe('="_xldudf_GYLE_BEER_EBC"');
  });
});

describe("a cell with one of our formulas that shows an error", () => {
  it("at #NAME? is one that Excel left, which can be entered again", () => {
    expect(found(["#NAME?", "=_xldudf_GYLE_BEER_EBC(10)"])).toEqual([
      "look A1: Excel left this GYLE formula at #NAME?. Entered again, it will calculate. [stuck =GYLE.BEER.EBC(10), was =_xldudf_GYLE_BEER_EBC(10)]",
    ]);
    expect(found([1.05], ["#NAME?", "=GYLE.BEER.ABV(og,kettle)"])).toHaveLength(1);
  });

  it("at #NAME? is one of a function that does not exist, or of a name that is gone, which cannot", () => {
    expect(found(["#NAME?", "=GYLE.BEER.ABC(1,2)"])).toEqual(["look A1: There is no function GYLE.BEER.ABC. Did you mean GYLE.BEER.ABV?"]);
    expect(found(["#NAME?", "=GYLE.BEER.EBC(GYLE.QUITE.ELSEWHERE(1))"])).toEqual([
      expect.stringMatching(/^look A1: There is no function GYLE\.QUITE\.ELSEWHERE\.$/),
    ]);
    expect(found(["#NAME?", "=GYLE.BEER.ABV(nowhere,nor_there)"])).toEqual([
      "look A1: There is no name nowhere, nor_there here: it was deleted or mistyped.",
    ]);
    expect(found([1.05], ["#NAME?", "=GYLE.BEER.ABV(og,nowhere)"])).toEqual([
      "look A2: There is no name nowhere here: it was deleted or mistyped.",
    ]);
    expect(found(["#NAME?", "=LET(Mine,1.05,GYLE.BEER.ABV(mine,1.01))"])).toEqual([
      expect.stringContaining("Entered again, it will calculate"),
    ]);
  });

  it("says what the function says", () => {
    expect(found(["#VALUE!", "=GYLE.BEER.ABV(12.4,1.01)"])).toEqual([
      expect.stringMatching(/^look A1: GYLE\.BEER\.ABV: original_gravity is 12\.4.*looks like °P/),
    ]);
    expect(found(["#VALUE!", "=LET(mine,12.4,GYLE.BEER.ABV(mine,1.01))"])).toEqual([expect.stringContaining("looks like °P")]);
    expect(found(["#VALUE!", '=GYLE.BEER.EBC(INDIRECT("A9"))'])).toEqual([
      "look A1: Shows #VALUE!: select it and open Explain to see why.",
    ]);
    expect(found(["#N/A", "=1+GYLE.PACK.RESIDUAL(41)"])).toEqual([expect.stringContaining("GYLE.PACK.RESIDUAL: temperature is 41 °C")]);
  });

  it("is not told twice: what only passes an error on, what is still on its way, and what is no error", () => {
    expect(found(["#VALUE!", "=GYLE.BEER.ABV(12.4,1.01)"], ["#VALUE!", "=GYLE.BEER.EBC(A1)"])).toHaveLength(1);
    for (const passing of ["#BUSY!", "#GETTING_DATA", "#CONNECT!"]) expect(found([passing, "=GYLE.BEER.ABV(12.4,1.01)"])).toEqual([]);
    expect(found([19.7, "=GYLE.BEER.EBC(10)"], ["=GYLE.BEER.EBC(10)"], ["", "=GYLE.BEER.EBC(A9)"])).toEqual([]);
    expect(found(["#DIV/0!", "=1/0"], ["#NAME?", "=NOBODY(1)"])).toEqual([]);
  });

  it("that has no room, or points at what is gone, says so", () => {
    expect(found(["#SPILL!", "=GYLE.PACK.BOTTLES(19,500)"])).toEqual([expect.stringContaining("clear what stands below or beside it")]);
    expect(found(["#REF!", "=GYLE.BEER.EBC(#REF!)"])).toEqual(["look A1: The formula points at cells that were deleted."]);
  });
});
