import { defineConfig } from "vitest/config";

/** One project for each kind of test: first those in which a mistake is cheap to find, last those that start programs. */
const kinds = ["reference", "sheets", "browser", "samples"] as const;
const startsPrograms: readonly string[] = ["browser", "samples"];

/** Tests that look at dist/: whoever has changed a formula can do without them, and without a build, until `npm test`. */
const ofBuilt = [
  "tests/build/{functions-script,security,site}.test.ts",
  "tests/host/**/*.test.ts",
  "tests/manifest/**/*.test.ts",
  "tests/workbook/figures/**/*.test.ts",
];

/**
 * Two files at a time: Vitest alone takes all cores but one. Files leave nothing behind that another could stumble over, and so
 * share a process: a fresh one for each file would load the same sources, and the grid, two hundred times. A browser and LibreOffice
 * have a profile for each test, and each server a port of its own.
 */
const together = { isolate: false, maxWorkers: 2 };

export default defineConfig({
  test: {
    setupFiles: ["tests/support/fixed-seed.ts"],
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
          testTimeout: 120_000,
          hookTimeout: 120_000,
          ...together,
          ...(startsPrograms.includes(kind) ? { sequence: { groupOrder: 1 } } : {}),
        },
      })),
    ],
  },
});
