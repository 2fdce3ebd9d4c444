// @ts-check
// `npm run guide`: takes the guide's pictures anew, by the steps that the tests walk, and builds the pages that show them.
// Needs a build and a browser.
import { run, runTypeScript } from "./run.mjs";

const taken = await run(
  process.execPath,
  ["node_modules/vitest/vitest.mjs", "run", "--project", "browser", "tests/browser/guide.test.ts"],
  { env: { GYLEBOOK_GUIDE: "keep" } },
);
process.exitCode = taken !== 0 ? taken : await runTypeScript("src/build/build.ts", "--only", "addin");
