import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { locales, toLocal } from "../../../src/excel-stand-in/excel/locale";
import { formulaText } from "../../../src/functions/formula-text";
import { functionNamed, registry } from "../../../src/functions/registry";
import { formulaOf } from "../../../src/workbook/care/explain/put-into-cell";
import { asKept, asWritten, callsAsWritten } from "../../../src/workbook/grid/formulas/writing";

const abv = functionNamed("BEER.ABV");

describe("where the comma is the decimal sign, a formula", () => {
  it("is shown with semicolons and decimal commas, words and names as they are", () => {
    expect(asWritten("=GYLE.BEER.ABV(1.048, 1.010)", ",")).toBe("=GYLE.BEER.ABV(1,048; 1,010)");
    expect(asWritten("=GYLE.X(\"1.5, or so\", 'Batch 1.5, new'!B4, .5, 1.5E-3)", ",")).toBe(
      "=GYLE.X(\"1.5, or so\"; 'Batch 1.5, new'!B4; ,5; 1,5E-3)",
    );
    expect(asWritten("=SUM({1.5,2;3,4}, A1)", ",")).toBe("=SUM({1,5.2;3.4}; A1)");
    expect(asWritten("=GYLE.BEER.ABV(1.048, 1.010)", ".")).toBe("=GYLE.BEER.ABV(1.048, 1.010)");
  });

  it("within words is found by its function; the words and their numbers stay", () => {
    const words = '12.4 looks like °P: wrap it in GYLE.WORT.SG(12.4), or GYLE.WORT.YIELD(300.5,"us, 1.5"); see GYLE.WORT.SG (1.5).';
    expect(callsAsWritten(words, ",")).toBe(
      '12.4 looks like °P: wrap it in GYLE.WORT.SG(12,4), or GYLE.WORT.YIELD(300,5;"us, 1.5"); see GYLE.WORT.SG (1.5).',
    );
    expect(callsAsWritten(words, ".")).toBe(words);
  });

  it("of every example reads as that country's Excel writes it, and back", () => {
    for (const descriptor of registry)
      for (const example of descriptor.examples) {
        const formula = formulaText(descriptor, example);
        expect(asWritten(formula, ",")).toBe(toLocal(formula, { ...locales["de-DE"], words: {} }));
        expect(asKept(asWritten(formula, ","), ",")).toBe(formula);
      }
  });

  it("comes back from any numbers and words", () => {
    const piece = fc.oneof(
      fc.double({ min: -999, max: 999, noNaN: true }).map((value) => value.toFixed(3)),
      fc.string({ maxLength: 8 }).map((text) => `"${text.replaceAll('"', '""')}"`),
      fc.constantFrom("A1", "$B$2:C7", "'It''s 1,5; 2.0'!A1", "og", "MAX(1.5,A2)", "{1.5,2;3,4}", "50.5%", "TRUE"),
    );
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 5 }), (pieces) => {
        const formula = `=F(${pieces.join(",")})`;
        expect(asKept(asWritten(formula, ","), ",")).toBe(formula);
      }),
    );
  });
});

describe("a field for an argument", () => {
  it.each([
    [["50,5%", ""], ",", "=GYLE.BEER.ABV(50.5%)"],
    [["50,5%", ""], ".", "=GYLE.BEER.ABV(50.5%)"],
    [["MAX(1,05;A2)", "1,01"], ",", "=GYLE.BEER.ABV(MAX(1.05,A2), 1.01)"],
    [["MAX(1.05,A2)", "1,01"], ".", "=GYLE.BEER.ABV(MAX(1.05,A2), 1.01)"],
    [["MAX(1.05;A2)", "1.01"], ".", "=GYLE.BEER.ABV(MAX(1.05,A2), 1.01)"],
    [["A1;A2"], ",", "=GYLE.BEER.ABV(A1,A2)"],
    [["1.048", "1.010"], ".", "=GYLE.BEER.ABV(1.048, 1.010)"],
  ] as const)("takes %j where the sign is “%s”", (typed, decimal, formula) => {
    expect(formulaOf(abv, typed, decimal)).toBe(formula);
  });

  it("leaves words as they are typed", () => {
    expect(formulaOf(functionNamed("BEER.STYLE"), ["Stout; dry, 4.5", "1,05"], ",")).toBe('=GYLE.BEER.STYLE("Stout; dry, 4.5", 1.05)');
  });
});
