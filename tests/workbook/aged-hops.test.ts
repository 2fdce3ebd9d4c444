import { expect, it } from "vitest";
import { agedHops } from "../../src/workbook/sheets/stores/aged-hops";
import type { HopOnShelf, StockItem, Stores } from "../../src/workbook/sheets/stores/stock";
import { handSheet } from "../support/hand-sheet";

const day = 46270;
const batch = handSheet({ hop_plan: [["Cascade", 30, 5.5]], brewed_on: day });
const lot = (called: string, left: number, about: Partial<HopOnShelf> = {}): StockItem => {
  const hop = { alphaPercent: 10, measuredOn: day - 180, openedOn: "", storedAt: 20, package: "loose", ...about };
  return { kind: "hops", name: "Cascade", lot: called, dated: Number(hop.measuredOn), bought: left, left, price: 2, remark: "", hop };
};
const kept = (container: string): Stores => ({
  sheetName: "Stores",
  units: "metric",
  version: 2,
  draws: [],
  items: [lot("", 100, { package: container })],
});

it("are known in a package that the stores sheet takes, and in no other", () => {
  // Garetz, Hop Storage (1994), by definition: 30 % lost in six months at 20 °C, open; a quarter less of the exponent when sealed.
  expect(agedHops(kept("loose"), batch)[0]?.onTheDayPercent).toBeCloseTo(7, 9);
  expect(agedHops(kept(""), batch)[0]?.onTheDayPercent).toBeCloseTo(7, 9);
  expect(agedHops(kept("sealed"), batch)[0]?.onTheDayPercent).toBeCloseTo(10 * 0.7 ** 0.75, 9);
  // The sheet shows #VALUE! for it.
  expect(agedHops(kept("none"), batch)).toEqual([]);
});
