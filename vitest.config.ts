import { defineConfig } from "vitest/config";

/** One project for each kind of test; the slow ones come last, and one file at a time where they start a program. */
const kinds = ["reference", "sheets", "browser", "samples"] as const;
const startsPrograms: readonly string[] = ["browser", "samples"];

export default defineConfig({
  test: {
    setupFiles: ["tests/support/fixed-seed.ts"],
    projects: [
      { extends: true, test: { name: "unit", include: ["tests/**/*.test.{ts,tsx}"], exclude: kinds.map((kind) => `tests/${kind}/**`), testTimeout: 60_000 } },
      ...kinds.map((kind, index) => ({
        extends: true as const,
        test: {
          name: kind,
          include: [`tests/${kind}/**/*.test.{ts,tsx}`],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          ...(startsPrograms.includes(kind) ? { fileParallelism: false, sequence: { groupOrder: index + 1 } } : {}),
        },
      })),
    ],
  },
});
