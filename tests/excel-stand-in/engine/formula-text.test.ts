import { describe, expect, it } from "vitest";
import { renameSheet, splitFormula } from "../../../src/excel-stand-in/engine/formula-text";
import { localVariables } from "../../../src/excel-stand-in/engine/local-variables";
import { expandThisRow, renameTable } from "../../../src/excel-stand-in/engine/structured-references";

const names = (formula: string) => splitFormula(formula).flatMap((piece) => (piece.kind === "name" ? [piece.source] : []));

describe("finding names in a formula", () => {
  it.each([
    ["=og-fg", ["og", "fg"]],
    ["=GYLE.BEER.ABV(og,fg)", ["og", "fg"]],
    ["='Batch 1'!og*Batch2!fg", ["'Batch 1'!og", "Batch2!fg"]],
    ["='It''s ale'!og", ["'It''s ale'!og"]],
    ['="og"&og', ["og"]],
    ['="say ""og"""', []],
    ["=A1+$B$2+'Batch 1'!C3:D4", []],
    ["=Malts[Mass]+SUM(Malts)", ["Malts"]],
    ["=IF(TRUE,1.5,FALSE)", []],
    ["=Stärke*2", ["Stärke"]],
    ["=OG1+LOG10(5)", []],
  ])("%s", (formula, expected) => {
    expect(names(formula)).toEqual(expected);
    expect(
      splitFormula(formula)
        .map((piece) => piece.source)
        .join(""),
    ).toBe(formula);
  });

  it("parts blocks of cells, whole columns and signs, each sheet with what it stands before", () => {
    const parts = (formula: string) => splitFormula(formula).map(({ kind, source }) => `${kind} ${source}`);
    expect(parts("'It''s'!A1:B2<>A:$C  1:3")).toEqual(
      ["'It''s'!A1", ":", "B2", "<", ">", "A", ":", "$C", " ", " ", "1", ":", "3"].map((source) => `code ${source}`),
    );
    expect(parts("=Bill[Kg]#+Gone!")).toEqual(["code =", "structured Bill[Kg]", "code #", "code +", "code Gone!"]);
  });

  it("knows which names LET and LAMBDA declare", () => {
    expect([...localVariables(splitFormula("=LET(og,5,fg,og-1,og*volume)"))]).toEqual(["og", "fg"]);
    expect([...localVariables(splitFormula("=LAMBDA(x,y,x+og)(1,2)"))]).toEqual(["x", "y"]);
  });
});

describe("this-row references", () => {
  it.each([
    ["=[@Mass]*2", "=Malts[[#This Row],[Mass]]*2"],
    ["=Hops[@Mass]", "=Hops[[#This Row],[Mass]]"],
    ["=[@[Alpha acid]]/100", "=Malts[[#This Row],[Alpha acid]]/100"],
    ["=SUM([@[Jan]:[Mar]])", "=SUM(Malts[[#This Row],[Jan]:[Mar]])"],
    ["=SUM([Mass])", "=SUM(Malts[Mass])"],
    ["=ROWS([@])", "=ROWS(Malts[#This Row])"],
    ['="[@Mass]"', '="[@Mass]"'],
    ["=Hops[[#This Row],[Mass]]", "=Hops[[#This Row],[Mass]]"],
  ])("%s becomes %s", (typed, stored) => expect(expandThisRow(typed, "Malts")).toBe(stored));

  it("leaves a reference alone outside any table", () => expect(expandThisRow("=[@Mass]", undefined)).toBe("=[@Mass]"));
});

it("renames a sheet and a table where they are meant", () => {
  expect(renameSheet("='Batch 1'!A1+'batch 1'!og&\"'Batch 1'!A1\"", "Batch 1", "Pale")).toBe("='Pale'!A1+'Pale'!og&\"'Batch 1'!A1\"");
  expect(renameTable("=SUM(Malts[Mass])+ROWS(Malts)+Malts2[Mass]", "Malts", "Malts3")).toBe("=SUM(Malts3[Mass])+ROWS(Malts3)+Malts2[Mass]");
});
