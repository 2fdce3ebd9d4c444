import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call } from "../../src/functions/call";
import type { AnyDescriptor } from "../../src/functions/describe";
import { functionNamed, registry } from "../../src/functions/registry";
import { arbitraryCall, typedCall, type CoreArgument } from "../support/arbitrary-call";
import { allDrawn } from "../support/drawn";
import { placesOf } from "../support/registry-probe";

/**
 * Where more of one thing can only mean more, or only less, of another: heat, mass and gas leave no choice. Each argument
 * that is a number is moved up alone, over the whole domain of its function, and the answer must follow or stay.
 */
interface Direction {
  readonly goes: "up" | "down";
  /** The part of the domain where it holds; arguments by name, in the core's unit, a number for each that was given. */
  readonly where?: (at: Record<string, number | string>) => boolean;
}
const up: Direction = { goes: "up" };
const down: Direction = { goes: "down" };
/** Nothing to hold here, and why. */
type Free = string;

const number = (value: number | string | undefined, otherwise: number): number => (typeof value === "number" ? value : otherwise);
/** Iso-alpha acid is lost again in a boil of more than two hours. */
const notBoiledAway = ({ minutes, boiled, model }: Record<string, number | string>): boolean =>
  model === "tinseth" || model === "rager" || number(minutes, 0) + number(boiled, 0) <= 110;

/** Of a mash that is corrected with an acid; bases go the other way. */
const withAcid = ({ acid }: Record<string, number | string>): boolean => acid !== "baking soda" && acid !== "slaked lime";

const directions: Readonly<Record<string, Readonly<Record<string, Direction | Free>>>> = {
  "WORT.SG": { plato: up },
  "WORT.PLATO": { gravity: up },
  // Water is heaviest at 4 °C.
  "WORT.HYDROMETER": {
    reading: up,
    sample_temperature: { goes: "up", where: ({ sample_temperature: t }) => number(t, 0) >= 7 },
    calibrated_at: down,
  },
  "WORT.REFRACTOMETER": { brix: up, wort_correction: down },
  "WORT.GRAVITY": { volume: down, efficiency: up },
  "WORT.KETTLE": {
    before: down,
    after: down,
    late_minutes: "only where something goes in late, which few drawn calls have: tests/core/wort/kettle.test.ts",
    boil_minutes: "late extract is a smaller part of a longer boil",
    efficiency: up,
  },
  "WORT.COLOUR": { volume: down },
  "WORT.THIN": { volume: up, gravity: up, target: down },
  "WORT.REDUCE": { volume: up, gravity: down, target: up },
  "WORT.ENRICH": { volume: up, gravity: down, target: up, yield: down },
  "WORT.EFFICIENCY": { volume: up, gravity: up },
  "WORT.YIELD": { points: up },
  "WORT.POINTS": { yield: up },
  "HOPS.IBU": {
    volume: down,
    gravity: down,
    boils_at: "goes by the minutes of each addition, see HOPS.UTILISATION",
    boil_minutes: up,
    stand_temperature: "a warmer stand begins sooner after flame-out: hops for it miss what was hotter",
    stand_minutes: { goes: "up", where: ({ stand_temperature }) => stand_temperature !== undefined },
    chill_minutes: up,
    chilled_to: "a stand colder than that cuts the chilling short, and one as hot as the boil leaves none",
  },
  "HOPS.UTILISATION": { minutes: { goes: "up", where: notBoiledAway }, gravity: down, boils_at: { goes: "up", where: notBoiledAway } },
  "HOPS.STAND": {
    mass: { goes: "up", where: notBoiledAway },
    alpha: { goes: "up", where: notBoiledAway },
    volume: { goes: "down", where: notBoiledAway },
    gravity: { goes: "down", where: notBoiledAway },
    minutes: { goes: "up", where: notBoiledAway },
    from: { goes: "up", where: notBoiledAway },
    to: { goes: "up", where: notBoiledAway },
    boiled: down,
  },
  "HOPS.WEIGH": {
    ibu: up,
    alpha: down,
    minutes: { goes: "down", where: notBoiledAway },
    volume: up,
    gravity: up,
    boils_at: { goes: "down", where: ({ model, use, minutes }) => model !== "kinetic" && use !== "stand" && number(minutes, 0) <= 110 },
    stand_temperature: "a warmer stand begins sooner after flame-out: hops for it miss what was hotter",
    stand_minutes: { goes: "down", where: ({ stand_temperature }) => stand_temperature !== undefined },
    chill_minutes: down,
    chilled_to: "a stand colder than that cuts the chilling short, and one as hot as the boil leaves none",
  },
  "HOPS.SWAP": { mass: up, alpha: up, new_alpha: down },
  "HOPS.AGED": { alpha: up, days: down, temperature: down, loss: down },
  "HOPS.BALANCE": { ibu: up, original_gravity: down },
  "WATER.BOILS": { altitude: down },
  "WATER.STRIKE": {
    grain_mass: { goes: "up", where: ({ target, grain_temperature: grain }) => number(target, 0) > number(grain, 0) },
    water_volume: { goes: "down", where: ({ target, grain_temperature: grain }) => number(target, 0) > number(grain, 0) },
    grain_temperature: down,
    target: up,
  },
  "WATER.STEP": { grain_mass: up, water_volume: up, from: down, target: up, addition_temperature: down },
  "WATER.CONVERT": { amount: up },
  "WATER.ALKALINITY": { alkalinity: up, calcium: down, magnesium: down },
  "WATER.ACID": { volume: up, alkalinity: up, target_alkalinity: down, strength: down },
  "WATER.DECHLORINATE": { volume: up, chlorine: up },
  "MASH.ROOM": { grain_mass: up, water_volume: up },
  "MASH.ACIDITY": {
    water_volume: "hard water lowers the pH, water with much alkalinity raises it",
    alkalinity: up,
    calcium: down,
    magnesium: down,
    strength: { goes: "down", where: withAcid },
    acid_amount: { goes: "down", where: withAcid },
  },
  "MASH.CORRECT": {
    water_volume: "hard water takes less acid, water with much alkalinity more",
    alkalinity: { goes: "up", where: withAcid },
    calcium: { goes: "down", where: withAcid },
    magnesium: { goes: "down", where: withAcid },
    target: { goes: "down", where: withAcid },
    strength: { goes: "down", where: withAcid },
  },
  "MASH.BOILED": { volume: up, from: down, target: up, boils_at: down },
  "HEAT.WARM": { volume: up, from: down, to: up, power: down, efficiency: down },
  "HEAT.CHILL": { volume: up, from: up, to: down, tap_temperature: up, flow: down, coil: down },
  "HEAT.BOILOFF": { power: up, efficiency: up },
  "HEAT.COUNTERFLOW": { from: up, tap_temperature: up, wort_flow: up, flow: down, coil: down },
  "HEAT.COIL": { volume: up, flow: down, tap_temperature: "the slope through readings that scatter may turn either way" },
  "CLEAN.DOSE": { volume: up, per_volume: up },
  "YEAST.CELLS": { volume: up, gravity: up, rate: up },
  "YEAST.PACKS": { cells: up, per_pack: down, viability: down },
  "YEAST.VIABILITY": { days: down },
  "YEAST.STARTER": {
    cells_now: "a starter is never below half a litre for each pack, so more yeast may take more wort",
    cells_wanted: up,
    gravity: down,
  },
  "YEAST.EXPECT": { attenuation: up, rest_temperature: { goes: "down", where: ({ rest_temperature: t }) => number(t, 0) >= 64.5 } },
  "YEAST.AGED": { made_on: up, today: down, figure: up, days: up },
  "YEAST.OXYGEN": { temperature: down, gravity: down, altitude: down },
  "YEAST.FINISH": { original_gravity: { goes: "up", where: ({ attenuation }) => number(attenuation, 75) < 100 }, attenuation: down },
  // Beer lighter than water has an attenuation above 100 %, and less so in stronger wort.
  "YEAST.ATTENUATION": { original_gravity: { goes: "up", where: ({ gravity }) => number(gravity, 1) > 1 }, gravity: down },
  "BEER.ABV": { original_gravity: up, final_gravity: down, primed: up },
  "BEER.ABW": { original_gravity: up, final_gravity: down },
  "BEER.EXTRACT": { original_gravity: up, final_gravity: up },
  "BEER.ENERGY": {
    original_gravity: up,
    serving: up,
    primed: up,
    final_gravity: "alcohol and sugar hold about as much energy, so it hardly matters how far the beer ferments",
  },
  "BEER.CARBS": { original_gravity: up, final_gravity: up, serving: up },
  "BEER.ORIGINAL": { abv: up, final_gravity: up },
  "BEER.REFRACTOMETER": { original_brix: down, brix: up, wort_correction: "divides two readings that pull in opposite directions" },
  "BEER.EBC": { srm: up },
  "BEER.SRM": { ebc: up },
  "BEER.LOVIBOND": { srm: up },
  "PACK.RESIDUAL": { temperature: down, altitude: down },
  "PACK.PRIMING": { volume: up, co2: up, temperature: up, altitude: up },
  "PACK.PRESSURE": { co2: up, temperature: up, altitude: up },
  "PACK.VOLUMES": { pressure: up, temperature: down, altitude: down },
  "PACK.SPUND": {
    gravity: "only says whether it is too late",
    expected: up,
    co2: up,
    temperature: up,
    rating: "only says whether the vessel bears it",
    headspace: up,
    altitude: up,
  },
  "PACK.LINE": { pressure: up, height: down, line_id: up, flow: down },
  "PACK.INSIDE": {
    co2: up,
    temperature: up,
    gravity: "a few points more and there is no figure, as the bottle is over: tests/core/pack holds what they add",
    expected: "the same",
    altitude: "a gauge reads more in thinner air, of which less is sealed in",
    headspace: "more air, but more room for the gas, and beer that grows has less in a small one",
  },
  "PACK.READY": { packaged_on: up, temperature: down },
};

const scalarNumbers = (descriptor: AnyDescriptor) => placesOf(descriptor).filter(({ parameter }) => parameter.kind === "number");
const withOneNumber = registry.filter((descriptor) => descriptor.result.kind === "number" && scalarNumbers(descriptor).length > 0);

describe("the directions", () => {
  it("are told of every number that goes into a function with one answer", () => {
    const told = Object.entries(directions).flatMap(([id, own]) => Object.keys(own).map((name) => `${id} ${name}`));
    expect(told.sort()).toEqual(
      withOneNumber.flatMap((descriptor) => scalarNumbers(descriptor).map(({ name }) => `${descriptor.id} ${name}`)).sort(),
    );
  });
});

const answer = (descriptor: AnyDescriptor, core: readonly CoreArgument[]): number | undefined => {
  const [cell] = call(descriptor, typedCall(descriptor, core, "metric")).flat();
  return typeof cell === "number" ? cell : undefined;
};

const held = Object.entries(directions).flatMap(([id, own]) =>
  Object.entries(own).flatMap(([name, direction]) =>
    typeof direction === "string" ? [] : [{ id, name, goes: direction.goes, where: direction.where ?? (() => true) }],
  ),
);

describe.each(held)("GYLE.$id goes $goes", ({ id, name, goes, where }) => {
  const descriptor = functionNamed(id);
  const places = placesOf(descriptor).filter((place) => place.name !== "units");
  const at = places.findIndex((place) => place.name === name);
  const named = (core: readonly CoreArgument[]) =>
    Object.fromEntries(
      places.flatMap((place, index) =>
        typeof core[index] === "number" || typeof core[index] === "string" ? [[place.name, core[index]]] : [],
      ),
    ) as Record<string, number | string>;

  it(`with ${name}`, () => {
    let compared = 0;
    let moved = 0;
    fc.assert(
      fc.property(arbitraryCall(descriptor), arbitraryCall(descriptor), (core, other) => {
        const [one, two] = [core[at], other[at]];
        if (typeof one !== "number" || typeof two !== "number" || one === two) return;
        const [less, more] = [Math.min(one, two), Math.max(one, two)].map((value) =>
          core.map((argument, index) => (index === at ? value : argument)),
        );
        if (less === undefined || more === undefined || !where(named(less)) || !where(named(more))) return;
        const [low, high] = [answer(descriptor, less), answer(descriptor, more)];
        if (low === undefined || high === undefined) return;
        compared += 1;
        const rise = goes === "up" ? high - low : low - high;
        if (rise > 0) moved += 1;
        expect(rise, `${low} at ${Math.min(one, two)}, ${high} at ${Math.max(one, two)} of ${JSON.stringify(core)}`).toBeGreaterThanOrEqual(
          -1e-9 * Math.max(1, Math.abs(low), Math.abs(high)),
        );
      }),
      { numRuns: 250 },
    );
    // An answer that never moved, or was never there, would prove nothing.
    if (!allDrawn) return;
    expect(compared).toBeGreaterThan(5);
    expect(moved).toBeGreaterThan(2);
  });
});
