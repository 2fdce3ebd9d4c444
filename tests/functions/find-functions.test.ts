import { describe, expect, it } from "vitest";
import { findFunctions } from "../../src/functions/find-functions";
import { registry } from "../../src/functions/registry";
import { searchWords } from "../../src/functions/search-words";

const idsFor = (question: string): string[] => findFunctions(question).map(({ id }) => id);

describe("a brewer's word finds its function first", () => {
  it.each([
    ["bitterness", "HOPS.IBU"],
    ["how bitter", "HOPS.IBU"],
    ["sugar for bottling", "PACK.PRIMING"],
    ["how strong", "BEER.ABV"],
    ["how strong is my beer?", "BEER.ABV"],
    ["alcohol", "BEER.ABV"],
    ["calories", "BEER.ENERGY"],
    ["carbs", "BEER.CARBS"],
    ["final gravity", "YEAST.FINISH"],
    ["FG", "YEAST.FINISH"],
    ["priming", "PACK.PRIMING"],
    ["corn sugar", "PACK.PRIMING"],
    ["per bottle", "PACK.DOSE"],
    ["psi", "PACK.PRESSURE"],
    ["force carbonation", "PACK.PRESSURE"],
    ["bottle bombs", "PACK.CHECK"],
    ["bottle pressure", "PACK.CHECK"],
    ["is it finished", "LOG.STEADY"],
    ["stuck fermentation", "LOG.STEADY"],
    ["whirlpool", "HOPS.STAND"],
    ["strike water", "WATER.STRIKE"],
    ["mash temperature", "WATER.STRIKE"],
    ["step mash", "WATER.STEP"],
    ["gypsum", "WATER.IONS"],
    ["Campden tablets", "WATER.DECHLORINATE"],
    ["mash efficiency", "WORT.EFFICIENCY"],
    ["hot sample", "WORT.HYDROMETER"],
    ["color", "WORT.COLOUR"],
    ["lovibond", "BEER.LOVIBOND"],
    ["style guidelines", "BEER.STYLE"],
    ["yeast starter", "YEAST.STARTER"],
    ["pitching rate", "YEAST.CELLS"],
    ["old hops", "HOPS.AGED"],
    ["substitute a hop", "HOPS.SWAP"],
    ["altitude", "WATER.BOILS"],
    ["wort chiller", "HEAT.CHILL"],
    ["how long to heat the water", "HEAT.WARM"],
    ["sanitizer", "CLEAN.DOSE"],
    ["diluting", "WORT.THIN"],
    ["gravity too low", "WORT.REDUCE"],
    ["grain bill percentages", "WORT.BILL"],
    ["late extract", "WORT.KETTLE"],
    ["target IBU", "HOPS.WEIGH"],
    ["dry hopping", "HOPS.DRY"],
    ["two-step starter", "YEAST.STEPS"],
    ["production date", "YEAST.AGED"],
    ["dissolved oxygen", "YEAST.OXYGEN"],
    ["spunding valve", "PACK.SPUND"],
    ["fruit beer", "BEER.ADDED"],
    ["blend beers", "BEER.BLEND"],
    ["nutrition label", "BEER.LABEL"],
    ["evaporation rate", "HEAT.BOILOFF"],
    ["plate chiller", "HEAT.COUNTERFLOW"],
    ["beer line", "PACK.LINE"],
    ["how many bottles", "PACK.BOTTLES"],
    ["when to drink", "PACK.READY"],
    ["can you taste the difference", "TASTE.TRIANGLE"],
    ["which is better", "TASTE.PAIR"],
    ["score sheet", "TASTE.AGREE"],
    ["brew day schedule", "DAY.TIMELINE"],
    ["how sure", "GAUGE.SPREAD"],
    ["residual alkalinity", "WATER.ALKALINITY"],
    ["lactic acid", "WATER.ACID"],
    ["how much water", "WATER.BUDGET"],
  ])("%s: %s", (question, id) => {
    expect(idsFor(question)[0]).toBe(id);
  });

  it("and several where the word fits several", () => {
    expect(idsFor("carbonation")).toEqual(expect.arrayContaining(["PACK.PRIMING", "PACK.PRESSURE", "PACK.VOLUMES", "PACK.RESIDUAL"]));
    expect(idsFor("gravity too low")).toEqual(["WORT.REDUCE", "WORT.ENRICH"]);
    expect(idsFor("refractometer")).toEqual(["WORT.REFRACTOMETER", "BEER.REFRACTOMETER"]);
  });
});

describe("looking for a function", () => {
  it("finds all when nothing is typed, in the order of the brewery", () => {
    expect(findFunctions("  ")).toEqual(registry);
  });

  it("says so when nothing is found", () => {
    expect(idsFor("zymurgist's hat")).toEqual([]);
  });

  it("goes by the words that are known where one is not", () => {
    expect(idsFor("xyzzy calories")).toEqual(["BEER.ENERGY"]);
  });

  it("takes the beginning of a word, and no piece from its middle", () => {
    expect(idsFor("calor")).toContain("BEER.ENERGY");
    expect(idsFor("ttenuation")).toEqual([]);
  });

  it("bears signs that mean something to a pattern", () => {
    expect(idsFor("(.*+[")).toEqual(registry.map(({ id }) => id));
    expect(idsFor("BU:GU")[0]).toBe("HOPS.BALANCE");
  });

  it("finds a function by its name, with or without GYLE, in any case", () => {
    for (const { id } of registry) {
      expect(idsFor(id.toLowerCase())[0]).toBe(id);
      expect(idsFor(`GYLE.${id}`)[0]).toBe(id);
    }
  });

  it("knows other words for every function, and each of them leads to it", () => {
    expect(Object.keys(searchWords)).toEqual(registry.map(({ id }) => id));
    for (const [id, words] of Object.entries(searchWords))
      for (const phrase of words.split(", ")) expect(idsFor(phrase), phrase).toContain(id);
  });
});
