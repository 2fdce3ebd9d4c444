import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { gyleCalls, withInner, type GyleCall } from "../../../src/workbook/grid/formulas";
import { replaceCalls } from "../../../src/workbook/grid/formulas";

const outline = (calls: readonly GyleCall[]): unknown[] =>
  calls.map((call) => [call.id, call.arguments.map(({ text }) => text), ...(call.inner.length > 0 ? [outline(call.inner)] : [])]);

describe("finding GYLE calls", () => {
  it.each<[string, unknown[]]>([
    ["=GYLE.BEER.ABV(og, fg)", [["BEER.ABV", ["og", "fg"]]]],
    ["=gyle.Beer.abv( og ,fg )", [["BEER.ABV", ["og", "fg"]]]],
    ["_xldudf_GYLE_BEER_ABV(og,fg)", [["BEER.ABV", ["og", "fg"]]]],
    ["=GYLE.BEER.ABV (1.05,1.01)", [["BEER.ABV", ["1.05", "1.01"]]]],
    ["=GYLE.WATER.BUDGET(a,60,,,b,,)", [["WATER.BUDGET", ["a", "60", "", "", "b", "", ""]]]],
    ["=GYLE.X.Y()", [["X.Y", []]]],
    [
      '=IF(GYLE.BEER.ABV(og,fg)>5,GYLE.BEER.EBC({1,2;3,4}),"no GYLE.BEER.ABV(1,2), see")',
      [
        ["BEER.ABV", ["og", "fg"]],
        ["BEER.EBC", ["{1,2;3,4}"]],
      ],
    ],
    [
      "=LET(p,GYLE.WORT.SG(12.4),GYLE.BEER.ABV(p,GYLE.YEAST.FINISH(p,IF(a>0,a,75))))",
      [
        ["WORT.SG", ["12.4"]],
        ["BEER.ABV", ["p", "GYLE.YEAST.FINISH(p,IF(a>0,a,75))"], [["YEAST.FINISH", ["p", "IF(a>0,a,75)"]]]],
      ],
    ],
    [
      '=GYLE.GAUGE.SPREAD("BEER.ABV",CHOOSE({1,2},og,fg),{0.002,0.002})',
      [["GAUGE.SPREAD", ['"BEER.ABV"', "CHOOSE({1,2},og,fg)", "{0.002,0.002}"]]],
    ],
    [
      "=GYLE.WORT.COLOUR(Malt_1[[Mass kg]:[Colour, EBC)]],'GYLE.a(1,2)'!B2)",
      [["WORT.COLOUR", ["Malt_1[[Mass kg]:[Colour, EBC)]]", "'GYLE.a(1,2)'!B2"]]],
    ],
    ["=INDEX(GYLE.PACK.BOTTLES((A1,B1),B2#),1,1)", [["PACK.BOTTLES", ["(A1,B1)", "B2#"]]]],
    ["=GYLE.HOPS.IBU(\n  hops,\n  20\n)", [["HOPS.IBU", ["hops", "20"]]]],
    ["=GYLE.WORT.SG(12)+GYLE.BEER.ABV(og,", [["WORT.SG", ["12"]]]],
    ["=IF(GYLE.WORT.SG(12)>1,", [["WORT.SG", ["12"]]]],
    ["=GYLE+GYLE.og*gyles.beer(1)", []],
    ["a text, GYLE.BEER.ABV(1,2)", [["BEER.ABV", ["1", "2"]]]],
    ["", []],
  ])("%s", (formula, expected) => {
    expect(outline(gyleCalls(formula))).toEqual(expected);
  });

  it("says where everything stands and how deep", () => {
    const formula = "=1+GYLE.A.ONE( x , SUM(GYLE.B.TWO(GYLE.C.THREE(7))))";
    const all = withInner(gyleCalls(formula));
    expect(all.map(({ id, depth }) => [id, depth])).toEqual([
      ["A.ONE", 1],
      ["B.TWO", 2],
      ["C.THREE", 3],
    ]);
    for (const call of all) for (const part of [call, ...call.arguments]) expect(formula.slice(part.start, part.end)).toBe(part.text);
  });
});

describe("exchanging calls", () => {
  it("works from the inside outwards", () => {
    const formula = '=IF(a="","",GYLE.A.ONE(GYLE.B.TWO(1, 2),  3)) & "GYLE.A.ONE(1)"';
    expect(replaceCalls(formula, ({ id }, texts) => (id === "B.TWO" ? `(${texts.join("+")})` : undefined))).toBe(
      '=IF(a="","",GYLE.A.ONE((1+2),  3)) & "GYLE.A.ONE(1)"',
    );
    expect(replaceCalls(formula, ({ id }, texts) => `${id}<${texts.join("|")}>`)).toBe(
      '=IF(a="","",A.ONE<B.TWO<1|2>|3>) & "GYLE.A.ONE(1)"',
    );
  });
});

/** Formulas of every shape that a cell may hold, and nonsense. */
const { formula } = fc.letrec<{ formula: string; term: string; call: string }>((tie) => ({
  formula: tie("term").map((term) => `=${term}`),
  term: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    fc.constantFrom(
      "og",
      "$B$4",
      "B2:B9",
      "'my GYLE.X(1), sheet'!A1",
      '"say ""GYLE.A.B(1)"", please"',
      "Malt_1[[#This Row],[Mass, kg]]",
      "Malt[@]",
      "A1#",
      "{1,2;3,4}",
      "#N/A",
      "1.5E-3",
      "TRUE",
      "B:B",
    ),
    tie("call"),
    fc.tuple(tie("term"), fc.constantFrom("+", " - ", "*", "/", "^", "&", "<>", ">="), tie("term")).map((parts) => parts.join("")),
    tie("term").map((term) => `(${term})`),
    fc.tuple(tie("term"), tie("term")).map(([one, other]) => `LET(x, ${one},IF(x>1,${other},""))`),
  ),
  call: fc
    .tuple(
      fc.constantFrom("GYLE.BEER.ABV", "gyle.wort.sg", "_xldudf_GYLE_HOPS_IBU", "SUM", "_xlfn.MAXIFS", "NOT.GYLE.BEER.ABV"),
      fc.array(fc.oneof({ weight: 4, arbitrary: tie("term") }, { weight: 1, arbitrary: fc.constantFrom("", " ", "\n") }), { maxLength: 4 }),
    )
    .map(([name, parts]) => `${name}(${parts.join(",")})`),
}));

describe("for any formula", () => {
  it("putting every call back as it was changes nothing", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          formula,
          fc.string(),
          formula.map((text) => text.slice(0, -2)),
        ),
        (text) => {
          expect(replaceCalls(text, () => undefined)).toBe(text);
          const blanks: string[] = [];
          const tight = replaceCalls(text, (call, texts) => (blanks.push(...gapsOf(text, call)), `${nameOf(call)}(${texts.join(",")})`));
          // Rebuilt from its parts, a formula has lost nothing but blanks around arguments.
          if (blanks.every((gap) => gap === "")) expect(tight).toBe(text);
          expect(withInner(gyleCalls(tight)).map(({ id, arguments: { length } }) => [id, length])).toEqual(
            withInner(gyleCalls(text)).map(({ id, arguments: { length } }) => [id, length]),
          );
        },
      ),
    );
  });

  it("spans hold what they say, calls stand side by side, inner ones within their call's arguments", () => {
    fc.assert(
      fc.property(formula, (text) => {
        const check = (calls: readonly GyleCall[], from: number, to: number): void => {
          let at = from;
          for (const call of calls) {
            expect(call.start).toBeGreaterThanOrEqual(at);
            at = call.end;
            for (const part of [call, ...call.arguments]) expect(text.slice(part.start, part.end)).toBe(part.text);
            for (const { start, end } of call.inner)
              expect(call.arguments.some((part) => part.start <= start && end <= part.end)).toBe(true);
            check(call.inner, call.start, call.end);
          }
          expect(at).toBeLessThanOrEqual(to);
        };
        check(gyleCalls(text), 0, text.length);
      }),
    );
  });
});

const nameOf = (call: GyleCall): string => call.text.slice(0, call.text.indexOf("(")).trimEnd();

/** What is left of a call without its name, arguments, commas and brackets: blanks. */
function gapsOf(text: string, call: GyleCall): string[] {
  let at = call.start + nameOf(call).length;
  const gaps = call.arguments.map(({ start, end }) => {
    const gap = text.slice(at, start);
    at = end;
    return gap;
  });
  return [...gaps, text.slice(at, call.end)].map((gap) => gap.replace(/[(,)]/g, ""));
}
