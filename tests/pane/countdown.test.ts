import { expect, it } from "vitest";
import { inWords, isForgotten } from "../../src/pane/brew-day/countdown";

it.each([
  [0, "0 min"],
  [15, "15 min"],
  [59, "59 min"],
  [60, "1 h 00 min"],
  [64, "1 h 04 min"],
  [561, "9 h 21 min"],
  [-75, "1 h 15 min"],
])("%i minutes are no time of day: %s", (minutes, words) => {
  expect(inWords(minutes)).toBe(words);
});

it("a line that is over by more than an hour was forgotten, and none before", () => {
  const end = Date.UTC(2026, 10, 30, 12);
  expect(isForgotten(end, end + 60 * 60_000)).toBe(false);
  expect(isForgotten(end, end + 61 * 60_000)).toBe(true);
  expect(isForgotten(end, end - 90 * 60_000)).toBe(false);
});
