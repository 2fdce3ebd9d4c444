import { defineConfig } from "vitest/config";

/** One project for each kind of test; the slow ones come last, and one file at a time where they start a program. */
const kinds = ["reference", "sheets", "browser", "samples"] as const;
const startsPrograms: readonly string[] = ["browser", "samples"];

/** Tests that look at dist/: whoever has changed a formula can do without them, and without a build, until `npm test`. */
const ofBuilt = ["tests/build/{functions-script,security,site}.test.ts", "tests/host/**/*.test.ts", "tests/manifest/**/*.test.ts", "tests/workbook/figures/**/*.test.ts"];

/**
 * Vitest alone takes all cores but one. Files of these kinds leave nothing behind that another could stumble over, and so share a
 * process: a fresh one for each file would load the same sources two hundred times, for half of the time that they take.
 */
const maxWorkers = 2;
const together = { isolate: false, maxWorkers };

export default defineConfig({
  test: {
    setupFiles: ["tests/support/fixed-seed.ts"],
    projects: [
      {
        extends: true,
        test: { name: "unit", include: ["tests/**/*.test.{ts,tsx}"], exclude: [...kinds.map((kind) => `tests/${kind}/**`), ...ofBuilt], testTimeout: 60_000, ...together },
      },
      { extends: true, test: { name: "built", include: ofBuilt, testTimeout: 60_000, maxWorkers } },
      ...kinds.map((kind, index) => ({
        extends: true as const,
        test: {
          name: kind,
          include: [`tests/${kind}/**/*.test.{ts,tsx}`],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          ...(kind === "reference" ? together : startsPrograms.includes(kind) ? { fileParallelism: false, sequence: { groupOrder: index + 1 } } : { maxWorkers }),
        },
      })),
    ],
  },
});
