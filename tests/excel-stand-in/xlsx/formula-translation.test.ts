import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isDynamicFormula } from "../../../src/excel-stand-in/xlsx/array-formulas";
import { callsOurFunctions, fromFileFormula, toFileFormula } from "../../../src/excel-stand-in/xlsx/formula-translation";
import { shiftFormula } from "../../../src/excel-stand-in/xlsx/formula-shift";

const functionNames = ["BEER.ABV", "PLAN", "WORT.GRAVITY.FROM.PLATO"];
/** What the grid shows, and what Excel's file holds. */
const pairs: [grid: string, file: string][] = [
  ["=SUM(A1:B2)", "SUM(A1:B2)"],
  ["=GYLE.BEER.ABV(og,fg)", "_xldudf_GYLE_BEER_ABV(og,fg)"],
  ["=IF(GYLE.PLAN(3)>0,GYLE.WORT.GRAVITY.FROM.PLATO(A1),0)", "IF(_xldudf_GYLE_PLAN(3)>0,_xldudf_GYLE_WORT_GRAVITY_FROM_PLATO(A1),0)"],
  ['="GYLE.PLAN(1) SORT( ""LET("&GYLE.PLAN(1)', '"GYLE.PLAN(1) SORT( ""LET("&_xldudf_GYLE_PLAN(1)'],
  ["='GYLE.PLAN(x)'!A1+1", "'GYLE.PLAN(x)'!A1+1"],
  ['=XLOOKUP("b",T[a],T[LET(],0)', '_xlfn.XLOOKUP("b",T[a],T[LET(],0)'],
  ["=SORT(FILTER(A1:A5,B1:B5>1))", "_xlfn._xlws.SORT(_xlfn._xlws.FILTER(A1:A5,B1:B5>1))"],
  ["=STDEV.S(A1:A5)+NORM.DIST(1,2,3,TRUE)", "_xlfn.STDEV.S(A1:A5)+_xlfn.NORM.DIST(1,2,3,TRUE)"],
  ["=LET(x,5,y,x+1,x*y)", "_xlfn.LET(_xlpm.x,5,_xlpm.y,_xlpm.x+1,_xlpm.x*_xlpm.y)"],
  ["=LET(x,1,LET(x,2,x)+x)+x", "_xlfn.LET(_xlpm.x,1,_xlfn.LET(_xlpm.x,2,_xlpm.x)+_xlpm.x)+x"],
  ["=MAP(A1:A3,LAMBDA(cell,cell*2))", "_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.cell,_xlpm.cell*2))"],
  ["=LET(double,LAMBDA(n,n*2),double(4))", "_xlfn.LET(_xlpm.double,_xlfn.LAMBDA(_xlpm.n,_xlpm.n*2),_xlpm.double(4))"],
  ['=LET(x,"x",x&"x")', '_xlfn.LET(_xlpm.x,"x",_xlpm.x&"x")'],
  ["=SUM(D1#)", "SUM(_xlfn.ANCHORARRAY(D1))"],
  ["=Bill[[#This Row],[Kg]]*2", "Bill[[#This Row],[Kg]]*2"],
  ["=A1", "A1"],
  // Source of the name: [MS-XLSX] 2.2.2; Excel shows it as @.
  ["=@A1:A9", "_xlfn.SINGLE(A1:A9)"],
  ["=@og*2+SUM(@'My Sheet'!$B:$B,1)", "_xlfn.SINGLE(og)*2+SUM(_xlfn.SINGLE('My Sheet'!$B:$B),1)"],
  ["=@INDEX(A1:B9,@C1:C9,1)", "_xlfn.SINGLE(INDEX(A1:B9,_xlfn.SINGLE(C1:C9),1))"],
  ["=@(A1:A9*2)", "_xlfn.SINGLE((A1:A9*2))"],
  ["=@D1#", "_xlfn.SINGLE(_xlfn.ANCHORARRAY(D1))"],
  ['="a@b"&@A1:A9', '"a@b"&_xlfn.SINGLE(A1:A9)'],
];

describe("formulas on their way to a file and back", () => {
  it.each(pairs)("%s", (grid, file) => {
    expect(toFileFormula(grid)).toBe(file);
    expect(fromFileFormula(file, functionNames)).toBe(grid);
  });

  it("puts our functions into capitals, as Excel does", () =>
    expect(toFileFormula("=gyle.beer.abv(1,2)")).toBe("_xldudf_GYLE_BEER_ABV(1,2)"));

  it("takes the dots from the list of our functions, and without it from the underscores", () => {
    expect(fromFileFormula("_xldudf_GYLE_BEER_ABV(1)")).toBe("=GYLE.BEER.ABV(1)");
    expect(fromFileFormula("_xldudf_GYLE_ODD_NAME(1)", ["ODD_NAME"])).toBe("=GYLE.ODD_NAME(1)");
    expect(fromFileFormula("_xldudf_OTHER_SUM(1)")).toBe("=OTHER.SUM(1)");
  });

  const name = fc.constantFrom("og", "fg", "volume", "x", "cost_1");
  const text = fc.string({ maxLength: 8 }).map((value) => `"${value.replaceAll('"', '""').replace(/[^ -~]/g, "")}"`);
  const leaf = fc.oneof(name, text, fc.nat(999).map(String), fc.constantFrom("A1", "$B$2", "C3:C9", "'My Sheet'!D4", "Bill[Kg]", "TRUE"));
  const { formula } = fc.letrec<{ formula: string }>((tie) => ({
    formula: fc.oneof(
      { maxDepth: 4 },
      leaf,
      fc
        .tuple(
          fc.constantFrom("SUM", "IF", "GYLE.BEER.ABV", "GYLE.PLAN", "XLOOKUP", "FILTER", "STDEV.S", "TEXTJOIN"),
          fc.array(tie("formula"), { minLength: 1, maxLength: 3 }),
        )
        .map(([call, args]) => `${call}(${args.join(",")})`),
      fc.tuple(name, tie("formula"), tie("formula")).map(([variable, value, body]) => `LET(${variable},${value},${body})`),
      fc.tuple(tie("formula"), fc.constantFrom("+", "*", "&", "<="), tie("formula")).map((parts) => parts.join("")),
    ),
  }));

  it("comes back as it was, whatever it is", () => {
    fc.assert(
      fc.property(formula, (body) => fromFileFormula(toFileFormula(`=${body}`), functionNames) === `=${body}`),
      { numRuns: 500 },
    );
  });

  it("leaves every text in quotes alone", () => {
    const texts = (source: string): string[] => source.match(/"(?:[^"]|"")*"/g) ?? [];
    fc.assert(
      fc.property(formula, (body) => {
        expect(texts(toFileFormula(`=${body}`))).toEqual(texts(body));
      }),
      { numRuns: 300 },
    );
  });

  it("leaves no function of ours in its dotted form", () => {
    fc.assert(
      fc.property(formula, (body) => !/GYLE\./.test(toFileFormula(`=${body}`).replaceAll(/"(?:[^"]|"")*"/g, ""))),
      { numRuns: 300 },
    );
  });
});

describe("which formulas a file holds as dynamic arrays", () => {
  const around = { isRange: (name: string) => name === "readings", isFunction: () => true };
  it.each([
    "=GYLE.PLAN(1)",
    "=1+gyle.plan(1)",
    "=FILTER(A1:A3,B1:B3)",
    "=SUM(A1:A5*B1:B5)",
    "=SUM(Bill[Kg]*2)",
    "=LET(x,A1:A3,SUM(2*A1:A3))",
    "=SUM(LEN(A1:A5))",
    "=MAX(ABS(readings))",
  ])("%s does", (formula) => expect(isDynamicFormula(formula, { row: 40, column: 40 }, around)).toBe(true));
  it.each([
    "=SUM(A1:A5)*2",
    "=A1*2",
    '="GYLE.PLAN(1)"',
    "=SUM(Bill[Kg])",
    "=Bill[[#This Row],[Kg]]*2",
    "=SUM(readings)",
    "=SUMPRODUCT(LEN(A1:A5))",
    "=INDEX(A1:A5,MATCH(1,B1:B5,0))",
    "=COUNTIF(A1:A5,B1)",
    "=IF(A1>1,SUM(A1:A3),0)",
  ])("%s does not", (formula) => expect(isDynamicFormula(formula, { row: 40, column: 40 }, around)).toBe(false));
  it("knows our functions from names and texts", () => {
    expect(callsOurFunctions("=GYLE.PLAN")).toBe(false);
    expect(callsOurFunctions('=LEN("GYLE.PLAN(")')).toBe(false);
    expect(callsOurFunctions("=ROUND(GYLE.PLAN(1),2)")).toBe(true);
  });
});

describe("a formula copied to another cell", () => {
  it.each([
    ["=A1+$B$1+C$1+$D1", 2, 1, "=B3+$B$1+D$1+$D3"],
    ['=A1&"A1"', 1, 0, '=A2&"A1"'],
    ["=SUM('A1 x'!A1:B2)", 1, 1, "=SUM('A1 x'!B2:C3)"],
    ["=A1", -1, 0, "=#REF!"],
    ["=og*LOG10(A1)", 1, 0, "=og*LOG10(A2)"],
    ["=Bill[A1]", 1, 1, "=Bill[A1]"],
  ])("%s moved by %i, %i", (formula, rows, columns, expected) => expect(shiftFormula(formula, rows, columns)).toBe(expected));
});
