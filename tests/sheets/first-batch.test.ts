import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { address, position } from "../../src/workbook/grid/plan/addresses";
import { gainedInChilling } from "../support/chilled-hops";
import { litresPerGallon, saysOf, trueKit } from "./follow-the-sheet/batches";
import { follow } from "./follow-the-sheet/brewer";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../support/batch-bench";

const firstExtractPlan = planBatch(firstExtractBatch());
let bench: HeadlessBench;
let sheet: BatchSheet;
beforeAll(async () => {
  bench = await openBatchBench();
  sheet = await insertOn(bench, firstExtractBatch());
}, benchTimeout);
afterAll(() => bench.dispose());

/** Facts of the trade without a source: common practice. */
describe("the sample batch agrees with common practice", () => {
  it.each([
    ["water boils at about 212 °F at sea level", "boils_at", 211.5, 212.5],
    ["chilled in 20 to 45 minutes, depending on the tap water", "chill_minutes", 20, 45],
    ["50 to 54 twelve-ounce bottles from five gallons", "bottles_plan", 50, 54],
  ])("%s", (_, name, from, to) => {
    expect(sheet.number(name)).toBeGreaterThanOrEqual(from);
    expect(sheet.number(name)).toBeLessThanOrEqual(to);
  });

  it("what is collected becomes five gallons: by mass, the table of sucrose solutions in follow-the-sheet", () => {
    const batch = firstExtractBatch();
    const happened = follow(saysOf(batch, { collect: sheet.number("water_collect"), mashWater: 0, spargeWater: 0 }), trueKit(batch));
    expect(Math.abs(happened.fermenterL / litresPerGallon - 5)).toBeLessThan(0.01);
    expect(Math.abs(happened.gravity - sheet.number("og_plan"))).toBeLessThan(0.0003);
    // On paper: 5.7 lb × 0.083 + 1.2 lb × 0.078 US gal come with the extract, 0.6 lb × 0.12 stay in the grain: 5.9 − 0.57 + 0.07, about 5.4.
    expect(sheet.number("water_collect")).toBeCloseTo(5.4, 1);
  });
  it("steeping ends at 30 min or 170 °F, whichever comes first", () => {
    expect(sheet.number("soak_minutes")).toBeLessThanOrEqual(30);
    expect(sheet.number("soak_temperature")).toBeLessThanOrEqual(170);
  });
  it("hydrometers are calibrated at 60 to 70 °F, ale ferments at 60 to 70 °F", () => {
    expect([sheet.number("calibrated_at"), sheet.number("ferment_from"), sheet.number("ferment_to")]).toEqual([60, 60, 70]);
  });
  it("ABV is about (OG − FG) × 131", () => {
    expect(Math.abs(sheet.number("abv_reached") - 131 * (sheet.number("og") - sheet.number("fg")))).toBeLessThan(0.2);
  });
  it("fermentation is done by day 8 to 12, shown by two equal readings a day apart", () => {
    expect(sheet.get("verdict")).toBe("steady");
    const days = sheet.number("last_reading") - sheet.number("brewed_on");
    expect(days).toBeGreaterThanOrEqual(8);
    expect(days).toBeLessThanOrEqual(12);
  });
  it("the first taste comes one to two weeks after bottling", () => {
    const wait = sheet.number("first_taste") - sheet.number("packaged_on");
    expect(wait).toBeGreaterThanOrEqual(7);
    expect(wait).toBeLessThanOrEqual(14);
  });
  it("the brew day lasts about four hours, the hop clock starts with the boil, the first hops go in with 55 min left, the chiller goes in with 15 to 20 min left", () => {
    const lines = timeline();
    const hours = (Number(lines.at(-1)?.time) - Number(lines[0]?.time)) * 24;
    expect(hours).toBeGreaterThan(3.5);
    expect(hours).toBeLessThan(4.75);
    expect(lines.find(({ what }) => what.includes("Chinook"))?.boilMinute).toBe(5);
    const chiller = 60 - Number(lines.find(({ what }) => what.startsWith("Chiller"))?.boilMinute);
    expect(chiller).toBeGreaterThanOrEqual(15);
    expect(chiller).toBeLessThanOrEqual(20);
  });
});

/** More of the same, in the words that stand on the sheet. */
describe("the sample batch says what the trade says", () => {
  const beside = (name: string, columns: number): string => {
    const { row, column } = position(sheet.cellOf(name));
    return String(bench.valueAt("Batch 1", address(row, column + columns)) ?? "");
  };
  const cautionOf = (start: string): string => timeline().find(({ what }) => what.startsWith(start))?.caution ?? "";
  const steps = () => firstExtractPlan.cells.filter(({ address: cell }) => /^[KO]\d+$/.test(cell)).map(({ content }) => String(content));
  const note = (name: string) => firstExtractPlan.notes.find(({ address: cell }) => cell === sheet.cellOf(name))?.text ?? "";

  it("steeping: the step, its caution and its note name both limits", () => {
    expect(timeline().map(({ what }) => what)).toContain("Steep; out at 30 min or 170 °F");
    expect(cautionOf("Steep;")).toContain("whichever comes first");
    expect(note("soak_minutes")).toContain("30 min or at 170 °F, whichever comes first");
  });
  it("the hop clock starts at the boil, for 60 min: hops with 55 min left go in 5 min later", () => {
    const lines = timeline();
    const boil = lines.findIndex(({ what }) => what === "Boil begins: start the 60-minute clock");
    expect(lines[boil]?.boilMinute).toBe(0);
    expect(lines[boil + 1]).toMatchObject({ what: "Add Chinook", boilMinute: 5 });
  });
  it("from flame-out on, whatever touches the wort is sanitised", () => {
    expect(note("sanitiser_dose")).toContain("From flame-out on, whatever touches the wort");
    expect(steps().some((words) => words.startsWith("From flame-out on"))).toBe(true);
    expect(cautionOf("Flame out")).toContain("only sanitised things touch it");
    const lines = timeline();
    expect(lines.findIndex(({ what }) => what.startsWith("Soak hoses"))).toBeLessThan(
      lines.findIndex(({ what }) => what.startsWith("Flame out")),
    );
  });
  it("the sanitiser: no dose before the label's is typed, contact by the label, one to two minutes for bottles", async () => {
    expect(timeline().map(({ what }) => what)).toContain("Soak hoses, lid in sanitiser by its label");
    expect(sheet.get("sanitiser_dose") ?? "").toBe("");
    await sheet.set({ sanitiser_per_volume: 0.2 });
    // 5 US gal at 0.2 fl oz/gal.
    expect(sheet.number("sanitiser_dose")).toBeCloseTo(1, 9);
    expect(timeline().map(({ what }) => what)).toContain("Soak hoses: 1.00 fl oz sanitiser in 5.00 gal");
    await sheet.set({ sanitiser_per_volume: "" });
    expect(cautionOf("Soak hoses")).toBe("Dose and contact time by the label. Never with bleach or other cleaners.");
    expect(beside("sanitiser_dose", 1)).toBe("US fl oz; type its label's dose (column L)");
    expect(beside("bottling_loss", 3)).toBe(
      "Takes about an hour. Bottles, siphon, caps: clean, then 1 to 2 min in sanitiser, by its label.",
    );
  });
  it("wort is chilled below 80 °F before the yeast goes in", () => {
    expect(sheet.number("pitch_temperature")).toBeLessThan(80);
    const lines = timeline();
    const chill = lines.findIndex(({ what }) => what.startsWith("Chill to 66 °F"));
    expect((Number(lines[chill + 1]?.time) - Number(lines[chill]?.time)) * 1440).toBeCloseTo(sheet.number("chill_minutes"), 6);
    expect(chill).toBeLessThan(lines.findIndex(({ what }) => what.startsWith("Pitch ")));
    expect(steps().some((words) => words.startsWith("Below 80 °F the yeast is safe"))).toBe(true);
  });
  it("hydrometers are calibrated at 60 to 70 °F", () => expect(note("calibrated_at")).toContain("60 or 68 °F"));
  it("finished is what two equal readings a day apart show, mostly by day 8 to 12", () => {
    const [last, before] = [...firstExtractBatch().readings].reverse();
    expect(last?.reading).toBe(before?.reading);
    expect(Number(last?.when) - Number(before?.when)).toBeGreaterThanOrEqual(1);
    const hint = firstExtractPlan.cells.find(({ content }) => String(content).startsWith("Finished when"));
    expect(hint?.content).toBe("Finished when two readings a day apart agree and the last days' fall is over, often by day 8 to 12");
  });
  it("priming sugar is boiled in two cups of water", () =>
    expect(beside("sugar_mass", 1)).toBe("oz for 4.90 gal; boil in two cups of water"));
  it("before the first reading it tells when to expect signs of life", () => {
    const next = firstExtractPlan.cells.find(({ address: cell }) => cell === sheet.cellOf("next_step"));
    expect(next?.content).toContain('IF(verdict="","Pitch; signs of life within 24 to 48 hours. Read again after three days."');
  });
});

describe("the sample batch", () => {
  it("reaches what a careful hand calculation gives", () => {
    // 0.6 lb × 0.75 × 0.5 + 5.7 lb × 0.78 + 1.2 lb × 0.91 = 5.763 lb of sugar = 2.6141 kg in 5.2 US gal = 19.684 L: 132.8 g/L, in the table of
    // sucrose solutions (follow-the-sheet) between 12 % (125.6 g/L, 1.04646 kg/L) and 13 % (136.6 g/L, 1.05066): 1.04921 over 0.99823.
    expect(Math.abs(sheet.number("og_plan") - 1.0511)).toBeLessThan(0.0001);
    // Points added up (Palmer, How to Brew, 2006: 46.2 for a pound of sucrose in a gallon): 266.3 / 5.2 = 51.2.
    expect(Math.abs(sheet.number("og_plan") - 1.0512)).toBeLessThan(0.0002);
    // MCU = (0.6 × 40 + 5.7 × 4 + 1.2 × 3) / 5.2 = 9.69; Morey: 1.4922 × 9.69^0.6859 = 7.09.
    expect(sheet.number("colour_plan")).toBeCloseTo(7.09, 1);
    // Tinseth: 7490 × Σ(oz × alpha × utilisation) / 5.2 at the kettle's 1.0480: 266.3 points over (5.9 + 5.2) / 2 US gal.
    const utilisation = (minutes: number) => (1.65 * 0.000125 ** 0.04797 * (1 - Math.exp(-0.04 * minutes))) / 4.15;
    const ibu = (7490 / 5.2) * (0.55 * 0.118 * utilisation(55) + 1.3 * 0.052 * utilisation(12) + 0.7 * 0.118 * utilisation(4));
    // In the chilling the hops gain what they would in some minutes at 100 °C: by Malowicki and Shellhammer's k1 along
    // Newton's law from 212 to 66 °F, in steps of a second (tests/support/chilled-hops.ts).
    expect(
      Math.abs(
        sheet.number("ibu_plan") -
          ibu -
          gainedInChilling({ minutes: sheet.number("chill_minutes"), toC: (66 - 32) / 1.8, gravity: 1.04797 }, [
            [(7490 / 5.2) * 0.55 * 0.118, 55],
            [(7490 / 5.2) * 1.3 * 0.052, 12],
            [(7490 / 5.2) * 0.7 * 0.118, 4],
          ]),
      ),
    ).toBeLessThan(0.3);
  });
  it("knows when the yeast was pitched: as logged, else as planned, past midnight too", async () => {
    const line = timeline().findIndex(({ what }) => what.startsWith("Pitch "));
    const cell = sheet.cellOf("happened").replace(/\d+/, (row) => String(Number(row) + line));
    const type = async (value: number | string) => {
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Batch 1").getRange(cell).values = [[value]];
        await context.sync();
      });
      await bench.calculate();
    };
    const day = sheet.number("brewed_on");
    expect(sheet.number("pitched_at")).toBeCloseTo(day + (14 * 60 + 12) / 1440, 6);
    await type(15 / 24);
    expect(sheet.number("pitched_at")).toBeCloseTo(day + 15 / 24, 6);
    await type(0.5 / 24);
    expect(sheet.number("pitched_at")).toBeCloseTo(day + 1 + 0.5 / 24, 6);
    await type("");
    expect(sheet.number("pitched_at")).toBeCloseTo(Number(timeline()[line]?.time), 6);
    await sheet.set({ brewed_on: "" });
    expect(sheet.get("pitched_at") ?? "").toBe("");
    await sheet.set({ brewed_on: day });
    await type((14 * 60 + 12) / 1440);
  });
  it("puts the bitterness of each addition beside it, adding up to the whole", () => {
    const first = Number(sheet.cellOf("hop_alpha").slice(1));
    const shares = [0, 1, 2].map((index) => Number(bench.valueAt("Batch 1", `G${first + index}`)));
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(sheet.number("ibu_plan"), 6);
    expect(bench.valueAt("Batch 1", `G${first + 3}`) ?? "").toBe("");
  });
  it("shows no error anywhere, and no problems found", () => {
    expect(sheet.complaints()).toEqual([]);
    for (let row = 1; row <= 140; row += 1) {
      for (const column of "ABCDEFGHIKLMNOQRSTU")
        expect(String(bench.valueAt("Batch 1", `${column}${row}`)), `${column}${row}`).not.toMatch(
          /^#(VALUE|NAME|REF|N\/A|NUM|DIV|SPILL|CALC)/,
        );
    }
  });
  it("tells the colour of a glass", () => expect(sheet.get("swatch")).toMatch(/^#[0-9A-F]{6}$/));
});

function timeline(): { time: number; boilMinute: number | string; what: string; caution: string }[] {
  const first = Number(sheet.cellOf("happened").slice(1));
  return Array.from({ length: 23 }, (_, index) => first + index)
    .map((row) => ({
      what: String(bench.valueAt("Batch 1", `A${row}`) ?? ""),
      time: Number(bench.valueAt("Batch 1", `C${row}`)),
      boilMinute: bench.valueAt("Batch 1", `D${row}`) as number | string,
      caution: String(bench.valueAt("Batch 1", `G${row}`) ?? ""),
    }))
    .filter(({ what }) => what !== "");
}
