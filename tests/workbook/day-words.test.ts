import { expect, it } from "vitest";
import { fieldMoment, momentField } from "../../src/pane/fields/moments";
import { dayNumber } from "../../src/workbook/grid/words/day-number";
import { dayShort, dayShown, momentShown } from "../../src/workbook/grid/words/day-words";

const at = (iso: string, seconds = 0): number => dayNumber(iso) + seconds / 86_400;

it("says a day and a moment in one way each", () => {
  // 5 September 2026 is a Saturday. Browsers differ in "Sep" and "Sept".
  expect(dayShort(at("2026-09-05"))).toMatch(/^5 Sept?$/);
  expect(dayShown(at("2026-09-05"))).toMatch(/^Sat 5 Sept?$/);
  expect(momentShown(at("2026-09-05T18:30"))).toMatch(/^Sat 5 Sept?, 18:30$/);
  expect(momentField(at("2026-09-05T18:30"))).toBe("2026-09-05T18:30");
});

it("takes a moment that rounds to 24:00 for the next day's 00:00, and never says 24:00", () => {
  const [before, after] = [at("2026-12-31T23:59", 29), at("2026-12-31T23:59", 31)];
  expect(momentShown(before)).toBe("Thu 31 Dec, 23:59");
  expect(momentShown(after)).toBe("Fri 1 Jan, 00:00");
  expect(momentShown(at("2027-01-01"))).toBe("Fri 1 Jan, 00:00");
  expect([before, after].map(momentField)).toEqual(["2026-12-31T23:59", "2027-01-01T00:00"]);
  expect(fieldMoment(momentField(after))).toBe(at("2027-01-01"));
});

it("keeps a day until it is over, but for what arithmetic left a hair before midnight", () => {
  expect(dayShown(at("2026-12-31T23:59", 45))).toBe("Thu 31 Dec");
  expect(dayShort(at("2026-12-31T23:59", 45))).toBe("31 Dec");
  expect(dayShown(at("2027-01-01") - 1e-9)).toBe("Fri 1 Jan");
});
