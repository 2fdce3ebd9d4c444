import fc from "fast-check";
import { expect, it } from "vitest";
import { CellError } from "../../src/functions/cell-error";
import { laidOver } from "../../src/workbook/batch/rules/what-it-says";
import { position } from "../../src/workbook/grid/plan/addresses";
import { batchOnItsWay } from "../support/arbitrary-batch";
import "../support/fixed-seed";
import { paperSheet } from "../support/paper-sheet";

it("a sheet with something laid over it shows in every cell what it shows once that is typed, over however many formulas", () => {
  let moved = 0;
  fc.assert(
    fc.property(
      batchOnItsWay,
      fc.constantFrom(
        "volume",
        "og_reading",
        "attenuation",
        "altitude",
        "boil_off",
        "malt",
        "hop_alpha",
        "readings",
        "kettle_loss",
        "pitch_temperature",
      ),
      fc.constantFrom<number | string>(1.04, 3, 12, 70, "", "some"),
      (batch, name, content) => {
        const [before, after] = [paperSheet(batch), paperSheet(batch, { [name]: content })];
        const world = laidOver(before, [{ name, content }]);
        for (const { address, value } of after.filled()) {
          const { row, column } = position(address);
          const cell = world.at(row, column);
          const shown = cell instanceof CellError ? cell.code : (cell ?? "");
          if (typeof shown === "number" && typeof value === "number") expect(shown, address).toBeCloseTo(value, 9);
          else expect(shown, address).toBe(value);
          if (before.at(row, column) !== value) moved += 1;
        }
      },
    ),
    { numRuns: 25 },
  );
  expect(moved).toBeGreaterThan(50);
}, 120_000);
