import { defineConfig } from "vitest/config";
import { mutantsPlugin } from "./core-mutants";

/** `npm run mutate`: not part of `npm test`, since it takes minutes and judges the tests, not the code. */
export default defineConfig({
  plugins: [mutantsPlugin],
  resolve: { alias: [{ find: /^vitest$/, replacement: new URL("collect.ts", import.meta.url).pathname }] },
  test: {
    globals: true,
    setupFiles: ["tests/support/fixed-seed.ts"],
    include: ["tests/mutate/*.mutate.ts"],
    testTimeout: 3_600_000,
    reporters: ["verbose"],
  },
});
