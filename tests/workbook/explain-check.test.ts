import { describe, expect, it } from "vitest";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { explainCheck } from "../../src/workbook/care/explain/explain-check";
import { block } from "../../src/workbook/grid/plan/addresses";
import { paperSheet } from "../support/paper-sheet";

describe("a line of the printed checks", () => {
  const sheet = paperSheet(firstExtractBatch(), { kettle_size: 1, warmest_storage: "", top_up: 9 });
  const first = block(sheet.range("check_states")).from.row;
  const at = (line: number, column = "B") => explainCheck(sheet, `${column}${first + line}`);

  it("is explained by its rule, the cells that it speaks of with their values, and the remedy", () => {
    expect(at(1)).toMatchObject({
      label: "Volumes",
      state: "look",
      rule: "volumes.top-up-whole",
      words: "Top-up water is as much as the whole batch: nothing is left to boil.",
      cells: [
        { name: "top_up", label: "Top-up water", shown: "9", place: { sheet: sheet.sheetName, range: sheet.range("top_up") } },
        { name: "volume", label: "Into the fermenter", shown: "5" },
      ],
    });
    const pressure = at(9, "C");
    expect(pressure).toMatchObject({ state: "stop", rule: "pressure.not-known-yet" });
    expect(pressure?.cells.map(({ name }) => name)).toEqual(["pressure_verdict", "into"]);
  });
  it("tells the remedy apart from what is wrong", () => {
    const one = paperSheet(firstExtractBatch(), { "hop_alpha.0": 55 });
    expect(explainCheck(one, `B${first + 4}`)).toMatchObject({
      rule: "hops.alpha-too-high",
      words: "An alpha acid of 55 %? No hop has so much: is a decimal point missing?",
      remedy: "is a decimal point missing?",
      cells: [{ name: "hop_alpha", shown: expect.stringMatching(/cells filled: 55/) as string }],
    });
  });
  it("that is fine tells what it looks at", () => {
    const fine = at(5);
    expect(fine).toMatchObject({ label: "Yeast", state: "nothing found", rule: "", words: "" });
    expect(fine?.cells.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["packs_in_hand", "viability", "attenuation", "packs_to_pitch", "readings"]) as string[],
    );
  });
  it("is no other cell, and of no other plan than ours", () => {
    expect(explainCheck(sheet, sheet.range("volume"))).toBeUndefined();
    expect(explainCheck(paperSheet(firstExtractBatch(), { gylebook: 2 }), `B${first}`)).toBeUndefined();
  });
});
