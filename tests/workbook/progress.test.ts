import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { groupsOf, Stopped, throughGroups, type Progress } from "../../src/workbook/grid/write/progress";

describe("grouping", () => {
  it("keeps order and everything, and never puts two things over the weight together", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 })), fc.integer({ min: 1, max: 40 }), (weights, most) => {
        const groups = groupsOf(weights, (weight) => weight, most);
        expect(groups.flat()).toEqual(weights);
        for (const group of groups) if (group.length > 1) expect(group.reduce((sum, weight) => sum + weight, 0)).toBeLessThanOrEqual(most);
        // Two neighbouring groups would not fit into one: no round trip is wasted.
        groups
          .slice(1)
          .forEach((group, index) =>
            expect([...(groups[index] ?? []), group[0] ?? 0].reduce((sum, weight) => sum + weight, 0)).toBeGreaterThan(most),
          );
      }),
    );
  });
});

describe("going through groups", () => {
  const groups = [[1, 2], [3], [4, 5, 6]];

  it("tells how far it is before each group and at the end", async () => {
    const told: Progress[] = [];
    const seen: number[] = [];
    await throughGroups(groups, "sheet", { onProgress: (progress) => told.push(progress) }, async (group) => void seen.push(...group));
    expect(seen).toEqual([1, 2, 3, 4, 5, 6]);
    expect(told.map(({ done, total }) => `${done}/${total}`)).toEqual(["0/6", "2/6", "3/6", "6/6"]);
  });

  it("stops between two groups, never within one", async () => {
    const controller = new AbortController();
    const seen: number[] = [];
    const work = throughGroups(groups, "sheet", { signal: controller.signal }, async (group) => {
      controller.abort();
      await Promise.resolve();
      seen.push(...group);
    });
    await expect(work).rejects.toBeInstanceOf(Stopped);
    expect(seen).toEqual([1, 2]);
  });

  it("does nothing at all when it was stopped before it began", async () => {
    const seen: number[] = [];
    await expect(
      throughGroups(groups, "sheet", { signal: AbortSignal.abort() }, async (group) => void seen.push(...group)),
    ).rejects.toBeInstanceOf(Stopped);
    expect(seen).toEqual([]);
  });
});
