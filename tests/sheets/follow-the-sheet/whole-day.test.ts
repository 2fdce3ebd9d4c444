import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { address, block } from "../../../src/workbook/grid/plan/addresses";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../../support/batch-bench";
import { chance, saysOf, trueKit } from "./batches";
import { follow, type WhatHappened } from "./brewer";
import { chilled, madeBitter, type Coil } from "./chilling";
import { airBar, flowLPerMin, gramsIn, gramsOf, madeByFallingGPerL, sharedOutBar, volumesOf, type Keg } from "./keg";
import { decocted, doughedIn, poured, runOff, type RanOff } from "./mash-tun";
import { inSi, madeUpDay } from "./whole-day";

/**
 * A day from the mash to the keg, on the sheet in a real grid, by the lines that its clock prints: the mash by kilojoules, the run-off, the
 * boil and the kettle by kilograms of water and sugar, the stand and the chilling by the heat that turns up in the running water, the keg
 * by grams of gas. Bitterness is not conserved; what it comes from, the hours at each temperature, is followed.
 */
const days = { metric: 5, us: 5 } as const;
const drawn = (["metric", "us"] as const).flatMap((units) => {
  const random = chance(units === "us" ? 77 : 41);
  return Array.from({ length: days[units] }, (_, index) => ({ units, number: index + 1, batch: madeUpDay(random, units) }));
});

let bench: HeadlessBench;
beforeAll(async () => {
  bench = await openBatchBench();
}, benchTimeout);
afterAll(() => bench.dispose());

interface Line {
  readonly minute: number;
  readonly what: string;
}
/** The clock as it is printed: from its own rows, not from the workings beside them. */
function clockOf(sheet: BatchSheet): Line[] {
  const { from, to } = block(sheet.rangeOf("happened"));
  return Array.from({ length: to.row - from.row + 1 }, (_, index) => from.row + index).flatMap((row) => {
    const [what, time] = [bench.valueAt(sheet.sheetName, address(row, 1)), bench.valueAt(sheet.sheetName, address(row, 3))];
    return typeof time === "number" ? [{ what: String(what), minute: time * 1440 }] : [];
  });
}
function at(lines: readonly Line[], words: RegExp): { readonly line: Line; readonly next: Line } {
  const index = lines.findIndex(({ what }) => words.test(what));
  const [line, next] = [lines[index], lines[index + 1]];
  if (!line || !next) throw new Error(`no line ${words} among ${lines.map(({ what }) => what).join(" | ")}`);
  return { line, next };
}

interface Day {
  readonly batch: BatchContents;
  readonly sheet: BatchSheet;
  readonly ran: readonly RanOff[];
  readonly happened: WhatHappened;
  readonly lines: readonly Line[];
  readonly because: string;
}

/** Mashes and runs off by the sheet, and types the efficiency that comes of it, as a brewer does who knows the kit. */
async function brewed(drawnBatch: BatchContents, sheetName: string): Promise<Day | undefined> {
  const { units } = drawnBatch;
  const { litres, kilograms, celsius } = inSi(units);
  let batch: BatchContents = { ...drawnBatch, id: sheetName, sheetName };
  const sheet = await insertOn(bench, batch);
  const mash = batch.malt.filter(({ handling }) => handling === "mash");
  const grainKg = kilograms(mash.reduce((sum, { mass }) => sum + mass, 0));
  const couldGiveKg = kilograms(mash.reduce((sum, { mass, yieldPercent }) => sum + mass * yieldPercent, 0)) / 100;
  const conversion = batch.mashRunOff!.conversionPercent / 100;
  const { absorptionLPerKg, deadSpaceL } = trueKit(batch);
  const asked = (name: string): number => (sheet.get(name) === "" ? 0 : litres(sheet.number(name)));
  let ran: RanOff[] = [];
  for (let trial = 0; trial < 6; trial += 1) {
    if (sheet.complaints().some(({ text }) => /The mash alone takes|more than is collected/.test(text))) return undefined;
    let tun = doughedIn(grainKg, asked("mash_water"), celsius(batch.kit.soakTemperature));
    for (const name of ["second", "third"] as const) {
      const { by, temperature } = batch.mashRunOff![name];
      const boils = celsius(sheet.number("boils_at"));
      if (by === "boiling water") tun = poured(tun, asked(`${name}_amount`), boils);
      else if (by === "decoction") tun = decocted(tun, asked(`${name}_amount`), boils);
      else tun = { ...tun, temperature: celsius(Number(temperature)) };
      expect(Math.abs(tun.temperature - celsius(Number(temperature))), `${name} rest of ${sheetName}`).toBeLessThan(0.5);
    }
    const sparge = asked("sparge_water");
    ran = runOff(tun, couldGiveKg * conversion, grainKg * absorptionLPerKg + deadSpaceL, sparge > 0 ? [sparge] : []);
    const reached = (100 * ran.reduce((sum, { sugarKg }) => sum + sugarKg, 0)) / couldGiveKg;
    batch = { ...batch, kit: { ...batch.kit, grainEfficiencyPercent: reached } };
    if (Math.abs(sheet.number("grain_efficiency") - reached) < 1e-4) break;
    await sheet.set({ grain_efficiency: reached });
  }
  const says = saysOf(batch, {
    collect: sheet.number("water_collect"),
    mashWater: sheet.number("mash_full"),
    spargeWater: sheet.get("sparge_water") === "" ? 0 : sheet.number("sparge_water"),
  });
  const happened = follow(says, trueKit(batch));
  return { batch, sheet, ran, happened, lines: clockOf(sheet), because: JSON.stringify({ batch, happened }) };
}

const counted = { days: 0, rinsed: 0, closed: 0 };

describe.each(drawn)("a whole day by its sheet, $units, number $number", ({ units, number, batch: drawnBatch }) => {
  const si = inSi(units);
  let day: Day | undefined;
  beforeAll(async () => {
    day = await brewed(drawnBatch, `Day ${units} ${number}`);
    if (day) counted.days += 1;
  }, benchTimeout);

  it("runs off what the sheet plans, and the kettle holds what has run off", () => {
    if (!day) return;
    const { sheet, ran, because, batch, happened } = day;
    const planned = (row: number, column: number): number => {
      const { from } = block(sheet.rangeOf("runnings_planned"));
      return Number(bench.valueAt(sheet.sheetName, address(from.row + row - 1, from.column + column - 1)));
    };
    const ranL = ran.reduce((sum, { volumeL }) => sum + volumeL, 0);
    expect(Math.abs(si.litres(planned(3, 2)) / ran[0]!.volumeL - 1), because).toBeLessThan(0.004);
    const sugarKg = ran.reduce((sum, one) => sum + one.sugarKg, 0);
    // What the sheet expects of the mash is what the mash gives.
    expect(Math.abs(sheet.number("runnings_expected") - batch.kit.grainEfficiencyPercent), because).toBeLessThan(0.6);
    if (ran[1]) {
      counted.rinsed += 1;
      expect(Math.abs(si.litres(planned(4, 2)) / ran[1].volumeL - 1), because).toBeLessThan(0.004);
      const { line } = at(day.lines, /^Run off, measure; rinse/);
      const printed = Number(/rinse: (\d+\.\d+) /.exec(line.what)?.[1]);
      expect(Math.abs(printed - sheet.number("sparge_water"))).toBeLessThan(0.00501);
    }
    // All sugar that is in the kettle in the end ran off the grain or was stirred in; wort that is only run off is as much as before the boil.
    const stirredInKg = si.kilograms(
      batch.malt.reduce((sum, { mass, yieldPercent, handling }) => sum + (handling === "mash" ? 0 : (mass * yieldPercent) / 100), 0),
    );
    expect(happened.afterBoil.sugarKg).toBeCloseTo(sugarKg + stirredInKg, 2);
    if (stirredInKg === 0) expect(Math.abs(happened.beforeBoilL / ranL - 1), because).toBeLessThan(0.002);
  });

  it("is at the stand's heat when the hops go in, and as cold as the yeast wants it when it runs into the fermenter", () => {
    if (!day) return;
    const { sheet, batch, happened, lines, because } = day;
    const { kit, hopStand } = batch;
    const coil: Coil = {
      kwPerK: kit.coilKwPerK,
      tapC: si.celsius(kit.tapTemperature),
      litresPerMinute: si.litres(kit.tapFlow),
    };
    const boils = si.celsius(sheet.number("boils_at"));
    const [stand, hops, chill] = [at(lines, /^Stand: /), at(lines, /for the stand$/), at(lines, /^Chill to /)];
    const down = chilled(happened.afterBoil, boils, hops.line.minute - stand.line.minute, coil);
    // Sugar takes less heat than water, which the sheet leaves out: then it is colder, never warmer, than promised.
    const standC = si.celsius(Number(hopStand.temperature));
    expect(down.endsAtC - standC, because).toBeLessThan(0.4);
    expect(down.endsAtC - standC, because).toBeGreaterThan(-0.06 * (boils - standC) - 0.4);
    expect(chill.line.minute - hops.line.minute).toBeCloseTo(Number(hopStand.minutes), 3);
    const rest = chilled(happened.afterBoil, down.endsAtC, chill.next.minute - chill.line.minute, coil);
    const pitchC = si.celsius(sheet.number("pitch_temperature"));
    expect(rest.endsAtC - pitchC, because).toBeLessThan(0.4);
    expect(rest.endsAtC - pitchC, because).toBeGreaterThan(-1.6);
    // What has left the wort is in the water.
    for (const { givenKj, takenKj } of [down, rest]) expect(Math.abs(takenKj / givenKj - 1)).toBeLessThan(1e-6);
    // Hops of the stand have been at these temperatures, and no others.
    const held = Array<number>(Number(hopStand.minutes) * 60).fill(standC);
    const bitter = madeBitter([...held, ...rest.everySecondC]);
    const hour = madeBitter(Array<number>(3600).fill(100));
    const inStand = batch.hops.find(({ minutes }) => minutes === "stand")!;
    const gravity = sheet.number("kettle_gravity");
    const tinsethHour = (1.65 * 0.000125 ** (gravity - 1) * (1 - Math.exp(-2.4))) / 4.15;
    const alphaMg = si.grams(Number(inStand.mass)) * Number(inStand.alphaPercent) * 10;
    const inKettle = (alphaMg / happened.afterChillingL) * tinsethHour * (bitter / hour);
    // Top-up water thins it as it thins the sugar.
    const thinned = (inKettle * (happened.afterChillingL - trueKit(batch).kettleLossL)) / happened.fermenterL;
    expect(Math.abs(sheet.number("stand_bitterness") / thinned - 1), because).toBeLessThan(0.05);
  });

  it("ends in the fermenter at the planned volume and gravity, whatever stood in between", () => {
    if (!day) return;
    const { sheet, batch, happened, because } = day;
    expect(Math.abs(happened.fermenterL / si.litres(batch.volume) - 1), because).toBeLessThan(0.005);
    expect(Math.abs(happened.gravity - sheet.number("og_plan")), because).toBeLessThan(0.0006);
  });

  it("gives a keg the gas that was asked for: set on the cylinder, or kept from the fermentation", async () => {
    if (!day) return;
    const { sheet, batch, happened, lines, because } = day;
    const { packaging, kegLine, kit } = batch;
    const wanted = packaging.co2Volumes;
    const air = airBar(si.metres(kit.altitude));
    const beerL = happened.fermenterL - si.litres(kit.bottlingLoss);
    const [kegs, holdsL] = [sheet.number("kegs_ready"), si.litres(Number(kegLine!.holds))];
    expect(kegs * holdsL, because).toBeGreaterThan(beerL * 0.995);
    expect((kegs - 1) * holdsL, because).toBeLessThan(beerL * 1.005);

    // Shared out over the kegs: at the printed pressure the beer takes up what was asked for, as near as two determinations of what beer takes up
    // agree (4 %); and a keg that holds just that, closed, reads that pressure back once it has shared itself out between beer and space.
    const inEach = beerL / kegs;
    const cold: Keg = { beerL: inEach, freeL: holdsL * 1.05 - inEach, celsius: si.celsius(Number(packaging.kegTemperature)) };
    const setBar = si.bar(sheet.number("keg_pressure"));
    const taken = gramsIn({ ...cold, freeL: 0 }, setBar + air);
    expect(Math.abs(volumesOf(taken / inEach) / wanted - 1), because).toBeLessThan(0.05);
    const readBack = sharedOutBar(cold, gramsOf(wanted) * inEach + gramsIn({ ...cold, beerL: 0 }, setBar + air)) - air;
    expect(Math.abs(readBack - setBar), because).toBeLessThan(0.05 * (setBar + air));

    // Closed at the printed gravity, a tenth of the vessel free, and left to finish.
    const closeAt = sheet.number("spund_planned");
    expect(at(lines, /^Pitch; /).line.what).toContain(`Close it only at ${closeAt.toFixed(3)}`);
    const warm: Keg = { beerL: 9, freeL: 1, celsius: si.celsius(Number(batch.yeast.fermentTo)) };
    const shut = gramsIn(warm, air) + warm.beerL * madeByFallingGPerL(closeAt, sheet.number("fg_plan"));
    const endsBar = sharedOutBar(warm, shut);
    const endsWith = volumesOf(gramsIn({ ...warm, freeL: 0 }, endsBar) / warm.beerL);
    expect(Math.abs(endsWith - wanted), because).toBeLessThan(0.06);
    counted.closed += 1;
    // A plate that does not bear two points more is given no gravity; one that bears a fifth more is.
    const reserve = sharedOutBar(warm, shut + warm.beerL * madeByFallingGPerL(0.002, 0)) - air;
    const plate = (bar: number) => Number((units === "us" ? bar / 0.0689476 : bar).toPrecision(4));
    await sheet.set({ keg_plate: plate(reserve * 0.97) });
    expect(sheet.get("spund_planned"), because).not.toBeTypeOf("number");
    await sheet.set({ keg_plate: plate(reserve * 1.2) });
    expect(sheet.get("spund_planned"), because).toBeTypeOf("number");
  });

  it("pours as fast as the line was cut for", () => {
    if (!day) return;
    const { sheet, batch } = day;
    const line = batch.kegLine!;
    const flow = flowLPerMin(
      si.bar(sheet.number("keg_pressure")),
      si.metres(sheet.number("line_length")),
      si.millimetres(line.diameter),
      si.metres(Number(line.height)),
    );
    expect(Math.abs(flow / si.litres(line.flow) - 1)).toBeLessThan(0.04);
  });
});

describe("the days", () => {
  it("were brewed, with and without rinsing, and their kegs closed", () => {
    expect(counted.days).toBeGreaterThanOrEqual(7);
    expect(counted.rinsed).toBeGreaterThanOrEqual(4);
    expect(counted.closed).toBe(counted.days);
  });
});
