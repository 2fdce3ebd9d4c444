// @ts-check
// `npm test`: everything, in the order in which a mistake is cheapest to find. Stops at the first step that fails.
// The last line is always "N passed, N failed", for whoever runs this unattended.
import { existsSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { ensureInstalled } from "./install.mjs";
import { npm, root, run } from "./run.mjs";
import { ensurePrograms } from "./test-programs.mjs";

const report = ".cache/vitest.json";
const script = (/** @type {string[]} */ ...args) => npm(["run", "--silent", ...args]);

/** @type {readonly [string, () => Promise<boolean>][]} */
const steps = [
  ["install", () => ensureInstalled(root)],
  ["programs", ensurePrograms],
  ["lint", async () => (await script("lint")) === 0],
  ["typecheck", async () => (await script("typecheck")) === 0],
  ["generate --check", async () => (await script("generate", "--", "--check")) === 0],
  ["build", async () => (await script("build")) === 0],
  ["tests", async () => (await run(process.execPath, ["node_modules/vitest/vitest.mjs", "run", "--reporter=default", "--reporter=json", `--outputFile.json=${report}`])) === 0],
];

rmSync(path.join(root, report), { force: true });
for (const [name, step] of steps) {
  console.log(`\n== ${name}`);
  if (await step()) continue;
  console.log(`\nStopped at: ${name}`);
  const { passed, failed } = existsSync(path.join(root, report)) ? counts() : { passed: 0, failed: 0 };
  // A step that failed before or beside the single tests counts as one failure: nobody is to read "0 failed".
  console.log(`${passed} passed, ${Math.max(1, failed)} failed`);
  process.exit(1);
}
console.log(`\n== check values behind each function (tests/reference/README.md)\n\n${checkValues()}`);
const { passed, failed } = counts();
console.log(`\n${passed} passed, ${failed} failed`);

/** Vitest's own count. */
function counts() {
  const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(path.join(root, report), "utf8"));
  return { passed: Number(numPassedTests), failed: Number(numFailedTests) };
}

/** The first table of that page; `generate --check` has seen to it that it is today's. */
function checkValues() {
  const page = readFileSync(path.join(root, "tests/reference/README.md"), "utf8");
  return page.split("\n\n").find((paragraph) => paragraph.startsWith("|"));
}
