import { afterEach, expect, it, vi } from "vitest";
import { refreshNow, seasonState } from "../../src/pane/season/follow-season";

afterEach(() => vi.unstubAllGlobals());

it("the season is looked at once at a time, and what is said is the newest look's", async () => {
  let [open, most, calls] = [0, 0, 0];
  vi.stubGlobal("Excel", {
    run: async () => {
      calls += 1;
      const batches = calls;
      open += 1;
      most = Math.max(most, open);
      // The first answer takes the longest.
      await new Promise((resolve) => setTimeout(resolve, 20 / calls));
      open -= 1;
      return { written: 0, batches };
    },
  });
  await Promise.all([refreshNow(), refreshNow(), refreshNow()]);
  expect([calls, most]).toEqual([3, 1]);
  expect(seasonState()).toMatchObject({ kind: "there", report: { batches: 3 } });
});
