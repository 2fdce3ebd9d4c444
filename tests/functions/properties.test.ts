import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import { call, type Answer } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, Matrix } from "../../src/functions/describe";
import { quantities, quantity, type QuantityName } from "../../src/functions/quantities";
import { functionNamed, registry } from "../../src/functions/registry";
import { arbitraryCall, typedCall, unitFactors, type CoreArgument } from "../support/arbitrary-call";
import { placesOf, withArgument } from "../support/registry-probe";

/** Over the whole domain of every function, as its description states it. The made-up calls are the same each time. */
const settings = { seed: 1125, numRuns: 60 };
const everyFunction = registry.map((descriptor) => [descriptor.id, descriptor] as const);

afterEach(() => vi.restoreAllMocks());

/** A bug of ours is logged; a brewer's mistake is not. */
function quietly<T>(run: () => T): T {
  const logged = vi.spyOn(console, "error").mockImplementation(() => undefined);
  const result = run();
  expect(logged.mock.calls).toEqual([]);
  logged.mockRestore();
  return result;
}

function expectProper(answer: Answer): void {
  expect(answer.length).toBeGreaterThan(0);
  for (const cell of answer.flat()) {
    if (typeof cell === "number") expect(Number.isFinite(cell)).toBe(true);
    else if (cell instanceof CellError) {
      expect(cell.message).not.toMatch(/internal error|NaN|undefined|Infinity|\[object/);
      expect(cell.message.length).toBeGreaterThan(10);
      expect(["#VALUE!", "#N/A", "#NUM!", "#DIV/0!"]).toContain(cell.code);
    } else expect(typeof cell).toBe("string");
  }
}

const hasNumber = (answer: Answer): boolean => answer.flat().some((cell) => typeof cell === "number" || (typeof cell === "string" && cell !== ""));

describe.each(everyFunction)("GYLE.%s, whatever is typed within its limits", (_, descriptor) => {
  it("answers with a finite number, words, or an error with its reason", () => {
    let answered = 0;
    fc.assert(
      fc.property(arbitraryCall(descriptor), (core) => {
        const answer = quietly(() => call(descriptor, typedCall(descriptor, core, "metric")));
        expectProper(answer);
        if (hasNumber(answer)) answered += 1;
      }),
      { ...settings, numRuns: 100 },
    );
    // Calls that are all refused would prove nothing.
    expect(answered).toBeGreaterThan(5);
  });

  const slips = fc.constantFrom<unknown>(true, "a word", "", null, -1, 0, 1e-300, 1e300, -273.15, [[1], [2], [3]], [[1, 2], [3, 4]], [["a", "b", "c"]], [[]], new CellError("#DIV/0!", "an input is #DIV/0!"));

  it("keeps its manners with a slip of the hand in any place", () => {
    fc.assert(
      fc.property(arbitraryCall(descriptor), fc.nat({ max: placesOf(descriptor).length - 1 }), slips, (core, place, slip) => {
        expectProper(quietly(() => call(descriptor, withArgument(typedCall(descriptor, core, "metric"), place, slip))));
      }),
      settings,
    );
  });
});

const inBothSystems = registry.filter((descriptor) => placesOf(descriptor).some(({ name }) => name === "units")).map((descriptor) => [descriptor.id, descriptor] as const);
const factors = unitFactors(Object.keys(quantities) as QuantityName[]);

const close = (one: number, other: number, within = 1e-7): boolean => Math.abs(one - other) <= within * Math.max(1e-6, Math.abs(one), Math.abs(other));

/** The same amounts in litres and in gallons. Of words, those before the first figure; of a block, each number by some unit's factor. */
function expectSamePhysics(descriptor: AnyDescriptor, metric: Answer, us: Answer): void {
  expect(us.map((row) => row.length)).toEqual(metric.map((row) => row.length));
  metric.flat().forEach((one, index) => {
    const other = us.flat()[index];
    if (one instanceof CellError || other instanceof CellError) expect(other).toMatchObject({ code: (one as CellError).code });
    else if (typeof one === "number" && typeof other === "number") {
      if (descriptor.result.kind === "number") {
        const name = descriptor.result.quantity as QuantityName;
        const [core, twin] = [quantity(name).toCore(one, "metric"), quantity(name).toCore(other, "us")];
        expect(close(core, twin), `${core} and ${twin}`).toBe(true);
      } else expect(factors.some((factor) => close(one, other * factor)), `${one} and ${other}`).toBe(true);
    } else if (descriptor.id !== "DAY.TIMELINE") expect(String(other).split(/\d/)[0]).toBe(String(one).split(/\d/)[0]);
  });
}

describe.each(inBothSystems)("GYLE.%s in litres and in gallons", (_, descriptor) => {
  it("says the same of the same brew", () => {
    fc.assert(
      fc.property(arbitraryCall(descriptor), (core) => {
        expectSamePhysics(descriptor, call(descriptor, typedCall(descriptor, core, "metric")), call(descriptor, typedCall(descriptor, core, "us")));
      }),
      settings,
    );
  });
});

/** Functions that answer row for row: their answer is turned round with the rows. */
const rowForRow = ["HOPS.SHARE", "PACK.DOSE"];
/** Where the order is the meaning. */
const inOrder: Readonly<Record<string, string>> = { "DAY.TIMELINE": "the steps follow one another", "GAUGE.SPREAD": "the arguments have their places" };
const ofRows = registry.filter((descriptor) => !(descriptor.id in inOrder) && placesOf(descriptor).some(({ parameter }) => parameter.kind === "table" || parameter.kind === "list")).map((descriptor) => [descriptor.id, descriptor] as const);

function expectClose(one: Answer, other: Answer): void {
  expect(other.map((row) => row.length)).toEqual(one.map((row) => row.length));
  one.flat().forEach((cell, index) => {
    const twin = other.flat()[index];
    if (typeof cell === "number" && typeof twin === "number") expect(close(cell, twin, 1e-9), `${cell} and ${twin}`).toBe(true);
    else if (cell instanceof CellError) expect(twin).toMatchObject({ code: cell.code });
    else expect(twin).toEqual(cell);
  });
}

describe.each(ofRows)("GYLE.%s with its rows in another order", (id, descriptor) => {
  const turned = (core: readonly CoreArgument[]): CoreArgument[] => {
    const places = placesOf(descriptor);
    // What is asked for one by one (`at`), and a base with fixed places, stay.
    return core.map((value, index) => (Array.isArray(value) && !["at", "base"].includes(places[index]?.name ?? "") ? [...(value as Matrix<number | string | null>)].reverse() : value));
  };

  it("gives the same", () => {
    fc.assert(
      fc.property(arbitraryCall(descriptor), (core) => {
        const answer = call(descriptor, typedCall(descriptor, core, "metric"));
        const other = call(descriptor, typedCall(descriptor, turned(core), "metric"));
        expectClose(answer, rowForRow.includes(id) ? [...other].reverse() : other);
      }),
      settings,
    );
  });
});

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
  ["WORT.THIN", ["volume"], 1],
  ["WORT.REDUCE", ["volume"], 1],
  ["WORT.ENRICH", ["volume"], 1],
  ["HOPS.SWAP", ["mass"], 1],
  ["WATER.STEP", ["grain_mass", "water_volume"], 1],
  ["WATER.ACID", ["volume"], 1],
  ["WATER.DECHLORINATE", ["volume"], 1],
  ["HEAT.WARM", ["volume"], 1],
  ["HEAT.CHILL", ["volume"], 1],
  ["CLEAN.DOSE", ["volume"], 1],
  ["YEAST.CELLS", ["volume"], 1],
  ["PACK.PRIMING", ["volume"], 1],
];

describe.each(scaling)("a recipe half as large: GYLE.%s", (id, amounts, power) => {
  const descriptor = functionNamed(id);
  const smaller = (core: readonly CoreArgument[]): CoreArgument[] =>
    core.map((value, index) => {
      const { name = "", parameter } = placesOf(descriptor)[index] ?? {};
      const halved = (cell: number | string | null) => (typeof cell === "number" ? cell / 2 : cell);
      if (parameter?.kind === "table" && Array.isArray(value)) {
        const layout = parameter.layouts[0] ?? [];
        return (value as Matrix<number | string | null>).map((row) => row.map((cell, column) => (amounts.includes(`${name}.${layout[column]}`) ? halved(cell) : cell)));
      }
      if (!amounts.includes(name)) return value;
      return Array.isArray(value) ? (value as Matrix<number | string | null>).map((row) => row.map(halved)) : halved(value as number | string | null);
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
          expect(close(cell, twin * 2 ** power, 1e-8), `${cell} and ${twin}`).toBe(true);
        });
      }),
      { ...settings, numRuns: 150 },
    );
    expect(compared).toBeGreaterThan(10);
  });
});

const value = (id: string, ...typed: unknown[]): number => {
  const [cell] = call(functionNamed(id), typed).flat();
  return typeof cell === "number" ? cell : NaN;
};
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Each takes an input there and back; the second number is how near it must come. */
const inverses: readonly (readonly [string, fc.Arbitrary<readonly number[]>, (...inputs: number[]) => number, number])[] = [
  ["WORT.PLATO undoes WORT.SG", fc.tuple(double(0.1, 39)), (plato) => value("WORT.PLATO", value("WORT.SG", plato)), 1e-9],
  ["WORT.YIELD undoes WORT.POINTS", fc.tuple(double(1.01, 100)), (share) => value("WORT.YIELD", value("WORT.POINTS", share, "us"), "us"), 1e-9],
  ["BEER.SRM undoes BEER.EBC", fc.tuple(double(1, 200)), (srm) => value("BEER.SRM", value("BEER.EBC", srm)), 1e-9],
  ["YEAST.FINISH undoes YEAST.ATTENUATION", fc.tuple(double(1.008, 1.03), double(1.035, 1.1)), (final, original) => value("YEAST.FINISH", original, value("YEAST.ATTENUATION", original, final)), 1e-6],
  ["BEER.ABV undoes BEER.ORIGINAL", fc.tuple(double(1, 12), double(0.998, 1.03)), (abv, final) => value("BEER.ABV", value("BEER.ORIGINAL", abv, final), final), 1e-6],
  ["PACK.VOLUMES undoes PACK.PRESSURE", fc.tuple(double(1.8, 4), double(1, 20)), (co2, celsius) => value("PACK.VOLUMES", value("PACK.PRESSURE", co2, celsius), celsius), 1e-6],
  ["HEAT.COIL undoes HEAT.CHILL", fc.tuple(double(0.1, 2), double(5, 18)), (coil, tap) => value("HEAT.COIL", [[0], [value("HEAT.CHILL", 20, 99, 30, tap, 6, coil)]], [[99], [30]], 20, tap, 6), 1e-6],
  ["WORT.EFFICIENCY undoes WORT.GRAVITY", fc.tuple(double(40, 95), double(3, 7)), (share, mass) => value("WORT.EFFICIENCY", [[mass, 80, "mash"]], 20, value("WORT.GRAVITY", [[mass, 80, "mash"]], 20, share)), 1e-6],
  ["WORT.REDUCE undoes WORT.THIN", fc.tuple(double(5, 50), double(1.041, 1.1)), (volume, gravity) => {
    const thinned = (volume * gravity + value("WORT.THIN", volume, gravity, 1.04)) / 1.04;
    return thinned - value("WORT.REDUCE", thinned, 1.04, gravity);
  }, 1e-6],
];

describe("what goes there and back", () => {
  it.each(inverses)("%s", (_, inputs, thereAndBack, within) => {
    fc.assert(
      fc.property(inputs, (given) => {
        const [first = NaN] = given;
        expect(Math.abs(thereAndBack(...given) - first), `${thereAndBack(...given)} for ${first}`).toBeLessThanOrEqual(within * Math.max(1, Math.abs(first)));
      }),
      settings,
    );
  });
});
