import { describe, expect, it } from "vitest";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { paperGrid } from "../support/paper-grid";

/** What the sheet says of a log, as days after the brew day. */
function said(rows: readonly (readonly [number, number])[], dryHopped?: number) {
  const batch = firstExtractBatch();
  const [model] = batch.readings;
  const day = batch.brewedOn;
  const plan = planBatch({
    ...batch,
    dryHoppedOn: dryHopped === undefined ? "" : day + dryHopped,
    readings: rows.map(([at, reading]) => ({ ...model!, when: day + at, reading })),
  } as typeof batch);
  const grid = paperGrid(plan);
  const at = (name: string) => grid.at(plan.names.find((one) => one.name === name)!.range.replaceAll("$", ""));
  return { verdict: at("verdict"), next: String(at("next_step")), again: Number(at("next_reading")) - day, end: at("end_expected") };
}

describe("section 7", () => {
  it("does not call a beer at work that has not begun to fall", () => {
    expect(said([[2, 1.052]])).toMatchObject({ verdict: "working", next: expect.stringMatching(/^Not falling yet/) });
    expect(said([[2, 1.03]])).toMatchObject({ verdict: "working", next: "Working: leave the lid closed." });
  });

  it("does not make a slow fall steady by a dry-hop date, and names no time that does not count", () => {
    const slow = [1.016, 1.016, 1.015, 1.015, 1.014, 1.014, 1.013, 1.013].map((gravity, index) => [index + 4.75, gravity] as const);
    expect(said(slow).verdict).toBe("nearly");
    for (const hops of [8, 8.5, 9, 9.5, 10, 11]) {
      const { verdict, again, end, next } = said(slow, hops);
      expect(["nearly", "working"]).toContain(verdict);
      expect(again).toBeGreaterThanOrEqual(Math.max(12.75, (Number.isInteger(hops) ? hops + 1 : hops) + 1));
      expect(end).toBe("");
      expect(next).toMatch(/^Dry hops/);
    }
    expect(said(slow.slice(0, 8), 11).again).toBe(13);
    expect(
      said(
        [
          [8, 1.012],
          [9, 1.012],
          [13, 1.012],
          [14, 1.012],
        ],
        11,
      ).verdict,
    ).toBe("steady");
  });
});
