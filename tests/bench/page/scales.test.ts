import { expect, test } from "vitest";
import { axisSpan, axisText, isDateFormat, mapSpan, niceMarks } from "../../../src/bench/page/charts/scales";

test("marks stand at round figures inside the span", () => {
  expect(niceMarks([1.01, 1.05], 6)).toEqual([1.01, 1.02, 1.03, 1.04, 1.05]);
  expect(niceMarks([0, 8], 8)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
  expect(niceMarks([-12, 25], 4)).toEqual([-10, 0, 10, 20]);
});

test("a span reaches to round figures around the values, unless the axis has limits", () => {
  const [low, high] = axisSpan([1.011, 1.049], {});
  expect(low).toBeCloseTo(1.01, 9);
  expect(high).toBeCloseTo(1.05, 9);
  expect(axisSpan([3, 4], { minimum: 0, maximum: 10 })).toEqual([0, 10]);
});

test("values that are all alike, or none at all, still have a span", () => {
  const [low, high] = axisSpan([1.05, 1.05], {});
  expect(low).toBeLessThan(1.05);
  expect(high).toBeGreaterThan(1.05);
  expect(axisSpan([], {})).toEqual([0, 1]);
  // A season of one batch: its day with a week around it, no years.
  const [from, to] = axisSpan([46270], { numberFormat: "yyyy-mm-dd" });
  expect([from < 46270, to > 46270, to - from <= 8]).toEqual([true, true, true]);
});

test("a value keeps its place between two axes", () => {
  expect(mapSpan([0, 100], [1, 2])(25)).toBeCloseTo(1.25, 12);
});

test("figures read as the number format says", () => {
  expect(axisText("0.000")(1.05)).toBe("1.050");
  expect(axisText("0.0%")(0.0531)).toBe("5.3 %");
  expect(axisText(undefined)(0.1 + 0.2)).toBe("0.3");
  // Day 46270 of Excel's calendar: 2026-09-05 is 25569 + 20701 days (1970-01-01 is day 25569).
  expect(axisText("mm-dd")(46270)).toBe("09-05");
  expect(axisText("yyyy-mm-dd")(46270)).toBe("2026-09-05");
  expect(axisText("d. mmmm")(46270)).toBe("5 Sept");
});

test("dates are told from figures by the format, leaving out quoted words and colours", () => {
  expect(isDateFormat("yyyy-mm-dd")).toBe(true);
  expect(isDateFormat('0.0 "days"')).toBe(false);
  expect(isDateFormat("[Red]0.00")).toBe(false);
  expect(isDateFormat("General")).toBe(false);
});
