import { describe, expect, it } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { scaledCopy } from "../../src/workbook/batch/scale/scaled-copy";
import { recipeChanges, recipeName } from "../../src/workbook/sheets/season/versions";

const before = exampleBatch({
  id: "a",
  sheetName: "A",
  batchName: "Bitter",
  brewedOn: 46000,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
});

describe("the name of a recipe", () => {
  it.each([
    ["Sluice Bitter", "Sluice Bitter"],
    ["Sluice Bitter 2", "Sluice Bitter"],
    ["Sluice Bitter (2)", "Sluice Bitter"],
    ["Sluice Bitter no. 3", "Sluice Bitter"],
    ["Sluice Bitter v4 (2)", "Sluice Bitter"],
    ["Sluice Bitter, batch 12", "Sluice Bitter"],
    ["1", "1"],
    ["Catch 22B", "Catch 22B"],
  ])("%s", (name, recipe) => expect(recipeName(name)).toBe(recipe));
});

describe("what changed between two versions of a recipe", () => {
  it("nothing, whatever the day, the readings and the prices", () => {
    const again = {
      ...before,
      id: "b",
      batchName: "Bitter 2",
      brewedOn: 46100,
      malt: before.malt.map((line) => ({ ...line, cost: 99 })),
      yeast: { ...before.yeast, cost: 99 },
    };
    expect(recipeChanges(before, again)).toEqual([]);
  });

  it("half a degree more in the mash or the fermenter is a change; a gram that the scale rounds away is none", () => {
    expect(recipeChanges(before, { ...before, kit: { ...before.kit, soakTemperature: before.kit.soakTemperature + 0.5 } })).toHaveLength(1);
    expect(recipeChanges(before, { ...before, malt: before.malt.map((line) => ({ ...line, mass: line.mass * 1.0005 })) })).toEqual([]);
  });

  it("each figure with both values and its unit; what is new and what was left out", () => {
    const [first, ...others] = before.malt;
    const [hop, ...hops] = before.hops;
    const after = {
      ...before,
      malt: [{ ...first!, mass: first!.mass + 0.5 }, { ...first!, ingredient: "Oats", mass: 0.4 }, ...others.slice(1)],
      hops: [{ ...hop!, alphaPercent: hop!.alphaPercent + 1.5 }, ...hops],
      yeast: { ...before.yeast, name: "Another yeast" },
      kit: { ...before.kit, boilMinutes: before.kit.boilMinutes + 15 },
    };
    const changes = recipeChanges(before, after);
    const figure = (value: number) => String(Number(value.toFixed(2)));
    expect(changes).toContain(`${first!.ingredient}: ${figure(first!.mass)} kg → ${figure(first!.mass + 0.5)} kg`);
    expect(changes).toContain("Oats: new, 0.4 kg");
    expect(changes).toContain(`${others[0]!.ingredient}: left out (${figure(others[0]!.mass)} kg before)`);
    expect(changes).toContainEqual(
      expect.stringMatching(new RegExp(`^${hop!.hop}.*alpha.* ${figure(hop!.alphaPercent)} % → ${figure(hop!.alphaPercent + 1.5)} %$`)),
    );
    expect(changes).toContainEqual(expect.stringContaining(`${before.yeast.name} → Another yeast`));
    expect(changes).toContainEqual(
      expect.stringMatching(new RegExp(`${before.kit.boilMinutes} min → ${before.kit.boilMinutes + 15} min$`)),
    );
    expect(changes).toHaveLength(6);
  });

  it("a bigger batch, or one in other units, is the same recipe but for its volume", () => {
    const bigger = {
      ...before,
      volume: 40,
      malt: before.malt.map((line) => ({ ...line, mass: line.mass * 2 })),
      hops: before.hops.map((line) => ({ ...line, mass: line.mass * 2 })),
    };
    expect(recipeChanges(before, bigger)).toEqual(["Volume: 20 → 40 L"]);
    const copy = scaledCopy(before, { name: "Bitter US", brewedOn: 46200, volume: 20 / 3.785411784, units: "us" });
    expect(recipeChanges(before, copy).filter((change) => /malt|Malt|yeast/.test(change))).toEqual([]);
  });
});
