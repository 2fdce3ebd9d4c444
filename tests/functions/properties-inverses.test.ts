import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call } from "../../src/functions/call";
import { functionNamed } from "../../src/functions/registry";

const value = (id: string, ...typed: unknown[]): number => {
  const [cell] = call(functionNamed(id), typed).flat();
  return typeof cell === "number" ? cell : NaN;
};
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Each takes an input there and back; the second number is how near it must come. */
const inverses: readonly (readonly [string, fc.Arbitrary<readonly number[]>, (...inputs: number[]) => number, number])[] = [
  // 0 counts as not filled in yet.
  [
    "WORT.PLATO undoes WORT.SG",
    fc.tuple(fc.oneof(double(-5.26, -1e-3), double(1e-3, 39.99))),
    (plato) => value("WORT.PLATO", value("WORT.SG", plato)),
    1e-9,
  ],
  ["WORT.SG undoes WORT.PLATO", fc.tuple(double(0.981, 1.1787)), (gravity) => value("WORT.SG", value("WORT.PLATO", gravity)), 1e-12],
  [
    "WORT.PLATO undoes WORT.REFRACTOMETER",
    fc.tuple(double(0.1, 36), double(0.91, 1.19)),
    (brix, correction) => correction * value("WORT.PLATO", value("WORT.REFRACTOMETER", brix, correction)),
    1e-9,
  ],
  [
    "WORT.HYDROMETER changes nothing at its own temperature",
    fc.tuple(double(0.98, 1.2)),
    (reading) => value("WORT.HYDROMETER", reading, 20),
    1e-9,
  ],
  [
    "WORT.HYDROMETER in °P agrees with WORT.SG at its own temperature",
    fc.tuple(double(0.1, 39.9)),
    (plato) => value("WORT.PLATO", value("WORT.HYDROMETER", plato, 20, 20, "P")),
    1e-9,
  ],
  [
    "WORT.YIELD undoes WORT.POINTS",
    fc.tuple(double(1.01, 100)),
    (share) => value("WORT.YIELD", value("WORT.POINTS", share, "us"), "us"),
    1e-9,
  ],
  ["BEER.SRM undoes BEER.EBC", fc.tuple(double(0.1, 1000)), (srm) => value("BEER.SRM", value("BEER.EBC", srm)), 1e-9],
  [
    "HOPS.SWAP undoes HOPS.SWAP",
    fc.tuple(double(1, 500), double(1, 29), double(1, 29)),
    (mass, alpha, other) => value("HOPS.SWAP", value("HOPS.SWAP", mass, alpha, other), other, alpha),
    1e-12,
  ],
  [
    "HOPS.AGED twice is HOPS.AGED for as long",
    fc.tuple(double(5, 25), double(0, 300), double(0, 300), double(-39, -1)),
    (alpha, first, second, celsius) => {
      const inOne = value("HOPS.AGED", alpha, first + second, celsius);
      return alpha + value("HOPS.AGED", value("HOPS.AGED", alpha, first, celsius), second, celsius) - inOne;
    },
    1e-9,
  ],
  [
    "HOPS.STAND at the boil is HOPS.IBU by the kinetic model",
    fc.tuple(double(1, 100), double(0.5, 240), double(1.01, 1.15)),
    (mass, minutes, gravity) =>
      (mass * value("HOPS.STAND", mass, 8, 20, gravity, minutes, 100, 100)) /
      value("HOPS.IBU", [[mass, 8, minutes]], 20, gravity, "kinetic"),
    1e-9,
  ],
  [
    "YEAST.FINISH undoes YEAST.ATTENUATION",
    fc.tuple(double(0.999, 1.03), double(1.035, 1.19)),
    (final, original) => value("YEAST.FINISH", original, value("YEAST.ATTENUATION", original, final)),
    1e-9,
  ],
  [
    "YEAST.ATTENUATION undoes YEAST.FINISH",
    fc.tuple(double(2, 105), double(1.03, 1.12)),
    (share, original) => value("YEAST.ATTENUATION", original, value("YEAST.FINISH", original, share)),
    1e-9,
  ],
  [
    "BEER.ABV undoes BEER.ORIGINAL",
    fc.tuple(double(0.21, 16), double(0.985, 1.05)),
    (abv, final) => value("BEER.ABV", value("BEER.ORIGINAL", abv, final), final),
    1e-9,
  ],
  [
    "BEER.ORIGINAL undoes BEER.ABV",
    fc.tuple(double(1.03, 1.19), double(0.985, 1.028)),
    (original, final) => value("BEER.ORIGINAL", value("BEER.ABV", original, final), final),
    1e-9,
  ],
  [
    "PACK.VOLUMES undoes PACK.PRESSURE",
    fc.tuple(double(1.8, 5), double(1, 20)),
    (co2, celsius) => value("PACK.VOLUMES", value("PACK.PRESSURE", co2, celsius), celsius),
    1e-9,
  ],
  [
    "PACK.PRESSURE undoes PACK.VOLUMES",
    fc.tuple(double(0.01, 1.2), double(1, 36)),
    (bar, celsius) => value("PACK.PRESSURE", value("PACK.VOLUMES", bar, celsius), celsius),
    1e-9,
  ],
  [
    "HEAT.COIL undoes HEAT.CHILL",
    fc.tuple(double(0.05, 2), double(5, 18)),
    (coil, tap) => value("HEAT.COIL", [[0], [value("HEAT.CHILL", 20, 99, 30, tap, 6, coil)]], [[99], [30]], 20, tap, 6),
    1e-6,
  ],
  [
    "WATER.STEP undoes WATER.STRIKE",
    fc.tuple(double(5, 50), double(1, 8), double(20, 40), double(45, 75)),
    (water, grain, grainC, target) => {
      const strike = value("WATER.STRIKE", grain, water, grainC, target);
      // Where the water would have to boil there is no strike, and nothing to undo.
      return Number.isNaN(strike) ? water : value("WATER.STEP", grain, 1e-9, grainC, target, strike);
    },
    1e-6,
  ],
  [
    "WORT.EFFICIENCY undoes WORT.GRAVITY",
    fc.tuple(double(5, 100), double(0.1, 7)),
    (share, mass) =>
      value(
        "WORT.EFFICIENCY",
        [
          [mass, 80, "mash"],
          [0.5, 100, "sugar"],
        ],
        20,
        value(
          "WORT.GRAVITY",
          [
            [mass, 80, "mash"],
            [0.5, 100, "sugar"],
          ],
          20,
          share,
        ),
      ),
    1e-6,
  ],
  [
    "WORT.REDUCE undoes WORT.THIN",
    fc.tuple(double(5, 50), double(1.041, 1.17)),
    (volume, gravity) => {
      const thinned = (volume * gravity + value("WORT.THIN", volume, gravity, 1.04)) / 1.04;
      return thinned - value("WORT.REDUCE", thinned, 1.04, gravity);
    },
    1e-9,
  ],
  [
    "WORT.MIX with the water of WORT.THIN comes to its target",
    fc.tuple(double(1.02, 1.05), double(5, 50), double(1.051, 1.17)),
    (target, volume, gravity) => value("WORT.MIX", [[volume], [value("WORT.THIN", volume, gravity, target)]], [[gravity], [1]]),
    1e-9,
  ],
  [
    "WORT.MIX with the syrup of WORT.ENRICH comes to its target",
    fc.tuple(double(1.05, 1.1), double(5, 50), double(1.01, 1.049), double(27, 39)),
    (target, volume, gravity, syrup) => {
      const syrupGravity = value("WORT.SG", syrup);
      return value(
        "WORT.MIX",
        [[volume], [value("WORT.ENRICH", volume, gravity, target, syrup) / syrupGravity / 0.9982]],
        [[gravity], [syrupGravity]],
      );
    },
    1e-9,
  ],
];

describe("what goes there and back", () => {
  it.each(inverses)("%s", (_, inputs, thereAndBack, within) => {
    fc.assert(
      fc.property(inputs, (given) => {
        const [first = NaN] = given;
        expect(Math.abs(thereAndBack(...given) - first), `${thereAndBack(...given)} for ${first}`).toBeLessThanOrEqual(
          within * Math.max(1, Math.abs(first)),
        );
      }),
      { numRuns: 100 },
    );
  });
});
