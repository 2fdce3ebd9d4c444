// `npm run build`: everything under dist/.
//   -- --only addin|bench|headless   one set of bundles
//   -- --base https://example.org/   the address that manifest.xml is to point at, instead of https://localhost:3000/
import { rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import webpack from "webpack";
import { parts } from "../../webpack.config.js";
import { writeAddinFiles } from "./addin-files";
import { root } from "./run.mjs";
import { copySamples } from "./sample-files";
import { builtMark } from "./stale.mjs";

type Part = keyof typeof parts;

const { values: options } = parseArgs({ options: { only: { type: "string" }, base: { type: "string" } } });
const isPart = (name: string): name is Part => name in parts;
if (options.only !== undefined && !isPart(options.only)) fail(`there is no part "${options.only}": choose one of ${Object.keys(parts).join(", ")}`);
const wanted = options.only === undefined ? (Object.keys(parts) as Part[]) : [options.only];

const mark = path.join(root, builtMark);
if (options.only === undefined) rmSync(mark, { force: true });
for (const part of wanted) await build(part);
if (options.only === undefined) writeFileSync(mark, "");

async function build(part: Part): Promise<void> {
  const started = Date.now();
  await bundle(parts[part]);
  if (part === "addin") writeAddinFiles(options.base);
  if (part === "bench") copySamples();
  console.log(`${part}: built in ${((Date.now() - started) / 1000).toFixed(1)} s`);
}

function bundle(config: webpack.Configuration): Promise<void> {
  const compiler = webpack(config);
  return new Promise((resolve) => {
    compiler.run((problem, stats) => {
      if (problem) fail(problem.message);
      if (stats?.hasWarnings() || stats?.hasErrors()) console.error(stats.toString({ preset: "errors-warnings", colors: process.stderr.isTTY }));
      if (stats?.hasErrors()) fail(`${config.name}: the bundle could not be made`);
      compiler.close(() => resolve());
    });
  });
}

function fail(message: string): never {
  console.error(message);
  process.exit(1);
}
