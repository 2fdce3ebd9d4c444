import { expect, it } from "vitest";
import { agedHops } from "../../src/workbook/sheets/stores/aged-hops";
import type { Stores } from "../../src/workbook/sheets/stores/stock";
import { handSheet } from "../support/hand-sheet";

const day = 46270;
const batch = handSheet({ hop_plan: [["Cascade", 30, 5.5]], brewed_on: day });
const kept = (container: string): Stores => ({
  sheetName: "Stores",
  units: "metric",
  draws: [],
  items: [{ kind: "hops", name: "Cascade", left: 100, cells: ["Cascade", 100, 0, 100, 2, "", 10, day - 180, "", 20, container] }],
});

it("are known in a package that the stores sheet takes, and in no other", () => {
  // Garetz, Hop Storage (1994), by definition: 30 % lost in six months at 20 °C, open; a quarter less of the exponent when sealed.
  expect(agedHops(kept("loose"), batch)[0]?.onTheDayPercent).toBeCloseTo(7, 9);
  expect(agedHops(kept(""), batch)[0]?.onTheDayPercent).toBeCloseTo(7, 9);
  expect(agedHops(kept("sealed"), batch)[0]?.onTheDayPercent).toBeCloseTo(10 * 0.7 ** 0.75, 9);
  // The sheet shows #VALUE! for it.
  expect(agedHops(kept("none"), batch)).toEqual([]);
});
