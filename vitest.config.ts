import { defineConfig } from "vitest/config";
import { slowestFirst } from "./tests/support/slowest-first.mjs";

/** Tests that have a folder for each kind; all others are of the project "unit", or of "built". */
const kinds = ["reference", "sheets", "browser", "samples"] as const;

/** In this order: first what takes minutes a file, so that a worker left alone at the end has only seconds to go. */
const order = ["browser", "samples", "sheets", "built", "unit", "reference"];

/** A page waits for timers, frames and answers a good part of its time: with a third file the two cores of a small machine are in use. */
const ofPages = { maxWorkers: 3, sequence: { groupOrder: 0 } };

/** Tests that look at dist/: whoever has changed a formula can do without them, and without a build, until `npm test`. */
const ofBuilt = [
  "tests/build/{functions-script,security,site}.test.ts",
  "tests/host/**/*.test.ts",
  "tests/manifest/**/*.test.ts",
  "tests/workbook/figures/**/*.test.ts",
];

/**
 * Two files at a time: Vitest alone takes all cores but one. Files leave nothing behind that another could stumble over, and so
 * share a process: a fresh one for each file would load the same sources, and the grid, two hundred times. A browser has a profile for
 * each test, and each server a port of its own. A workbook leaves much to be thrown away: more room for young objects spares a
 * fourteenth of the processor's time.
 */
const together = { isolate: false, maxWorkers: 2, sequence: { groupOrder: 1 }, execArgv: ["--max-semi-space-size=64"] };

export default defineConfig({
  // Where the times of the last runs are kept: not below node_modules, which `npm ci` empties.
  cacheDir: ".cache/vite",
  test: {
    setupFiles: ["tests/support/fixed-seed.ts"],
    sequence: { sequencer: slowestFirst(order) },
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: [...kinds.map((kind) => `tests/${kind}/**`), ...ofBuilt],
          testTimeout: 60_000,
          ...together,
        },
      },
      // Microsoft's runtime takes over its surroundings.
      { extends: true, test: { name: "built", include: ofBuilt, testTimeout: 60_000, ...together, isolate: true } },
      ...kinds.map((kind) => ({
        extends: true as const,
        test: {
          name: kind,
          include: [`tests/${kind}/**/*.test.{ts,tsx}`],
          testTimeout: 300_000,
          hookTimeout: 300_000,
          ...together,
          ...(kind === "browser" ? ofPages : {}),
        },
      })),
    ],
  },
});
