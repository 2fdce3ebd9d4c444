// `npm run build`: everything under dist/.
//   -- --only addin|bench|headless   one set of bundles
//   -- --debug                       scripts that can be read, with source maps; the next build is a usual one again
//   -- --base https://club.example/gylebook/   also dist/site, the folder to upload to that address
import { rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import webpack from "webpack";
import { parts } from "../../webpack.config.js";
import { developmentBase, writeAddinFiles } from "./addin-files";
import { baseAddress } from "./base-address";
import { root } from "./run.mjs";
import { copySamples } from "./sample-files";
import { makeSite } from "./site/make-site";
import { builtMark } from "./stale.mjs";

type Part = keyof typeof parts;
const chunks = { addin: "dist/pane", bench: "dist/bench/parts" };

const { values: options } = parseArgs({
  options: { only: { type: "string" }, base: { type: "string" }, debug: { type: "boolean", default: false } },
});
const isPart = (name: string): name is Part => name in parts;
if (options.only !== undefined && !isPart(options.only))
  fail(`there is no part "${options.only}": choose one of ${Object.keys(parts).join(", ")}`);
if (options.only !== undefined && options.base !== undefined) fail("--base makes the whole folder to upload: leave --only out");
if (options.debug && options.base !== undefined) fail("--debug is for your own computer, not for a site");
const base = options.base === undefined ? undefined : checked(options.base);
const wanted = options.only === undefined ? (Object.keys(parts) as Part[]) : [options.only];

const dist = path.join(root, "dist");
// A whole build begins with nothing, so that what an older one made is not uploaded with it.
if (options.only === undefined) rmSync(dist, { recursive: true, force: true });
for (const part of wanted) await build(part);
if (options.only === undefined && !options.debug) writeFileSync(path.join(root, builtMark), "");
if (base !== undefined) {
  makeSite(base, dist, path.join(dist, "site"));
  console.log(
    `dist/site is the folder to upload, so that ${base}taskpane.html leads to its taskpane.html. HEADERS.txt in it says what the server is to do.`,
  );
}

async function build(part: Part): Promise<void> {
  const started = Date.now();
  // Chunks have names that follow from their content: those of the last build would stay for ever.
  if (part !== "headless") rmSync(path.join(root, chunks[part]), { recursive: true, force: true });
  for (const config of parts[part]) await bundle(options.debug ? readable(config) : config);
  if (part === "addin") writeAddinFiles(dist, developmentBase);
  if (part === "bench") copySamples();
  console.log(`${part}: built in ${((Date.now() - started) / 1000).toFixed(1)} s`);
}

/** The same, for a developer's eyes. What is known from usual builds would not fit; and what is not minified is a script as it comes. */
function readable(config: webpack.Configuration): webpack.Configuration {
  const { output, optimization } = config;
  return {
    ...config,
    cache: false,
    devtool: "source-map",
    output: { ...output, module: false },
    optimization: { ...optimization, minimize: false },
  };
}

function bundle(config: webpack.Configuration): Promise<void> {
  const compiler = webpack(config);
  return new Promise((resolve) => {
    compiler.run((problem, stats) => {
      if (problem) fail(problem.message);
      if (stats?.hasWarnings() || stats?.hasErrors())
        console.error(stats.toString({ preset: "errors-warnings", colors: process.stderr.isTTY }));
      if (stats?.hasErrors()) fail(`${config.name}: the bundle could not be made`);
      compiler.close(() => resolve());
    });
  });
}

function checked(typed: string): string {
  const answer = baseAddress(typed);
  return "base" in answer ? answer.base : fail(answer.problem);
}

function fail(message: string): never {
  console.error(message);
  process.exit(1);
}
