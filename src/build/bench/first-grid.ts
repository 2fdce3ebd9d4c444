import path from "node:path";
import sirv from "sirv";
import { root } from "../run.mjs";
import type { BenchRow } from "./row";
import { askUnwatchedBench, patienceMs } from "./unwatched-page";

const limitMs = 2000;

/** From navigation to the first drawn grid. It is looked at, not yet used: see `paneAnswers`. */
export const firstGrid: BenchRow = {
  what: "bench: first grid drawn after navigation, sample batch on it",
  target: `under ${limitMs / 1000} s on two cores`,
  measure: async () => {
    const files = sirv(path.join(root, "dist"), { dev: true });
    const ms = await askUnwatchedBench(files, () => performance.getEntriesByName("bench-grid")[0]?.startTime);
    if (ms === undefined) return { measured: `not within ${patienceMs / 1000} s, or no Chromium found` };
    return { measured: `${(ms / 1000).toFixed(2)} s`, met: ms < limitMs };
  },
};
