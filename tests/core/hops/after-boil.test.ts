import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bitternessIbu, type Boil } from "../../../src/core/hops/bitterness";
import type { WhenAdded } from "../../../src/core/hops/places";
import { call, callScalar } from "../../../src/functions/call";
import { CellError } from "../../../src/functions/cell-error";
import { functionNamed } from "../../../src/functions/registry";

/*
 * A second hand: the rate equations as they are printed by M. G. Malowicki and T. H. Shellhammer, J. Agric. Food Chem. 53
 * (2005) 4434, k1 = 7.9e11 exp(-11858 / T) and k2 = 4.1e12 exp(-12994 / T) per minute, stepped through time by Runge and
 * Kutta along a thermometer's log, minute by minute, with Newton's law stepped as well instead of solved. Nothing of
 * src/core/hops is used but the function that is tried.
 */
const k1 = (celsius: number): number => 7.9e11 * Math.exp(-11858 / (celsius + 273.15));
const k2 = (celsius: number): number => 4.1e12 * Math.exp(-12994 / (celsius + 273.15));
const h = 0.02;

type State = readonly [celsius: number, alpha: number, iso: number];

/** One step of h minutes: the wort cools by `cooling` a minute for each degree above 15 °C. */
function step(state: State, cooling: number): State {
  const slope = ([t, a, i]: State): State => [-cooling * (t - 15), -k1(t) * a, k1(t) * a - k2(t) * i];
  const moved = (by: State, share: number): State => [state[0] + share * by[0], state[1] + share * by[1], state[2] + share * by[2]];
  const p = slope(state);
  const q = slope(moved(p, h / 2));
  const r = slope(moved(q, h / 2));
  const s = slope(moved(r, h));
  const mean = (n: 0 | 1 | 2): number => (p[n] + 2 * q[n] + 2 * r[n] + s[n]) / 6;
  return [state[0] + h * mean(0), state[1] + h * mean(1), state[2] + h * mean(2)];
}

interface Day {
  readonly boilsAt: number;
  readonly standAt: number;
  readonly standFor: number;
  readonly chillFor: number;
  readonly chilledTo: number;
}

/** Iso-alpha acid in the fermenter, as a share of the alpha acid, for hops that boiled so long or went in as the stand began. */
function walked(day: Day, boiled: number | "stand"): { after: number; boil: number } {
  const cooling = Math.log((day.boilsAt - 15) / (day.chilledTo - 15)) / day.chillFor;
  let now: State = [day.boilsAt, 1, 0];
  const fresh = (): State => [now[0], 1, 0];
  for (let t = 0; boiled !== "stand" && t < boiled - h / 2; t += h) now = step(now, 0);
  const boil = now[2];
  while (now[0] > day.standAt) now = step(now, cooling);
  // The last step goes a little below; the stand is kept where it is to be.
  if (day.standFor > 0) now = [day.standAt, now[1], now[2]];
  if (boiled === "stand") now = fresh();
  for (let t = 0; t < day.standFor - h / 2; t += h) now = step(now, 0);
  while (now[0] > day.chilledTo) now = step(now, cooling);
  return { after: now[2], boil };
}

const ours = (day: Day, added: WhenAdded, model: Boil["model"] = "kinetic"): number =>
  bitternessIbu(
    { massG: 50, alphaPercent: 10, added },
    {
      volumeL: 20,
      gravity: 1.05,
      model,
      boilsAtC: day.boilsAt,
      minutes: 60,
      after: { stand: { temperatureC: day.standAt, minutes: day.standFor }, chilling: { toC: day.chilledTo, minutes: day.chillFor } },
    },
  );

/** Tinseth's hour at SG 1.050, 0.2307 of the alpha acid, stands for the 0.47589 of iso-alpha acid of an hour at 100 °C. */
const ibuOf = (share: number): number => (250 * 0.230664 * share) / 0.475892;

const days = fc.record({
  boilsAt: fc.integer({ min: 92, max: 101 }),
  standAt: fc.integer({ min: 60, max: 92 }),
  standFor: fc.integer({ min: 0, max: 60 }),
  chillFor: fc.integer({ min: 4, max: 90 }),
  chilledTo: fc.integer({ min: 20, max: 30 }),
});

describe("hops in wort that no longer boils", () => {
  it("gain what the printed rates say, stepped along a thermometer's log: for the stand, at flame-out, and boiled before", () => {
    fc.assert(
      fc.property(days, fc.constantFrom<number | "stand">("stand", 0, 1, 5, 20, 60), (day, when) => {
        expect(Math.abs(ours(day, when) - ibuOf(walked(day, when).after))).toBeLessThan(0.06);
      }),
      { numRuns: 60 },
    );
  });

  it("gain the same on top of Tinseth's curve", () => {
    const day: Day = { boilsAt: 100, standAt: 80, standFor: 30, chillFor: 25, chilledTo: 20 };
    for (const minutes of [0, 5, 20, 60]) {
      const { after, boil } = walked(day, minutes);
      const tinseth = (250 * 0.230664 * (1 - Math.exp(-0.04 * minutes))) / (1 - Math.exp(-2.4));
      expect(ours(day, minutes, "tinseth")).toBeCloseTo(tinseth + ibuOf(after - boil), 1);
    }
  });

  it("never give less for having boiled longer, up to an hour: no step down from flame-out to a minute's boil", () => {
    fc.assert(
      fc.property(days, (day) => {
        const ibu = [0, 0.5, 1, 2, 5, 10, 30, 60].map((minutes) => ours(day, minutes, "tinseth"));
        for (const [index, more] of ibu.slice(1).entries()) expect(more).toBeGreaterThanOrEqual(ibu[index] ?? 0);
        expect(ours(day, "stand")).toBeLessThanOrEqual(ours(day, 0) + 1e-9);
      }),
    );
  });

  it("count as boiled the whole boil in first wort, and for nothing in the fermenter", () => {
    const day: Day = { boilsAt: 98, standAt: 75, standFor: 15, chillFor: 25, chilledTo: 19 };
    expect(ours(day, "first wort", "tinseth")).toBe(ours(day, 60, "tinseth"));
    expect(ours(day, "dry")).toBe(0);
  });
});

describe("HOPS.IBU and HOPS.SHARE after the boil", () => {
  const hops = [
    ["Perle", 28, 8, 60],
    ["Saaz", 28, 4, 0],
    ["Chinook", 50, 12, "Stand"],
    ["Chinook", 50, 12, " dry "],
    ["Fuggle", 20, 4, "first wort"],
  ];
  const share = (...after: unknown[]) =>
    call(functionNamed("HOPS.SHARE"), [hops, 20, 1.05, null, null, null, ...after]).map(([ibu]) => ibu);
  const total = (rows: unknown[][], ...after: unknown[]) =>
    callScalar(functionNamed("HOPS.IBU"), [rows, 20, 1.05, null, null, null, ...after]);

  it("add up, row by row", () => {
    const each = share(60, 80, 20, 25, 19) as number[];
    expect(each).toHaveLength(5);
    expect(each[3]).toBe(0);
    expect(each.reduce((sum, ibu) => sum + ibu, 0)).toBeCloseTo(total(hops, 60, 80, 20, 25, 19) as number, 9);
  });

  it("mean what they meant where nothing is said of the time after the boil", () => {
    expect(
      total([
        ["Perle", 28, 8, 60],
        ["Saaz", 28, 4, 0],
      ]),
    ).toBeCloseTo((28 * 80 * 0.230664) / 20, 3);
  });

  it("wait for the stand's temperature and minutes when a hop stands, and only then", () => {
    for (const after of [[60], [60, 80], [60, null, 20], [60, 80, 0]]) {
      expect(total(hops, ...after)).toBe("");
      expect(share(...after)).toEqual([""]);
    }
    expect(total([["Perle", 28, 8, 60]], 60, 80)).toBeTypeOf("number");
  });

  it("wait for the boil's length of first wort, and refuse a stand that boils and other words", () => {
    const message = (answer: unknown) => (answer instanceof CellError ? answer.message : "no error");
    for (const blank of [null, "", 0]) expect(total([["Fuggle", 20, 4, "first wort"]], blank)).toBe("");
    expect(message(total(hops, 60, 102, 20))).toContain("stand_temperature is above boils_at");
    expect(message(total([["Fuggle", 20, 4, "whirl"]]))).toContain(
      'must be a number, not the text "whirl"; it must be from 0 to 240 min or one of: first wort, stand, dry',
    );
  });

  it("do not take a row whose only number is a word for a heading", () => {
    expect(
      total([
        ["Chinook", "", "", "dry"],
        ["Perle", 28, 8, 60],
      ]),
    ).toBeCloseTo((28 * 80 * 0.230664) / 20, 3);
  });
});
