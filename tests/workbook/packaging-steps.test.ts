import { expect, it } from "vitest";
import { guidePages } from "../../src/build/guide/pages";
import { bottlingSteps, kegSteps, packagingInShort, syrupVolume } from "../../src/workbook/batch/packaging-steps";

const place = (steps: readonly string[], words: RegExp): number => steps.findIndex((step) => words.test(step));
const units = ["us", "metric", undefined] as const;

it.each(units)("bottling (%s): readings, cleaning, syrup, beer, caps, warmth, and a look after a week, in this order", (system) => {
  const steps = bottlingSteps(system);
  const order = [
    /readings agree/,
    /sanitise/,
    /^Weigh the sugar/,
    /^The cooled syrup/,
    /^Stir it/,
    /^Fill each/,
    /^Stand them/,
    /^After a week/,
  ];
  const places = order.map((words) => place(steps, words));
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(new Set(places).size).toBe(order.length);
  expect(places[0]).toBe(0);
  // What hurts is said in the step that it belongs to.
  expect(steps[place(steps, /^Weigh the sugar/)]).toMatch(/never guess.*Hot syrup sticks to skin and burns/);
  expect(steps[place(steps, /^Stand them/)]).toMatch(/away from people.*burst/);
  expect(steps[place(steps, /^After a week/)]).toMatch(/goggles/);
});

it.each(units)("a keg (%s): its plate and its pressure come before everything, and the room is aired", (system) => {
  const steps = kegSteps(system);
  expect(steps[0]).toMatch(/plate.*pressure off/);
  expect(place(steps, /suffocates/)).toBeGreaterThan(0);
});

it("speaks of one unit on a sheet and of both where there is none", () => {
  const all = (system?: "us" | "metric") => [...bottlingSteps(system), ...kegSteps(system)].join(" ");
  expect(all("metric")).not.toMatch(/inch|cups/);
  expect(all("us")).not.toMatch(/\bcm\b|litre/);
  expect(all()).toMatch(/half a litre \(two cups\)/);
  expect(packagingInShort("us").join(" ")).not.toMatch(/\bcm\b/);
});

it("boils the sugar in as much water as the sheet counts with the beer", () => {
  expect(bottlingSteps("metric").join(" ")).toContain("half a litre");
  expect(syrupVolume.metric).toBe(1 / 2);
  // 16 US cups are a US gallon (NIST Handbook 44, appendix C).
  expect(bottlingSteps("us").join(" ")).toContain("two cups");
  expect(syrupVolume.us).toBe(2 / 16);
});

it("stands whole in the guide", () => {
  const told = guidePages.flatMap(({ sections }) => sections.flatMap(({ steps = [] }) => steps));
  for (const step of [...bottlingSteps(), ...kegSteps()]) expect(told).toContain(step);
});
