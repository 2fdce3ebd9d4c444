import { describe, expect, it } from "vitest";
import { convertUnits } from "../../../src/workbook/batch/scale/convert-units";
import { blockResults } from "../../../src/workbook/batch/fields/blocks";
import { figure } from "../../../src/workbook/batch/figures/on-its-sheet";
import { allSaid, laidOver } from "../../../src/workbook/batch/rules/what-it-says";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { quantity } from "../../../src/functions/quantities";
import { filledBlocks } from "../../support/filled-blocks";
import { calculatedSheet } from "../../support/calculated-sheet";

describe("a sheet with every block filled in", () => {
  it.each(["metric", "us"] as const)("shows no error anywhere, and every figure of a block (%s)", (units) => {
    const batch = filledBlocks(units, "Filled");
    const sheet = calculatedSheet(planBatch(batch));
    expect([...sheet.filled()].filter(({ value }) => typeof value === "string" && /^#[A-Z]+[!?/]/.test(value))).toEqual([]);
    // What is lifted by a decoction takes no water.
    const single = blockResults.filter(
      (name) => !sheet.range(name).includes(":") && name !== "report_verdict" && name !== "third_adds" && !name.startsWith("part_"),
    );
    expect(single.length).toBeGreaterThan(20);
    expect(single.filter((name) => typeof sheet.value(name) !== "number")).toEqual([]);
    expect(allSaid(laidOver(sheet)).filter(({ rule }) => /cannot/.test(rule))).toEqual([]);
  });

  it("shows the same in the other units", () => {
    const metric = filledBlocks("metric", "Filled");
    const us = convertUnits(metric, "us");
    for (const [name, measure] of [
      ["before_cold", "volume"],
      ["mash_kept", "volume"],
      ["absorption_seen", "absorption"],
      ["boil_off_seen", "volumePerHour"],
      ["treated_volume", "volume"],
      ["stand_mass", "smallMass"],
      ["starter_volume", "volume"],
      ["starter_extract", "mass"],
      ["line_length", "length"],
    ] as const)
      expect(quantity(measure).toCore(figure(us, name)!, "us") / figure(metric, name)!, name).toBeCloseTo(1, 3);
    for (const name of [
      "before_gravity",
      "og_forecast",
      "before_efficiency",
      "residual_alkalinity",
      "ibu_plan",
      "stand_bitterness",
      "starter_cells",
    ])
      expect(figure(us, name)! / figure(metric, name)!, name).toBeCloseTo(1, 3);
  });
});
