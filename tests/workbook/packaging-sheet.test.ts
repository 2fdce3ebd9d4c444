import { describe, expect, it } from "vitest";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { CellError } from "../../src/functions/cell-error";
import { paperGrid } from "../support/paper-grid";

/** Section 8 and the line that watches it, on the paper grid: 5 US gal of extract beer, logged at 66 °F. */
const base = exampleBatch({
  id: "packaging",
  sheetName: "Packaging",
  batchName: "Packaging",
  brewedOn: 46270,
  volume: 5,
  units: "us",
  topUp: 2.5,
  method: "extract",
});
const brewed: BatchContents = {
  ...base,
  wort: { collected: "", reading: 1.05, scale: "SG", sampleTemperature: 60, volume: 5 },
  readings: [1.02, 1.012, 1.012].map((reading, index) => ({
    when: 46275.5 + 2 * index,
    reading,
    scale: "SG",
    sampleTemperature: 60,
    beerTemperature: 66,
  })),
  packaging: {
    ...base.packaging,
    into: "bottles",
    co2Volumes: 2.4,
    warmestSinceFermentation: 66,
    bottleKind: "ordinary",
    warmestStorage: 75,
  },
};
const cellNamed = (plan: ReturnType<typeof planBatch>, name: string): string =>
  plan.names.find((one) => one.name === name)!.range.split(":")[0]!;

function sheet(typed: Readonly<Record<string, string | number>> = {}, contents = brewed) {
  const plan = planBatch(contents);
  const grid = paperGrid(plan, new Map(Object.entries(typed).map(([name, value]) => [cellNamed(plan, name), value])));
  const row = plan.cells.find(({ content }) => content === "Pressure in the bottle")!.address.slice(1);
  const shown = (cell: string) => {
    const value = grid.at(cell);
    return value instanceof CellError ? value.code : (value ?? "");
  };
  return {
    of: (name: string) => shown(cellNamed(plan, name)),
    sugarUnit: String(shown(cellNamed(plan, "sugar_mass").replace("H", "I"))),
    alcohol: String(shown(cellNamed(plan, "abv_reached").replace("H", "I"))),
    state: shown(`B${row}`),
    line: String(shown(`C${row}`)),
  };
}

/** The newest two readings stand at this; the attenuation makes 1.0120 of the gravity that was read. */
const standingAt = (gravity: number, last = gravity): BatchContents => ({
  ...brewed,
  yeast: { ...brewed.yeast, attenuationPercent: 75.1 },
  readings: brewed.readings.map((one, index) => (index === 0 ? one : { ...one, reading: index === 1 ? gravity : last })),
});

describe("beer that stands a point above the gravity expected", () => {
  it("has finished once it is steady: one advice, no gas to come, and its sugar", () => {
    const finished = sheet({}, standingAt(1.013));
    expect([finished.of("verdict"), finished.of("fg_expected")]).toEqual(["steady", expect.closeTo(1.012, 4)]);
    expect(finished.of("next_step")).toMatch(/^Finished/);
    expect(finished.of("pressure_verdict")).toMatch(/^within: 2\.4 volumes/);
    expect(finished.of("sugar_mass")).toBeCloseTo(Number(sheet({}, standingAt(1.012)).of("sugar_mass")), 9);
    expect([finished.state, finished.line]).toEqual(["nothing found", ""]);
  });
  it("waits while it is not: what is left counts, and no other remedy is named", () => {
    const working = sheet({}, standingAt(1.0145, 1.013));
    expect(working.of("verdict")).not.toBe("steady");
    expect(working.of("pressure_verdict")).toMatch(
      /^(close|over): 2\.[89]\d* volumes .* come from fermentation still to be done\. Do not bottle/,
    );
    expect(working.of("pressure_verdict")).not.toMatch(/stronger|less sugar|cooler,/);
    expect(working.of("sugar_mass")).toBe("");
  });
  it("waits at two points above, though it is at rest: neither place says package", () => {
    const rests = sheet({}, standingAt(1.0145));
    expect(rests.of("verdict")).toBe("steady");
    expect(rests.of("next_step")).toMatch(/^At rest, but above the gravity expected: wait/);
    expect(rests.of("pressure_verdict")).toContain("Do not bottle");
    expect(rests.of("sugar_mass")).toBe("");
  });
});

describe("the sugar before the readings agree", () => {
  const beside = ({ sugarUnit }: ReturnType<typeof sheet>): string => sugarUnit;
  it("is called the plan's, not to be weighed, and gets its use only once they are steady", () => {
    const fresh = sheet({}, { ...brewed, readings: [] });
    // Two readings within hours, then a day apart but still falling: neither is an end.
    const soon = sheet({}, { ...brewed, readings: brewed.readings.slice(0, 2) });
    for (const waiting of [fresh, soon]) {
      expect(waiting.of("verdict")).not.toBe("steady");
      expect(Number(waiting.of("sugar_mass"))).toBeGreaterThan(3);
      expect(beside(waiting)).toBe("oz, the plan's: weigh none until readings agree");
    }
    const steady = sheet();
    expect(steady.of("verdict")).toBe("steady");
    expect(beside(steady)).toMatch(/^oz for \d\.\d\d gal; boil in two cups of water$/);
    expect(beside(sheet({ warmest_beer: "" }))).toBe("oz");
  });
});

describe("lost in racking", () => {
  it("of less than nothing gets no sugar, and words", () => {
    const typed = sheet({ bottling_loss: -1 });
    expect(typed.of("sugar_mass")).toBe("");
    expect(sheet({ bottling_loss: 0 }).of("sugar_mass")).toBeGreaterThan(3);
    expect(typed.line).toBe("Lost in racking is less than nothing, so no sugar is calculated.");
    expect(typed.alcohol).not.toContain("priming");
  });
});

describe("warmest since it finished", () => {
  it.each([
    [66, ""],
    [75, ""],
    [76, "more than 70"],
    [100, "more than 70"],
    [61, ""],
    [60, "below 66"],
  ] as const)("%d °F is held against 66 °F in the log and 70 °F at most for the yeast", (warmest_beer, said) => {
    const { line, state } = sheet({ warmest_beer, ferment_to: 70, warmest_storage: 60 });
    if (said === "") return expect([state, line]).toEqual(["nothing found", ""]);
    expect(state).toBe("look");
    expect(line).toMatch(new RegExp(`^Sugar goes by ${warmest_beer} °F as the warmest since it finished, .* ${said} by this sheet`));
  });
  it("is held against nothing where the sheet knows no temperature", () => {
    const nothing: BatchContents = { ...brewed, readings: brewed.readings.map((one) => ({ ...one, beerTemperature: "" })) };
    expect(sheet({ warmest_beer: 80, ferment_to: "", warmest_storage: 60 }, nothing)).toMatchObject({ state: "nothing found", line: "" });
  });
  it("never hides that the glass does not bear it", () => {
    expect(sheet({ warmest_beer: 80, warmest_storage: 110 }).line).toMatch(/^over: /);
  });
});

describe("air in the neck", () => {
  it.each([0, 0.5, 1, 51])("of %d %% is refused in words, never taken for the usual 5", (headspace) => {
    const typed = sheet({ headspace });
    expect(typed.line).toBe(`Air in the neck: 2 to 50 %, not ${headspace}. Until then neither sugar nor pressure is calculated.`);
    expect(typed.state).toBe("stop");
    for (const name of ["sugar_mass", "bottle_pressure"]) expect(typeof typed.of(name)).toBe("string");
  });
  it.each([2, 5, 50, ""])("of %s is taken", (headspace) =>
    expect(sheet({ headspace, warmest_storage: 50 }).of("sugar_mass")).toBeGreaterThan(3),
  );
  it("is none of a keg's", () => expect(sheet({ headspace: 0, into: "keg" }).of("keg_pressure")).toBeGreaterThan(0));
});

it("the card tells of no alcohol from sugar that is withheld", () => {
  expect(sheet().alcohol).toMatch(/; with the priming \d\.\d$/);
  expect(sheet({ carbonation: 4 }).alcohol).toMatch(/^% by volume, ± \d\.\d$/);
});
