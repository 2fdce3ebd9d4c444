import { describe, expect, it } from "vitest";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { figure } from "../../../src/workbook/batch/figures/on-its-sheet";
import { withBlocks } from "../../../src/workbook/batch/new-batch";
import { allSaid, laidOver } from "../../../src/workbook/batch/rules/what-it-says";
import { scaleBatch } from "../../../src/workbook/batch/scale/scale-batch";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { calculatedSheet } from "../../support/calculated-sheet";

type Treatment = NonNullable<BatchContents["waterTreatment"]>;
const made = (method: BatchContents["method"], units: BatchContents["units"], typed: Partial<Treatment>): BatchContents => {
  const batch = withBlocks(
    exampleBatch({ id: "b", sheetName: "B", batchName: "B", brewedOn: 46270, volume: units === "us" ? 5 : 20, units, topUp: 0, method }),
    ["waterTreatment"],
  );
  return { ...batch, waterTreatment: { ...batch.waterTreatment!, ...typed } };
};
const ions = (calcium: number, magnesium: number, sodium: number, chloride: number, sulfate: number, bicarbonate: number) => ({
  calcium,
  magnesium,
  sodium,
  chloride,
  sulfate,
  bicarbonate,
});
const shown = (batch: BatchContents): (number | string | boolean)[] => calculatedSheet(planBatch(batch)).block("treated_water")[0] ?? [];
const rulesOf = (batch: BatchContents): string[] =>
  allSaid(laidOver(calculatedSheet(planBatch(batch)))).flatMap(({ line, rule }) => (line === "water-treatment" ? [rule] : []));

describe("the water of a sheet", () => {
  /*
   * By hand: a water of 60 Ca, 10 Mg, 5 Na, 15 Cl, 25 SO4, 180 HCO3, a third of it replaced by demineralised water: 40, 6.67, 3.33, 10, 16.67, 120. Gypsum
   * CaSO4·2H2O is 172.17 g/mol, of which 40.08 are Ca (23.28 %) and 96.06 SO4 (55.79 %); calcium chloride CaCl2·2H2O 147.01, of which 27.26 % Ca
   * and 48.23 % Cl. With a tenth of a gram of gypsum and two tenths of calcium chloride to the litre: Ca 40 + 23.28 + 54.52, Cl 10 + 96.46, SO4 16.67 + 55.79.
   */
  const typed = (litres: number): Partial<Treatment> => ({
    source: ions(60, 10, 5, 15, 25, 180),
    demineralisedPercent: 100 / 3,
    gypsum: 0.1 * litres,
    calciumChloride: 0.2 * litres,
  });
  const expected = [117.8, 6.67, 3.33, 106.46, 72.46, 120];

  it.each([
    ["metric", 1],
    ["us", 3.785411784],
  ] as const)("is diluted and salted as one reckons it by hand (%s)", (units, litre) => {
    const plain = made("all-grain", units, {});
    const batch = made("all-grain", units, typed(figure(plain, "water_collect")! * litre));
    shown(batch).forEach((mgPerL, index) => expect(Math.abs(Number(mgPerL) - expected[index]!)).toBeLessThan(0.06));
    // 50.04 mg of calcium carbonate for each 61.02 of bicarbonate; Kolbach: less Ca / 1.401 and Mg / 1.700.
    expect(figure(batch, "alkalinity_treated")).toBeCloseTo((120 * 50.04) / 61.02, 1);
    expect(figure(batch, "residual_alkalinity")).toBeCloseTo((120 * 50.04) / 61.02 - 117.8 / 1.401 - 6.67 / 1.7, 0);
    expect(figure(batch, "sulfate_to_chloride")).toBeCloseTo(72.46 / 106.46, 3);
  });

  it("takes salts that go into the mash alone by the mash's water", () => {
    const plain = made("all-grain", "metric", { saltsInto: "the mash water" });
    const batch = { ...plain, waterTreatment: { ...plain.waterTreatment!, ...typed(figure(plain, "mash_water")!) } };
    expect(figure(batch, "treated_volume")).toBe(figure(batch, "mash_water"));
    shown(batch).forEach((mgPerL, index) => expect(Math.abs(Number(mgPerL) - expected[index]!)).toBeLessThan(0.06));
  });

  it("says nothing while nothing is known of the water, and asks for it once salts are weighed", () => {
    expect(shown(made("all-grain", "metric", {}))).toEqual(["", "", "", "", "", ""]);
    expect(rulesOf(made("all-grain", "metric", {}))).toEqual([]);
    expect(rulesOf(made("all-grain", "metric", { gypsum: 4 }))).toEqual(["water-treatment.salts-without-water"]);
    expect(
      shown(made("all-grain", "metric", { source: ions(0, 0, 0, 0, 0, 0), gypsum: 4 })).every((mgPerL) => typeof mgPerL === "number"),
    ).toBe(true);
  });

  it.each<[string, BatchContents["method"], Partial<Treatment>, string[]]>([
    ["a good water", "all-grain", { source: ions(60, 10, 5, 15, 25, 180) }, []],
    ["spoons for grams", "all-grain", { source: ions(60, 10, 5, 15, 25, 180), gypsum: 90 }, ["water-treatment.much-salt"]],
    ["the sea", "all-grain", { source: ions(60, 10, 5, 15, 25, 180), tableSalt: 20 }, ["water-treatment.much-sodium"]],
    ["soft water", "all-grain", { source: ions(10, 1, 5, 8, 5, 30) }, ["water-treatment.little-calcium"]],
    ["chalk that does not dissolve", "all-grain", { source: ions(60, 10, 5, 15, 25, 200), chalk: 20 }, ["water-treatment.cannot"]],
    ["salts for an extract", "extract", { source: ions(60, 10, 5, 15, 25, 180), gypsum: 4 }, ["water-treatment.extract"]],
    ["soft water for an extract", "extract", { source: ions(1, 1, 5, 3, 2, 12) }, []],
  ])("%s", (_, method, typedHere, said) => {
    expect(rulesOf(made(method, "metric", typedHere))).toEqual(said);
  });

  describe("and its mash", () => {
    const mashed = (mash: Partial<Treatment["mash"]>, source = ions(70, 0, 0, 124, 0, 0)): BatchContents => {
      const batch = made("all-grain", "metric", { source });
      return {
        ...batch,
        malt: [{ ingredient: "Pale malt", mass: 4, yieldPercent: 80, handling: "mash", colour: 4, cost: "" }],
        waterTreatment: { ...batch.waterTreatment!, mash: { ...batch.waterTreatment!.mash, ...mash } },
      };
    };

    it("has the pH that its malt and its calcium give", () => {
      // By hand: 4 kg × 45 meq/(kg pH) × (pH − 5.74) + 12 L × (70 / 20.04) meq/L / 3.5 = 0.
      expect(figure(mashed({}), "mash_water")).toBe(12);
      expect(Math.abs(figure(mashed({}), "mash_ph")! - (5.74 - (12 * 70) / 20.04 / 3.5 / 180))).toBeLessThan(0.01);
    });

    it("comes to its target with the acid that is asked for, in mL", () => {
      const asked = figure(mashed({ targetPh: 5.4 }), "mash_correction")!;
      // 180 × (5.674 − 5.4) = 49 meq of lactic acid of 88 %, 11.8 mol/L, of which 0.97 work: 4.3 mL.
      expect(Math.abs(asked - 4.3)).toBeLessThan(0.15);
      const poured = mashed({ targetPh: 5.4, amount: asked });
      expect(figure(poured, "mash_ph")).toBeCloseTo(5.4, 3);
      expect(figure(poured, "mash_correction")).toBeUndefined();
      // A base is no help where the mash is too high already.
      expect(figure(mashed({ targetPh: 5.4, corrector: "baking soda" }), "mash_correction")).toBe(0);
    });

    it.each<[string, BatchContents, string[]]>([
      ["measured as expected", mashed({ measuredPh: 5.62 }), []],
      ["measured far from it", mashed({ measuredPh: 5.3 }), ["water-treatment.measured-off"]],
      ["measured badly", mashed({ measuredPh: 5.88 }, ions(40, 0, 0, 0, 0, 122)), ["water-treatment.ph"]],
      ["a report that cannot be right", mashed({}, ions(70, 0, 0, 10, 0, 0)), ["water-treatment.report"]],
      ["acid whose strength is not typed", mashed({ amount: 0.1 }), ["water-treatment.strength-taken"]],
      ["acid whose strength is typed", mashed({ amount: 0.1, strengthPercent: 88 }), []],
      ["far too much acid", mashed({ amount: 12 }), ["water-treatment.ph"]],
    ])("%s", (_, batch, said) => {
      expect(rulesOf(batch)).toEqual(said);
    });

    it("needs malt: salts and acid for a mash of nothing are told", () => {
      const without = (typed: Partial<Treatment>, batch = mashed({ strengthPercent: 88 })): string[] =>
        rulesOf({ ...batch, malt: [{ ...batch.malt[0]!, handling: "sugar" }], waterTreatment: { ...batch.waterTreatment!, ...typed } });
      expect(without({})).toEqual([]);
      expect(without({ gypsum: 2, saltsInto: "all the water" })).toEqual([]);
      expect(without({ gypsum: 2, saltsInto: "the mash water" })).toEqual(["water-treatment.no-malt"]);
      expect(without({}, mashed({ amount: 3, strengthPercent: 88 }))).toEqual(["water-treatment.no-malt"]);
    });

    it("asks for the salts and the dilution of a target", () => {
      // Half of it demineralised, and nothing else, is the very target.
      const batch = made("all-grain", "metric", { source: ions(120, 10, 20, 30, 50, 390), target: ions(60, 5, 10, 15, 25, 195) });
      const sheet = calculatedSheet(planBatch(batch));
      const wanted = sheet.block("salts_wanted").map(([, amount]) => Number(amount));
      expect(wanted[1]! / (wanted[0]! + wanted[1]!)).toBeCloseTo(0.5, 2);
      expect(wanted.slice(2, 7).every((grams) => Math.abs(grams) < 0.05)).toBe(true);
      const { row, column } = sheet.area("demineralised").from;
      expect(sheet.at(row, column + 1)).toBe("%; target 50");
    });
  });

  it("keeps its salts in proportion when the batch is scaled", () => {
    const batch = made("all-grain", "metric", { source: ions(60, 10, 5, 15, 25, 180), gypsum: 4, demineralisedPercent: 30 });
    const twice = scaleBatch(batch, { volume: 40, units: "metric" });
    expect(twice.waterTreatment).toMatchObject({ gypsum: 8, demineralisedPercent: 30, chalk: "" });
    const other = scaleBatch(batch, { volume: 5, units: "us" });
    // 5 US gal are 18.93 L; grams stay grams.
    expect(other.waterTreatment?.gypsum).toBe(3.8);
  });
});
