import { describe, expect, it } from "vitest";
import { mashRoom, boilingRoom, heatingRoom, steepRoom } from "../../src/workbook/batch/sheet/room";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { plannedFigures } from "../../src/workbook/batch/figures/planned-figures";
import { chance, litresPerGallon, madeUpBatch, saysOf, trueKit } from "../sheets/follow-the-sheet/batches";
import { follow, type WhatHappened } from "../sheets/follow-the-sheet/brewer";

/**
 * Many made-up batches, followed without a sheet: `tests/workbook/figures` holds these figures and the sheet's together, and
 * `tests/sheets/follow-the-sheet` follows a few dozen on the sheet itself.
 */
const seed = process.env["GYLEBOOK_SEED"] === "random" ? Math.floor(Math.random() * 2 ** 32) : 20261130;
const batches = 1200;

interface Followed {
  readonly batch: BatchContents;
  readonly og: number;
  readonly litre: number;
  readonly planned: ReturnType<typeof plannedFigures>;
  readonly happened: WhatHappened;
}

function followed(batch: BatchContents): Followed | undefined {
  const planned = plannedFigures(batch);
  const { collect, og, mashWater } = planned;
  if (collect === undefined || og === undefined) throw new Error(`no plan for ${JSON.stringify(batch)}`);
  // The check of the mash asks for a thicker one: nobody can follow such a sheet.
  if (mashWater > collect) return undefined;
  const happened = follow(saysOf(batch, { collect, mashWater, spargeWater: collect - mashWater }), trueKit(batch));
  return { batch, og, planned, happened, litre: batch.units === "us" ? litresPerGallon : 1 };
}

const random = chance(seed);
const drawn = Array.from({ length: batches }, (_, index) =>
  madeUpBatch(random, { method: index % 2 === 0 ? "extract" : "all-grain", units: index % 4 < 2 ? "us" : "metric" }),
);
const all = drawn.flatMap((batch) => followed(batch) ?? []);

describe(`a batch that follows the plan (seed ${seed})`, () => {
  it("is made up of every kind", () => {
    expect(all.length).toBeGreaterThan(0.85 * batches);
    const share = (holds: (batch: BatchContents) => boolean): number => all.filter(({ batch }) => holds(batch)).length / all.length;
    const has = (handling: string) => (batch: BatchContents) => batch.malt.some((line) => line.handling === handling);
    for (const holds of [
      has("mash"),
      has("steep"),
      has("extract"),
      has("sugar"),
      (batch: BatchContents) => batch.topUp > 0,
      (batch: BatchContents) => batch.kit.deadSpace > 0,
      (batch: BatchContents) => batch.kit.boilMinutes === 0,
      (batch: BatchContents) => batch.kit.tunSize > 0,
    ])
      expect(share(holds)).toBeGreaterThan(0.03);
    const litres = all.map(({ batch, litre }) => batch.volume * litre);
    expect(Math.min(...litres)).toBeLessThan(3);
    expect(Math.max(...litres)).toBeGreaterThan(150);
    expect(Math.min(...all.map(({ og }) => og))).toBeLessThan(1.036);
    expect(Math.max(...all.map(({ og }) => og))).toBeGreaterThan(1.095);
  });

  it("ends at the planned volume within 0.5 % and the planned gravity within 0.0005", () => {
    for (const { batch, og, happened, litre } of all) {
      expect(Math.abs(happened.fermenterL / (batch.volume * litre) - 1), JSON.stringify(batch)).toBeLessThan(0.005);
      expect(Math.abs(happened.gravity - og), JSON.stringify(batch)).toBeLessThan(0.0005);
    }
  });

  it("passes the volumes that the sheet names on the way", () => {
    for (const { planned, happened, litre } of all) {
      const { beforeBoil = NaN } = planned;
      expect(Math.abs(happened.beforeBoilL / (beforeBoil * litre) - 1)).toBeLessThan(0.005);
    }
  });

  it("never stands fuller in kettle and tun than the room that the sheet asks for, and that is no more than 3 % above it", () => {
    let kettles = 0;
    let tuns = 0;
    for (const { batch, planned, happened, litre } of all) {
      const { beforeBoil = NaN, collect = NaN, mashWater, grain } = planned;
      const standing = { beforeBoil, collect, mashWater, grain };
      const mashed = mashRoom(standing, batch.units);
      const ownTun = batch.kit.tunSize > 0 && mashed > 0;
      const kettle =
        litre *
        Math.max(
          boilingRoom(standing),
          batch.method === "extract" ? (grain > 0 ? steepRoom(standing, batch.units) : 0) : ownTun ? heatingRoom(standing) : mashed,
        );
      const fullest = Math.max(happened.fullestKettleL, ownTun ? 0 : happened.fullestTunL);
      expect(fullest).toBeLessThanOrEqual(kettle);
      expect(fullest).toBeGreaterThan(0.97 * kettle);
      kettles += 1;
      if (!ownTun) continue;
      expect(happened.fullestTunL).toBeLessThanOrEqual(litre * mashed);
      expect(happened.fullestTunL).toBeGreaterThan(0.97 * litre * mashed);
      tuns += 1;
    }
    expect([kettles, tuns].every((count) => count > 50)).toBe(true);
  });
});

/**
 * One batch on paper: 5 US gal from 6.6 lb of liquid extract of 80 % yield, on the usual kit (0.7 US gal boil away in the
 * hour, 0.2 stay in the kettle). Densities from the table in `follow-the-sheet/sucrose-table.ts`.
 *
 *   extract                       6.6 lb × 0.45359237            =  2.9937 kg
 *   sugar in it                   × 0.80                         =  2.3950 kg   (and 0.5987 kg of water)
 *   after chilling                5 + 0.2 = 5.2 US gal           = 19.6841 L
 *   sugar in a litre              2.3950 / 19.6841               =  0.12167 kg  → between 11 % (0.114651, 1.04228 kg/L)
 *                                                                               and 12 % (0.125575, 1.04646 kg/L)
 *   so                            11 + 0.007021 / 0.010924 = 11.643 %,  1.04497 kg/L
 *   mass after the boil           19.6841 × 1.04497              = 20.5693 kg
 *   boils away                    0.7 US gal = 2.6498 L × 0.99823 =  2.6451 kg
 *   mass before the boil          20.5693 + 2.6451               = 23.2144 kg
 *   before the boil               2.3950 / 23.2144 = 10.317 %: 1.03813 + 0.317 × 0.00415 = 1.03944 kg/L → 22.3335 L = 5.900 US gal
 *   water to collect              23.2144 − 2.9937 = 20.2207 kg / 0.99823 = 20.2565 L                              = 5.351 US gal
 *   gravity                       1.04497 / 0.99823                                                                = 1.0468
 *   extract brings                5.900 − 5.351 = 0.549 US gal with 6.6 lb: 0.083 US gal/lb, 0.69 L/kg
 */
describe("five US gallons from 6.6 lb of liquid extract", () => {
  const batch = exampleBatch({
    id: "paper",
    sheetName: "Paper",
    batchName: "Paper",
    brewedOn: 46270,
    volume: 5,
    units: "us",
    topUp: 0,
    method: "extract",
  });
  const paper = {
    ...batch,
    malt: [
      { ingredient: "Pale malt extract, liquid", mass: 6.6, yieldPercent: 80, handling: "extract" as const, colour: 4, cost: "" as const },
    ],
  };

  it("are planned as worked out on paper", () => {
    const { collect, beforeBoil, og } = plannedFigures(paper);
    expect(Math.abs((collect ?? 0) - 5.351)).toBeLessThan(0.002);
    expect(Math.abs((beforeBoil ?? 0) - 5.9)).toBeLessThan(0.002);
    expect(Math.abs((og ?? 0) - 1.0468)).toBeLessThan(0.0002);
  });

  it("end there in the hands of the brewer who follows", () => {
    const done = followed(paper);
    expect((done?.happened.fermenterL ?? 0) / litresPerGallon).toBeCloseTo(5, 2);
    expect(done?.happened.gravity).toBeCloseTo(1.0468, 3);
  });
});
