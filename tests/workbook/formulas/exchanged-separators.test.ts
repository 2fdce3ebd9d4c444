import { expect, it } from "vitest";
import { withOurSeparators } from "../../../src/workbook/grid/formulas";

it.each([
  ["=GYLE.BEER.ABV(1,048;1,010)", "=GYLE.BEER.ABV(1.048, 1.010)"],
  ["=ROUND(GYLE.BEER.ABV(A1;B1);1)", "=ROUND(GYLE.BEER.ABV(A1, B1), 1)"],
  ['=IF(A1>1,5;"a;b, 1,5";"x""y;")', '=IF(A1>1.5, "a;b, 1,5", "x""y;")'],
  ["='Plan; B,1'!A1+SUM('Plan; B,1'!A1;1,5)", "='Plan; B,1'!A1+SUM('Plan; B,1'!A1, 1.5)"],
  ["=SUM({1;2};3)", "=SUM({1;2}, 3)"],
])("%s would have to be %s", (typed, ours) => expect(withOurSeparators(typed)).toBe(ours));

it.each([
  "=GYLE.BEER.ABV(1.048,1.010)",
  "=SUM(1,2)",
  "=SUM({1;2})",
  '="a;b"&IF(TRUE,"(;)","")',
  "=A1;B1",
  "=SUM(Table1[a;b])",
  "1,048;1,010",
  "",
])("%s has nothing exchanged in it", (formula) => expect(withOurSeparators(formula)).toBeUndefined());
