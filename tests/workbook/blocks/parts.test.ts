import { describe, expect, it } from "vitest";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { figure, shownWords } from "../../../src/workbook/batch/figures/on-its-sheet";
import { withBlocks } from "../../../src/workbook/batch/new-batch";
import { allSaid, laidOver } from "../../../src/workbook/batch/rules/what-it-says";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { packagingIn } from "../../../src/workbook/brewing/companion/packaging/packaging-form";
import { isAllowed, packagedAs, partsOf } from "../../../src/workbook/brewing/companion/packaging/packaging-judged";
import { packagingSafety } from "../../../src/workbook/brewing/companion/packaging/packaging-safety";
import { needsOf } from "../../../src/workbook/sheets/stores/needs";
import { batchFigures } from "../../../src/workbook/sheets/kit/batch-figures";
import { allGrainBatch } from "../../sheets/by-hand/batches";
import { calculatedSheet } from "../../support/calculated-sheet";

type Part = NonNullable<BatchContents["partsOfWort"]>["one"];

/** Finished beer of 20.5 L, 0.6 of which are lost in racking. */
const finished = withBlocks({ ...allGrainBatch(), packaging: { ...allGrainBatch().packaging, bottlesFilled: "" } }, ["partsOfWort"]);
const inParts = (...typed: Partial<Part>[]): BatchContents => {
  const blank = finished.partsOfWort!;
  const [one, two, three, four] = typed;
  return {
    ...finished,
    partsOfWort: {
      one: { ...blank.one, ...one },
      two: { ...blank.two, ...two },
      three: { ...blank.three, ...three },
      four: { ...blank.four, ...four },
    },
  };
};
const sheetOf = (batch: BatchContents) => calculatedSheet(planBatch(batch));
const rulesOf = (batch: BatchContents, line: string): string[] =>
  allSaid(laidOver(sheetOf(batch))).flatMap((said) => (said.line === line ? [`${said.rule} ${said.state}`] : []));
const bottles: Partial<Part> = { name: "Bottles", volume: 9.9, into: "bottles" };
const keg: Partial<Part> = { name: "Keg", volume: 10, into: "keg", co2Volumes: 2.3, warmestPlace: 6 };

describe("one wort in several packagings", () => {
  it("is as before while no part is typed", () => {
    const { partsOfWort: _, ...plain } = finished;
    for (const name of ["sugar_mass", "bottle_pressure", "bottles_ready", "bottles_plan", "first_taste", "primed_gas", "abv_bottle"])
      expect(figure(finished, name), name).toBe(figure(plain, name));
    expect(shownWords(finished, "pressure_verdict")).toBe(shownWords(plain, "pressure_verdict"));
    expect(figure(finished, "sugar_mass")).toBeGreaterThan(50);
    expect(rulesOf(finished, "parts")).toEqual([]);
  });

  it("gives each part what section 8 gives a batch of that part alone", () => {
    const batch = inParts(bottles, keg);
    const { partsOfWort: _, ...plain } = finished;
    const alone = { ...plain, kit: { ...plain.kit, bottlingLoss: 0 }, wort: { ...plain.wort, volume: 9.9 } };
    expect(figure(batch, "part_one_sugar")).toBeCloseTo(figure(alone, "sugar_mass")!, 9);
    expect(figure(batch, "part_one_inside")).toBeCloseTo(figure(alone, "bottle_pressure")!, 9);
    expect(shownWords(batch, "part_one_verdict")).toBe(shownWords(alone, "pressure_verdict"));
    const kegged = { ...alone, packaging: { ...alone.packaging, into: "keg" as const, co2Volumes: 2.3, kegTemperature: 6 } };
    expect(figure(batch, "part_two_pressure")).toBeCloseTo(figure(kegged, "keg_pressure")!, 9);
    expect(shownWords(batch, "part_two_verdict")).toBe(shownWords(kegged, "pressure_verdict"));
    // Of a keg no sugar, of bottles no pressure to set; of a part that is none nothing.
    for (const name of ["part_two_sugar", "part_two_inside", "part_one_pressure", "part_three_sugar", "part_four_pressure"])
      expect(figure(batch, name), name).toBeUndefined();
    expect(rulesOf(batch, "parts")).toEqual([]);
    expect(rulesOf(batch, "pressure")).toEqual([]);
  });

  it("takes of a part's own cells each that is filled in, of section 8 the rest", () => {
    const strong = inParts(
      { ...bottles, co2Volumes: 3, bottleKind: "sparkling", sugar: "dextrose", warmestSinceFermentation: 12, warmestPlace: 18 },
      keg,
    );
    const plain = inParts(bottles, keg);
    const { partsOfWort: _, ...whole } = finished;
    const alone = {
      ...whole,
      kit: { ...whole.kit, bottlingLoss: 0 },
      wort: { ...whole.wort, volume: 9.9 },
      packaging: {
        ...whole.packaging,
        co2Volumes: 3,
        bottleKind: "sparkling",
        sugar: "dextrose",
        warmestSinceFermentation: 12,
        warmestStorage: 18,
      },
    };
    expect(figure(strong, "part_one_sugar")).toBeCloseTo(figure(alone, "sugar_mass")!, 9);
    expect(shownWords(strong, "part_one_verdict")).toBe(shownWords(alone, "pressure_verdict"));
    expect(figure(strong, "part_one_sugar")).not.toBeCloseTo(figure(plain, "part_one_sugar")!, 1);
  });

  it("leaves section 8 without a figure for the whole, and counts bottles and beer once", () => {
    const batch = inParts({ ...bottles, bottlesFilled: 29 }, { ...keg, kegFilled: 9.8 });
    for (const name of ["sugar_mass", "bottle_pressure", "keg_pressure"]) expect(figure(batch, name), name).toBeUndefined();
    expect(shownWords(batch, "pressure_verdict")).toBe("");
    // 9.9 L and half a litre of syrup in bottles of 0.33 L, and one for what is left: 31.5, so 32.
    expect(figure(batch, "bottles_ready")).toBe(32);
    expect(figure(batch, "bottles_reached")).toBe(29);
    expect(figure(batch, "parts_bottled")).toBeCloseTo(29 * 0.33, 9);
    expect(figure(batch, "parts_kegged")).toBe(9.8);
    expect(figure(batch, "first_taste")).toBeGreaterThan(46321);
    const caps = (one: BatchContents) => needsOf(sheetOf(one), "metric", "Caps").find(({ kind }) => kind === "caps")?.amount;
    expect(caps(batch)).toBe(29);
    expect(caps(inParts(bottles, keg))).toBe(32);
    expect(caps(inParts(keg))).toBeUndefined();
    expect(batchFigures(sheetOf(batch)).bottlingLoss).toBeUndefined();
    // Not noted yet: once it is packaged, a keg holds what was meant for it.
    expect(figure(inParts(keg), "parts_kegged")).toBe(10);
  });

  it("counts a keg that waits for its day as empty", () => {
    const batch = inParts(keg);
    expect(figure({ ...batch, packaging: { ...batch.packaging, packagedOn: "" } }, "parts_kegged")).toBe(0);
  });
});

describe("a part that may not be filled so", () => {
  it.each<[string, Partial<Part>]>([
    ["more gas than the glass bears", { ...bottles, co2Volumes: 4, bottleKind: "ordinary", warmestPlace: 35 }],
    ["yeast that has not finished", { ...bottles, gravity: 1.02, endsAt: 1.01 }],
  ])("gets no figure anywhere: %s", (_, typed) => {
    const batch = inParts(typed, keg);
    expect(shownWords(batch, "part_one_verdict")).toMatch(/Do not/);
    for (const name of ["part_one_sugar", "part_one_inside"]) expect(figure(batch, name), name).toBeUndefined();
    // The other one is as good as it was.
    expect(figure(batch, "part_two_pressure")).toBeGreaterThan(0.3);
    expect(rulesOf(batch, "parts")).toEqual(["parts.refused stop"]);
    expect(rulesOf(batch, "pressure")).toEqual(["pressure.part-refused stop"]);
    const sheet = sheetOf(batch);
    const world = packagedAs(sheet, packagingIn(sheet));
    expect(partsOf(world)?.map(({ name, isGiven }) => [name, isGiven])).toEqual([
      ["Bottles", false],
      ["Keg", true],
    ]);
    expect(isAllowed(world, packagingIn(sheet))).toBe(false);
    expect(packagingSafety(sheet, packagingIn(sheet)).level).toBe("refuse");
  });

  it("is asked of the pane as of the sheet where all is well", () => {
    const sheet = sheetOf(inParts(bottles, keg));
    expect(packagingSafety(sheet, packagingIn(sheet))).toMatchObject({ level: "clear", dangers: [] });
    const [first, second] = partsOf(packagedAs(sheet, packagingIn(sheet)))!;
    expect(first!.sugar.value).toBeCloseTo(Number(sheet.value("part_one_sugar")), 9);
    expect(second!.pressure.value).toBeCloseTo(Number(sheet.value("part_two_pressure")), 9);
    expect(partsOf(packagedAs(sheetOf(finished), packagingIn(sheet)))).toBeUndefined();
  });

  it("shows the figure of today's formulas, whatever somebody has typed over the cell", () => {
    const plan = planBatch(inParts({ ...bottles, gravity: 1.02, endsAt: 1.01 }, keg));
    const at = plan.names.find(({ name }) => name === "part_one_sugar")!.range;
    const sheet = calculatedSheet({ ...plan, cells: plan.cells.map((cell) => (cell.address === at ? { ...cell, content: 88 } : cell)) });
    expect(sheet.value("part_one_sugar")).toBe(88);
    expect(partsOf(packagedAs(sheet, packagingIn(sheet)))![0]).toMatchObject({ isGiven: false, sugar: { problem: "" } });
  });

  it("gets no sugar where the parts are more than the beer: it would go into less", () => {
    const batch = inParts({ ...bottles, volume: 12 }, keg);
    expect(figure(batch, "part_one_sugar")).toBeUndefined();
    expect(rulesOf(batch, "parts")).toEqual(["parts.more-than-beer stop"]);
    const sheet = sheetOf(batch);
    expect(isAllowed(packagedAs(sheet, packagingIn(sheet)), packagingIn(sheet))).toBe(false);
  });

  it("is not judged by another yeast's end", () => {
    const batch = inParts({ ...bottles, gravity: 1.008 }, keg);
    expect(shownWords(batch, "part_one_verdict")).toBe("");
    expect(figure(batch, "part_one_sugar")).toBeUndefined();
    expect(rulesOf(batch, "parts")).toEqual(["parts.end-missing stop"]);
    expect(figure(inParts({ ...bottles, gravity: 1.008, endsAt: 1.008 }, keg), "part_one_sugar")).toBeGreaterThan(20);
  });

  it.each<[string, Partial<Part>[], string[]]>([
    ["into a bath", [{ ...bottles, into: "bath" }], ["parts.into-unknown stop"]],
    ["less than nothing", [{ ...bottles, volume: -1 }], ["parts.volume-negative stop"]],
    ["beer left over", [bottles], ["parts.left-over look"]],
    ["more filled than there was", [{ ...bottles, bottlesFilled: 60 }, keg], ["parts.bottles-more-than-beer look"]],
    ["near its limit", [{ ...bottles, bottleKind: "ordinary", co2Volumes: 2.6, warmestPlace: 24 }, keg], ["parts.close look"]],
  ])("%s", (_, typed, said) => {
    expect(rulesOf(inParts(...typed), "parts")).toEqual(said);
  });

  it("of two kegs says which one the line is cut for and when it is closed", () => {
    const lined = (...parts: Partial<Part>[]): readonly string[] => {
      const sheet = sheetOf(withBlocks(inParts(...parts), ["kegLine"]));
      return ["line_length", "spund_at"].map((name) => {
        const { row, column } = sheet.area(name).from;
        return String(sheet.at(row, column + 1));
      });
    };
    expect(lined(bottles, keg)).toEqual(["m", "with a relief valve, for its own gas"]);
    expect(lined({ ...keg, name: "" }, { ...keg, name: "Second", volume: 9.9 })).toEqual([
      "m; for part 1 only",
      "with a relief valve, for its own gas; for part 1 only",
    ]);
    expect(lined(bottles, { ...keg, volume: 5, name: "Strong" }, { ...keg, volume: 5 })[0]).toBe("m; for part 2 only");
  });
});
