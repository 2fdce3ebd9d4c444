import { describe, expect, it } from "vitest";
import { argumentName, type TableParameter } from "../../src/functions/describe";
import { parameterText } from "../../src/functions/parameter-text";
import { quantity } from "../../src/functions/quantities";
import { registry } from "../../src/functions/registry";
import { placesOf } from "../support/registry-probe";

/** What Excel takes for a cell: A1 to XFD1048576, or R1C1. */
const readsAsCell = (word: string): boolean => /^[A-Z]{1,3}\d{1,7}$/i.test(word) || /^R\d*C\d*$/i.test(word);
/** Excel's window for a function cuts off what is longer; the limit is the one that it had for older kinds of add-in. */
const longestText = 255;
const topics = ["WORT", "HOPS", "WATER", "MASH", "HEAT", "CLEAN", "YEAST", "LOG", "BEER", "PACK", "TASTE", "DAY", "GAUGE"];

/** Arguments that functions gained after sheets were made with them: they stand behind units. */
const addedLater: Readonly<Record<string, readonly string[]>> = {
  "WATER.BUDGET": ["fermentables", "efficiency", "dead_space"],
  "HOPS.IBU": ["boil_minutes", "stand_temperature", "stand_minutes", "chill_minutes", "chilled_to"],
  "HOPS.SHARE": ["boil_minutes", "stand_temperature", "stand_minutes", "chill_minutes", "chilled_to"],
  "DAY.TIMELINE": ["boil", "stand_temperature", "stand_minutes", "stand_after", "longer_hops"],
  "YEAST.STARTER": ["culture"],
  "BEER.ENERGY": ["primed"],
  "PACK.RESIDUAL": ["altitude"],
  "PACK.PRIMING": ["bottle", "altitude"],
  "PACK.DOSE": ["bottle", "altitude"],
  "PACK.PRESSURE": ["altitude"],
  "PACK.VOLUMES": ["altitude"],
  "PACK.CHECK": ["altitude", "headspace"],
  "PACK.INSIDE": ["altitude", "headspace"],
  "PACK.BOTTLES": ["syrup"],
};

describe("the names of the functions", () => {
  it("are no cell references, nor are the words that are", () => {
    for (const word of ["OG1", "CO2", "xfd9", "R1C1", "rc"]) expect(readsAsCell(word)).toBe(true);
    for (const word of ["ABV", "RESIDUAL", "SWAP"]) expect(readsAsCell(word)).toBe(false);
  });

  it("are all different, also without regard to case and with dots saved as underscores", () => {
    const ids = registry.map(({ id }) => id.toUpperCase());
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(ids.map((id) => id.replaceAll(".", "_"))).size).toBe(ids.length);
  });

  it("stand in the order of the brewery, topic by topic", () => {
    const order = registry.map(({ id }) => topics.indexOf(id.split(".")[0] ?? ""));
    expect(order).not.toContain(-1);
    expect(order).toEqual([...order].sort((one, other) => one - other));
  });
});

describe.each(registry.map((descriptor) => [descriptor.id, descriptor] as const))("the description of GYLE.%s", (id, descriptor) => {
  it("has a name that Excel accepts", () => {
    expect(id).toMatch(/^[A-Z][A-Z0-9_]*\.[A-Z][A-Z0-9_]*$/);
    expect(id.length).toBeGreaterThanOrEqual(3);
    expect(`GYLE.${id}`.length).toBeLessThanOrEqual(128);
    for (const word of id.split(".")) expect(readsAsCell(word), word).toBe(false);
  });

  it("says what it is for, what it gives and by which equation", () => {
    expect(descriptor.summary).toMatch(/^[A-Z].{19,}\.$/s);
    expect(descriptor.result.doc.length).toBeGreaterThan(5);
    expect(descriptor.equation.length).toBeGreaterThan(3);
    for (const caution of descriptor.cautions ?? []) expect(caution).toMatch(/^[A-Z].{9,}[.!?]$/s);
  });

  it("names at least one source with its place", () => {
    expect(descriptor.sources.length).toBeGreaterThan(0);
    for (const { cite, where } of descriptor.sources) {
      expect(cite.trim().length).toBeGreaterThan(5);
      expect(where.trim().length).toBeGreaterThan(3);
    }
  });

  it("explains every argument, the optional ones last: units, and behind them what came later, so that older formulas keep their meaning", () => {
    const places = placesOf(descriptor);
    const optionals = places.map(({ parameter }) => parameter.optional === true);
    expect(optionals).toEqual([...optionals].sort((one, other) => Number(one) - Number(other)));
    const behindUnits = places.slice(places.findIndex(({ name }) => name === "units") + 1).map(({ name }) => name);
    expect(places.some(({ name }) => name === "units") ? behindUnits : []).toEqual(addedLater[descriptor.id] ?? []);
    for (const { name, parameter } of places) {
      expect(name).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(parameter.doc.length, name).toBeGreaterThan(4);
      expect(parameterText(parameter), name).not.toContain("undefined");
    }
  });

  it("keeps each explanation short enough for Excel's window, with both units, a usual figure, and what holds when it is left out", () => {
    expect(descriptor.summary.length).toBeLessThanOrEqual(longestText);
    for (const { name, parameter } of placesOf(descriptor)) {
      const text = parameterText(parameter);
      expect(text.length, text).toBeLessThanOrEqual(longestText);
      if (parameter.kind === "number" || parameter.kind === "list")
        for (const unit of Object.values(quantity(parameter.quantity).unit))
          if (parameter.quantity !== "date") expect(text, name).toContain(unit);
      if (parameter.kind === "number" && parameter.quantity !== "date" && parameter.optional !== true) expect(text, name).toMatch(/\d/);
      if (parameter.optional === true) expect(text, name).toMatch(/left out|Needed with|Without it/i);
      if (parameter.kind === "choice") for (const choice of parameter.choices) expect(text, name).toContain(choice);
      if (parameter.kind !== "table") continue;
      for (const key of Object.keys(parameter.columns)) expect(text.split("Columns:")[1], name).toContain(argumentName(key));
      for (const column of Object.values(parameter.columns))
        if (column.kind === "choice") for (const choice of column.choices) expect(text, name).toContain(choice);
    }
  });

  it("gives usual values and defaults inside their limits, and columns that its layouts use", () => {
    for (const { name, parameter } of placesOf(descriptor)) {
      const numbers = parameter.kind === "table" ? Object.values(parameter.columns) : [parameter];
      for (const number of numbers) {
        if (number.kind !== "number" && number.kind !== "list") continue;
        const { atLeast = -Infinity, above = -Infinity, atMost = Infinity, below = Infinity } = number.limits;
        const values = [number.typical, ...("default" in number && number.default !== undefined ? [number.default] : [])];
        for (const value of values)
          expect(value >= atLeast && value > above && value <= atMost && value < below, `${name}: ${value}`).toBe(true);
      }
      if (parameter.kind === "table") expectSoundLayouts(parameter);
      if (parameter.kind === "choice" && parameter.default !== undefined) expect(parameter.choices).toContain(parameter.default);
    }
  });
});

/** Each width once, only columns that exist, and none that no layout uses. */
function expectSoundLayouts({ columns, layouts }: TableParameter): void {
  const widths = layouts.map((layout) => layout.length);
  expect(new Set(widths).size).toBe(widths.length);
  const used = new Set(layouts.flat().filter((key) => key !== null));
  expect([...used].sort()).toEqual(Object.keys(columns).sort());
  for (const layout of layouts) {
    for (const [key, column] of Object.entries(columns))
      expect(layout.includes(key) || column.optional === true || "default" in column, key).toBe(true);
  }
}
