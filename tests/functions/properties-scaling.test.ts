import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call } from "../../src/functions/call";
import type { Matrix } from "../../src/functions/describe";
import { functionNamed } from "../../src/functions/registry";
import { arbitraryCall, typedCall, type CoreArgument } from "../support/arbitrary-call";
import { allDrawn } from "../support/drawn";
import { placesOf } from "../support/registry-probe";

/** What grows with the recipe, and by what power of it the answer grows. */
const scaling: readonly (readonly [string, readonly string[], 0 | 1])[] = [
  ["WORT.GRAVITY", ["fermentables.mass", "volume"], 0],
  ["WORT.COLOUR", ["fermentables.mass", "volume"], 0],
  ["WORT.EFFICIENCY", ["fermentables.mass", "volume"], 0],
  ["WORT.MIX", ["volumes"], 0],
  ["HOPS.IBU", ["additions.mass", "volume"], 0],
  ["HOPS.STAND", ["mass", "volume"], 0],
  ["WATER.STRIKE", ["grain_mass", "water_volume"], 0],
  ["WATER.IONS", ["salts.mass", "volume"], 0],
  ["WATER.BLEND", ["shares"], 0],
  ["WORT.KETTLE", ["fermentables.mass", "late.mass", "before", "after"], 0],
  ["WORT.BILL", ["volume"], 1],
  ["WORT.BILL", ["shares.share"], 0],
  ["HOPS.WEIGH", ["volume"], 1],
  ["HOPS.DRY", ["mass", "volume"], 0],
  ["WORT.THIN", ["volume"], 1],
  ["WORT.REDUCE", ["volume"], 1],
  ["WORT.ENRICH", ["volume"], 1],
  ["HOPS.SWAP", ["mass"], 1],
  ["WATER.STEP", ["grain_mass", "water_volume"], 1],
  ["WATER.ACID", ["volume"], 1],
  ["WATER.DECHLORINATE", ["volume"], 1],
  ["MASH.ROOM", ["grain_mass", "water_volume"], 1],
  ["MASH.ACIDITY", ["malts.mass", "water_volume", "acid_amount"], 0],
  ["MASH.CORRECT", ["malts.mass", "water_volume"], 1],
  ["MASH.BOILED", ["volume"], 1],
  ["HEAT.WARM", ["volume"], 1],
  ["HEAT.CHILL", ["volume"], 1],
  ["CLEAN.DOSE", ["volume"], 1],
  ["YEAST.CELLS", ["volume"], 1],
  ["PACK.PRIMING", ["volume"], 1],
  ["PACK.DOSE", ["bottles.size"], 1],
  ["HOPS.SHARE", ["additions.mass", "volume"], 0],
  ["WATER.BUDGET", ["into_fermenter", "evaporation", "kettle_loss", "grain_mass", "fermentables.mass", "dead_space"], 1],
  // A kitchen half as large is as fast.
  ["HEAT.WARM", ["volume", "power"], 0],
  ["HEAT.CHILL", ["volume", "flow", "coil"], 0],
  ["HEAT.COIL", ["volume", "flow"], 1],
  ["YEAST.STARTER", ["cells_now", "cells_wanted"], 1],
  ["YEAST.STEPS", ["cells_now", "cells_wanted"], 1],
  ["BEER.ENERGY", ["serving"], 1],
  ["BEER.CARBS", ["serving"], 1],
  ["BEER.ADDED", ["volume", "additions.mass"], 0],
  ["BEER.BLEND", ["volumes"], 0],
  ["HEAT.BOILOFF", ["power"], 1],
  ["HEAT.COUNTERFLOW", ["wort_flow", "flow", "coil"], 0],
];

describe.each(scaling)("a recipe half as large: GYLE.%s", (id, amounts, power) => {
  const descriptor = functionNamed(id);
  const places = placesOf(descriptor).filter(({ name }) => name !== "units");
  const smaller = (core: readonly CoreArgument[]): CoreArgument[] =>
    core.map((value, index) => {
      const { name = "", parameter } = places[index] ?? {};
      const halved = (cell: number | string | null) => (typeof cell === "number" ? cell / 2 : cell);
      if (parameter?.kind === "table" && Array.isArray(value)) {
        const layout = parameter.layouts[0] ?? [];
        return (value as Matrix<number | string | null>).map((row) =>
          row.map((cell, column) => (amounts.includes(`${name}.${layout[column]}`) ? halved(cell) : cell)),
        );
      }
      if (!amounts.includes(name)) return value;
      // What is left out stands for a usual amount, of which half is wanted.
      if (value === null)
        return parameter !== undefined && "default" in parameter && typeof parameter.default === "number" ? parameter.default / 2 : value;
      return Array.isArray(value)
        ? (value as Matrix<number | string | null>).map((row) => row.map(halved))
        : halved(value as number | string | null);
    });

  it(power === 1 ? "takes half as much" : "comes out the same", () => {
    let compared = 0;
    fc.assert(
      fc.property(arbitraryCall(descriptor), (core) => {
        const whole = call(descriptor, typedCall(descriptor, core, "metric"));
        const half = call(descriptor, typedCall(descriptor, smaller(core), "metric"));
        whole.flat().forEach((cell, index) => {
          const twin = half.flat()[index];
          if (typeof cell !== "number" || typeof twin !== "number") return;
          compared += 1;
          expect(Math.abs(cell - twin * 2 ** power), `${cell} and ${twin}`).toBeLessThanOrEqual(1e-8 * Math.max(1e-6, Math.abs(cell)));
        });
      }),
      { numRuns: 150 },
    );
    if (allDrawn) expect(compared).toBeGreaterThan(10);
  });
});
