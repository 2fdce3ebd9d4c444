import { describe, expect, it } from "vitest";
import { call } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, Limits } from "../../src/functions/describe";
import { limitText } from "../../src/functions/messages";
import { quantity, showQuantity, type UnitSystem } from "../../src/functions/quantities";
import { registry } from "../../src/functions/registry";
import { argumentsOf, numberPlaces, typedValue, unitsOf, type NumberPlace } from "../support/registry-probe";

interface Probe {
  readonly what: string;
  readonly coreValue: number;
  readonly outside: boolean;
  readonly limit: number;
}

/** A hair on either side of a limit, and the limit itself. */
function probesOf({ above, atLeast, below, atMost }: Limits): Probe[] {
  const hair = (limit: number): number => 1e-6 * Math.max(1, Math.abs(limit));
  const around = (limit: number, up: 1 | -1, inclusive: boolean): Probe[] => [
    { what: `just outside ${limit}`, coreValue: limit - up * hair(limit), outside: true, limit },
    { what: `just inside ${limit}`, coreValue: limit + up * hair(limit), outside: false, limit },
    { what: `at ${limit}`, coreValue: limit, outside: !inclusive, limit },
  ];
  return [
    ...(above === undefined ? [] : around(above, 1, false)),
    ...(atLeast === undefined ? [] : around(atLeast, 1, true)),
    ...(below === undefined ? [] : around(below, -1, false)),
    ...(atMost === undefined ? [] : around(atMost, -1, true)),
  ];
}

/** Every error in the answer that speaks of a limit of this place. */
function limitErrors(descriptor: AnyDescriptor, typed: unknown[], { label, parameter }: NumberPlace, units: UnitSystem): CellError[] {
  const refusal = `it must be ${limitText(parameter.quantity, parameter.limits, units)}`;
  return call(descriptor, typed)
    .flat()
    .filter(
      (cell): cell is CellError => cell instanceof CellError && cell.message.startsWith(`${label} is `) && cell.message.includes(refusal),
    );
}

/** Every place of every example of a function where a number may be typed. A function of words alone has nothing to bound. */
const bounded = registry
  .map((descriptor) => ({
    id: descriptor.id,
    descriptor,
    places: descriptor.examples.flatMap((example) => {
      const typed = argumentsOf(descriptor, example);
      const units = unitsOf(descriptor, typed);
      return numberPlaces(descriptor, typed).map((place) => ({
        place,
        units,
        probes: probesOf(place.parameter.limits),
        where: `${place.label} of ${JSON.stringify(typed)}`,
      }));
    }),
  }))
  .filter(({ places }) => places.length > 0);

describe.each(bounded)("GYLE.$id", ({ descriptor, places }) => {
  it("bounds every number", () => {
    for (const { place, units, probes, where } of places) {
      const { label, parameter, put } = place;
      const { above, atLeast, below, atMost } = parameter.limits;
      expect(above ?? atLeast, `a lower limit for ${where}`).toBeDefined();
      expect(below ?? atMost, `an upper limit for ${where}`).toBeDefined();
      for (const { what, coreValue, outside, limit } of probes) {
        const value = typedValue(parameter.quantity, coreValue, units);
        // Where 0 means "not filled in yet", 0 itself is no number to refuse.
        if (value === 0 && parameter.blank === "missing") continue;
        const errors = limitErrors(descriptor, put(value), place, units);
        if (!outside) {
          expect(errors, `${what} is refused for ${where}`).toEqual([]);
          continue;
        }
        const [error] = errors;
        if (error === undefined)
          expect.fail(`${label}: ${what} (typed ${value}) is not refused, but answers ${JSON.stringify(call(descriptor, put(value)))}`);
        expect(error.code, where).toBe("#VALUE!");
        // A time of day has no lower limit but midnight, which is 0.
        if (parameter.quantity !== "date" || limit > 0)
          expect(error.message).toContain(
            showQuantity(parameter.quantity, limit, units).replace(` ${quantity(parameter.quantity).unit[units]}`, ""),
          );
        if (parameter.quantity !== "gravity" && parameter.quantity !== "date")
          expect(error.message).toContain(quantity(parameter.quantity).unit[units]);
      }
    }
  });

  it("quotes its limits so that they can be believed", () => {
    for (const {
      place: { parameter },
      units,
      probes,
      where,
    } of places) {
      for (const { limit } of probes) {
        const words = showQuantity(parameter.quantity, limit, units);
        const shown = parameter.quantity === "date" ? (Date.parse(words) - Date.UTC(1899, 11, 30)) / 86_400_000 : parseFloat(words);
        const exact = typedValue(parameter.quantity, limit, units);
        expect(Math.abs(shown - exact), `${exact} is quoted as ${shown} for ${where}`).toBeLessThanOrEqual(0.02 * Math.abs(exact) + 1e-12);
      }
    }
  });
});

describe("the probes", () => {
  it("reach arguments, lists and tables in both unit systems", () => {
    const labels = bounded.flatMap(({ places }) => places.map(({ place, units }) => `${units} ${place.label}`));
    expect(labels).toContain("us volume");
    expect(labels).toContain("metric volume");
    expect(labels.some((label) => /^metric gravities row \d+$/.test(label))).toBe(true);
    expect(labels.some((label) => /^metric hops row \d+: mass$/.test(label))).toBe(true);
  });

  it("stand on both sides of a limit", () => {
    expect(probesOf({ above: 0, atMost: 10 }).map(({ coreValue, outside }) => [coreValue, outside])).toEqual([
      [-1e-6, true],
      [1e-6, false],
      [0, true],
      [10 + 1e-5, true],
      [10 - 1e-5, false],
      [10, false],
    ]);
  });
});
