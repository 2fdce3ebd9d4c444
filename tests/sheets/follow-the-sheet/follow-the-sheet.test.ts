import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { address, position } from "../../../src/workbook/grid/plan/addresses";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../../support/batch-bench";
import { chance, litresPerGallon, madeUpBatch, saysOf, trueKit, type Kind } from "./batches";
import { follow } from "./brewer";

/**
 * The sheet itself, in a real grid: made-up batches are typed into it, and a brewer who knows only kilograms of water and
 * sugar (`brewer.ts`) does what it then says.
 */
const seed = 1130;
const ofEachKind = 9;
const kinds: readonly Kind[] = [
  { method: "extract", units: "us" },
  { method: "extract", units: "metric" },
  { method: "all-grain", units: "us" },
  { method: "all-grain", units: "metric" },
];

let bench: HeadlessBench;
const sheets = new Map<Kind, BatchSheet>();
beforeAll(async () => {
  bench = await openBatchBench();
  for (const kind of kinds) sheets.set(kind, await insertOn(bench, madeUpBatch(chance(seed), kind)));
}, benchTimeout);
afterAll(() => bench.dispose());

/** Into the cells that a brewer fills in. */
async function type(sheet: BatchSheet, { volume, topUp, kit, malt }: BatchContents): Promise<void> {
  const { row, column } = position(sheet.cellOf("malt"));
  const lines = Array.from({ length: 6 }, (_, index) => malt[index]).map((line) =>
    line ? [line.mass, line.yieldPercent, line.handling, line.colour] : ["", "", "", ""],
  );
  await Excel.run(async (context) => {
    context.workbook.worksheets.getItem(sheet.sheetName).getRange(`${address(row, column)}:${address(row + 5, column + 3)}`).values = lines;
    await context.sync();
  });
  await sheet.set({
    volume,
    top_up: topUp,
    boil_minutes: kit.boilMinutes,
    boil_off: kit.boilOff,
    kettle_loss: kit.kettleLoss,
    kettle_size: kit.kettleSize,
    altitude: kit.altitude,
    grain_efficiency: kit.grainEfficiencyPercent,
    absorption: kit.absorption,
    tun_dead_space: kit.deadSpace,
    tun_size: kit.tunSize || "",
    ...(sheet.sheetName.includes("all-grain") ? { mash_thickness: kit.mashThickness } : {}),
  });
}

const blankAsNone = (sheet: BatchSheet, name: string): number => (typeof sheet.get(name) === "number" ? sheet.number(name) : 0);

/** Amounts of water that the steps of the brew day print, as they print them. */
function printedVolumes(sheet: BatchSheet): { readonly amount: number; readonly halfADigit: number }[] {
  const [from, to] = [position(sheet.cellOf("steps")), position(sheet.rangeOf("steps").split(":")[1] ?? "")];
  const words = Array.from({ length: to.row - from.row + 1 }, (_, index) =>
    String(bench.valueAt(sheet.sheetName, address(from.row + index, from.column)) ?? ""),
  );
  return words
    .filter((what) => /^(Collect|Heat|Run off)/.test(what))
    .flatMap((what) =>
      [...what.matchAll(/(\d+(?:\.(\d+))?) (?:US gal|gal|L)\b/g)].map(([, amount, digits = ""]) => ({
        amount: Number(amount),
        halfADigit: 0.5001 * 10 ** -digits.length,
      })),
    );
}

const roomLine = (sheet: BatchSheet): string => sheet.complaints().find(({ label }) => label === "Room in the kettle")?.text ?? "";
const said = { followed: 0, fits: 0, tooFull: 0 };

describe.each(kinds)("a batch that follows its sheet: $method, $units", (kind) => {
  const random = chance(seed);
  // Drawn for each kind from the same numbers, which make something else of each.
  const batches = Array.from({ length: ofEachKind }, () => madeUpBatch(random, kind));

  it.each(batches.map((batch, index) => [index + 1, batch] as const))("number %d", async (_, batch) => {
    const sheet = sheets.get(kind)!;
    await type(sheet, batch);
    // A sheet that says so cannot be followed.
    if (sheet.complaints().some(({ text }) => text.includes("The mash alone takes more water"))) return;
    said.followed += 1;
    const litre = kind.units === "us" ? litresPerGallon : 1;
    const [collect, mashWater, spargeWater] = ["water_collect", "mash_water", "sparge_water"].map((name) =>
      kind.method === "extract" && name !== "water_collect" ? 0 : blankAsNone(sheet, name),
    ) as [number, number, number];
    const happened = follow(saysOf(batch, { collect, mashWater, spargeWater }), trueKit(batch));
    const because = JSON.stringify({ batch, happened });

    expect(Math.abs(happened.fermenterL / (batch.volume * litre) - 1), because).toBeLessThan(0.005);
    expect(Math.abs(happened.gravity - sheet.number("og_plan")), because).toBeLessThan(0.0005);
    for (const [name, seen] of [
      ["water_before_boil", happened.beforeBoilL],
      ["water_after_boil", happened.afterBoilHotL],
      ["water_chilled", happened.afterChillingL],
    ] as const) {
      expect(Math.abs(seen / (sheet.number(name) * litre) - 1), `${name} ${because}`).toBeLessThan(0.005);
    }

    // What the steps print is what the cells hold, to two decimals: enough to brew by, but for a saucepan.
    const printed = printedVolumes(sheet);
    const asPrinted = (wanted: number): number => {
      if (wanted === 0) return 0;
      const found = printed.find(({ amount, halfADigit }) => Math.abs(amount - wanted) <= halfADigit);
      expect(found?.halfADigit, `${wanted} among ${JSON.stringify(printed)}`).toBeLessThan(0.0051);
      return found?.amount ?? NaN;
    };
    const isMashed = mashWater > 0;
    const words = {
      collect: isMashed ? collect : asPrinted(collect),
      mashWater: asPrinted(mashWater),
      spargeWater: asPrinted(spargeWater),
    };
    if (batch.volume * litre > 8)
      expect(Math.abs(follow(saysOf(batch, words), trueKit(batch)).fermenterL / (batch.volume * litre) - 1), because).toBeLessThan(0.005);

    const ownTun = kind.method === "all-grain" && batch.kit.tunSize > 0;
    const [kettle, tun] = [Math.max(happened.fullestKettleL, ownTun ? 0 : happened.fullestTunL) / litre, happened.fullestTunL / litre];
    const overflows = kettle > batch.kit.kettleSize || (ownTun && tun > batch.kit.tunSize);
    const complains = /will not fit/i.test(roomLine(sheet));
    if (overflows) expect(complains, because).toBe(true);
    // Nor is a vessel called too small that is 3 % larger than it need be.
    if (kettle * 1.03 < batch.kit.kettleSize && (!ownTun || tun * 1.03 < batch.kit.tunSize)) expect(complains, because).toBe(false);
    said[complains ? "tooFull" : "fits"] += 1;
  });
});

describe("the check of the room", () => {
  it("said yes and no, in batches that nearly all could be followed", () => {
    expect(said.followed).toBeGreaterThan(0.8 * kinds.length * ofEachKind);
    expect(said.fits).toBeGreaterThan(5);
    expect(said.tooFull).toBeGreaterThan(5);
  });

  it("asks for the mash too: 28.3 L of water and 4.8 kg of grain do not stand in a 30 L kettle", async () => {
    const kind = kinds[3]!;
    const sheet = sheets.get(kind)!;
    const batch = madeUpBatch(chance(seed), kind);
    await type(sheet, {
      ...batch,
      volume: 20,
      topUp: 0,
      malt: [{ ingredient: "Pale malt", mass: 4.8, yieldPercent: 80, handling: "mash", colour: 5, cost: "" }],
      kit: {
        ...batch.kit,
        boilMinutes: 60,
        boilOff: 2.7,
        kettleLoss: 0.8,
        kettleSize: 30,
        absorption: 1,
        deadSpace: 0,
        tunSize: 0,
        mashThickness: 28.2 / 4.8,
        grainEfficiencyPercent: 75,
      },
    });
    expect(sheet.number("water_collect")).toBeCloseTo(28.3, 1);
    // 28.2 L at mashing heat and 4.8 kg of grain at 0.68 to 0.7 L/kg are 32 L.
    expect(roomLine(sheet)).toMatch(/^The mash will not fit: 32\.\d\d L hot, the kettle holds 30\.00\./);
    await sheet.set({ kettle_size: 40 });
    expect(roomLine(sheet)).toBe("");
    await sheet.set({ kettle_size: 30, tun_size: 40 });
    expect(roomLine(sheet)).toBe("");
    // A tenth of 35 L is more than is left over the mash's 32.
    await sheet.set({ tun_size: 35 });
    expect(roomLine(sheet)).toMatch(/^Less than a tenth of the mash tun is free: the mash takes 32\.\d\d L, the tun holds 35\.00\./);
    await sheet.set({ tun_size: 31 });
    expect(roomLine(sheet)).toMatch(/^The mash will not fit: 32\.\d\d L hot, the mash tun holds 31\.00\./);
  });
});
