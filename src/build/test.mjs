// @ts-check
// `npm test`: everything, in the order in which a mistake is cheapest to find; `npm run test:quick`: what needs neither a build
// nor a browser, with a quarter of the made-up inputs. What hangs on nothing else runs side by side. Stops after the first
// steps that fail. The last line is always "N passed, N failed", with ", N skipped" where a program was missing, for whoever
// runs this unattended.
import { existsSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { ensureInstalled } from "./install.mjs";
import { npm, root, run, stopAll, whenStopped } from "./run.mjs";
import { ensurePrograms } from "./test-programs.mjs";

const quick = process.argv.includes("--quick");
const report = ".cache/vitest.json";

/** @typedef {((words: string) => void) | undefined} Hear takes what a step says; without it, the step speaks for itself */
/** @typedef {readonly [name: string, step: (hear: Hear) => Promise<boolean>]} Step */

/** @type {(name: string, ...args: string[]) => Step} */
const script = (name, ...args) => [
  [name, ...args].join(" "),
  async (hear) => (await npm(["run", "--silent", name, ...(args.length > 0 ? ["--", ...args] : [])], { hear })) === 0,
];

/** @type {(env: Record<string, string>, ...projects: string[]) => Step} */
const tests = (env, ...projects) => [
  "tests",
  async (hear) => {
    const only = projects.flatMap((project) => ["--project", project]);
    return (
      (await run(
        process.execPath,
        ["node_modules/vitest/vitest.mjs", "run", ...only, "--reporter=default", "--reporter=json", `--outputFile.json=${report}`],
        { env, hear },
      )) === 0
    );
  },
];

/** The steps of a stage run side by side. @type {readonly (readonly Step[])[]} */
const stages = quick
  ? [
      [["install", () => ensureInstalled(root)]],
      [script("lint"), script("typecheck"), script("generate", "--check")],
      [tests({ GYLEBOOK_DRAWN: "0.25" }, "unit", "reference")],
    ]
  : [
      [["install", () => ensureInstalled(root)]],
      [["programs", ensurePrograms]],
      [script("lint"), script("typecheck"), script("generate", "--check"), script("build")],
      [tests({})],
    ];

whenStopped(async () => {
  await stopAll();
  console.log("\nStopped.\n0 passed, 1 failed");
  process.exit(1);
});

rmSync(path.join(root, report), { force: true });
for (const stage of stages) {
  console.log(`\n== ${stage.map(([name]) => name).join(", ")}`);
  const failed = await stageFailures(stage);
  if (failed.length === 0) continue;
  console.log(`\nStopped at: ${failed.join(", ")}`);
  const counted = existsSync(path.join(root, report)) ? counts() : { passed: 0, failed: 0, skipped: [] };
  // A step that failed before or beside the single tests counts as a failure: nobody is to read "0 failed".
  printCounts({ ...counted, failed: Math.max(failed.length, counted.failed) });
  process.exit(1);
}
if (!quick) console.log(`\n== check values behind each function (tests/reference/README.md)\n\n${checkValues()}`);
printCounts(counts());

/**
 * Runs the steps of a stage and prints how long each took, with its words where several speak at the same time.
 * @param {readonly Step[]} stage
 * @returns {Promise<string[]>} the names of those that failed
 */
async function stageFailures(stage) {
  /** @type {string[]} */
  const failed = [];
  await Promise.all(
    stage.map(async ([name, step]) => {
      const started = performance.now();
      let said = "";
      const passed = await step(stage.length > 1 ? (words) => (said += words) : undefined);
      if (!passed) failed.push(name);
      console.log(
        `${said.trim() === "" ? "" : `${said.trimEnd()}\n`}-- ${name}: ${passed ? "passed" : "failed"} after ${((performance.now() - started) / 1000).toFixed(1)} s`,
      );
    }),
  );
  return failed;
}

/** Vitest's own count, and the files with tests that were skipped. */
function counts() {
  const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(path.join(root, report), "utf8"));
  /** @type {{ file: string, count: number }[]} */
  const skipped = testResults
    .map((/** @type {{ name: string, assertionResults: { status: string }[] }} */ { name, assertionResults }) => ({
      file: path.relative(root, name).split(path.sep).join("/"),
      count: assertionResults.filter(({ status }) => status !== "passed" && status !== "failed").length,
    }))
    .filter((/** @type {{ count: number }} */ { count }) => count > 0);
  return { passed: Number(numPassedTests), failed: Number(numFailedTests), skipped };
}

/** @param {ReturnType<typeof counts>} counted */
function printCounts({ passed, failed, skipped }) {
  for (const { file, count } of skipped) console.log(`skipped: ${count} in ${file}`);
  const all = skipped.reduce((sum, { count }) => sum + count, 0);
  console.log(`\n${passed} passed, ${failed} failed${all > 0 ? `, ${all} skipped` : ""}`);
}

/** The first table of that page; `generate --check` has seen to it that it is today's. */
function checkValues() {
  const page = readFileSync(path.join(root, "tests/reference/README.md"), "utf8");
  return page.split("\n\n").find((paragraph) => paragraph.startsWith("|"));
}
