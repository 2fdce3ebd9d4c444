import { describe, expect, it } from "vitest";
import { batchMark, isNewer, planMark } from "../../../src/workbook/batch/read/batch-sheets";
import { planVersion } from "../../../src/workbook/batch/describe/plan-version";
import { blockFields, blockKeys } from "../../../src/workbook/batch/fields/blocks";
import { exampleBatch } from "../../../src/workbook/batch/example-batch";
import { withBlocks } from "../../../src/workbook/batch/new-batch";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { calculatedSheet } from "../../support/calculated-sheet";
import { handSheet } from "../../support/hand-sheet";

/*
 * A Gylebook from before the blocks knows plans up to 3, and refuses in words what carries a higher mark (`tests/sheets/migration.test.ts`,
 * `tests/workbook/batch-file/damaged-files.test.ts`). So every sheet with a block must carry at least the mark of the plan that brought it.
 */
describe("an older Gylebook that opens a sheet with blocks", () => {
  const example = exampleBatch({
    ...{ id: "a", sheetName: "A", batchName: "A", brewedOn: 46270, volume: 20, units: "metric", topUp: 0, method: "all-grain" },
  });

  it.each(blockKeys)("is told by the mark of its plan: %s", (key) => {
    const since = blockFields[key].since;
    expect(since).toBeGreaterThan(3);
    expect(since).toBeLessThanOrEqual(planVersion);
    const sheet = calculatedSheet(planBatch(withBlocks(example, [key])));
    expect(Number(planMark(sheet))).toBeGreaterThanOrEqual(since);
    expect(isNewer(sheet)).toBe(false);
  });

  it("goes by the mark alone, whatever else stands on the sheet", () => {
    for (const [mark, newer] of [
      [planVersion, false],
      [planVersion + 1, true],
    ] as const)
      expect(isNewer(handSheet({ [batchMark]: mark, batch_name: "A" }))).toBe(newer);
  });
});
