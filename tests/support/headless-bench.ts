import { existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, statSync, utimesSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, type Plugin } from "esbuild";
import type * as Headless from "../../src/excel-stand-in/headless";

const root = join(dirname(fileURLToPath(import.meta.url)), "../..");
const bundle = join(root, "dist/headless.cjs");
const require = createRequire(import.meta.url);

/** The headless bench as one CommonJS file: the grid's packages cannot be imported by Node as they are published. */
export async function loadHeadlessBench(): Promise<typeof Headless> {
  while (isStale()) await bundleOnce();
  return require(bundle) as typeof Headless;
}

/** Test files run side by side: one bundles, the others wait for it. A lock left behind by a stopped run grows old. */
async function bundleOnce(): Promise<void> {
  mkdirSync(dirname(bundle), { recursive: true });
  const lock = `${bundle}.lock`;
  if (existsSync(lock) && Date.now() - statSync(lock).mtimeMs > 120_000) rmSync(lock, { recursive: true });
  try {
    mkdirSync(lock);
  } catch {
    await new Promise((resolve) => setTimeout(resolve, 200));
    return;
  }
  try {
    await bundleHeadlessBench();
  } finally {
    rmSync(lock, { recursive: true });
  }
}

function isStale(): boolean {
  if (!existsSync(bundle)) return true;
  const built = statSync(bundle).mtimeMs;
  const sources = ["src/excel-stand-in/headless.ts", "src/excel-stand-in/bench-globals.ts", "src/excel-stand-in/computed.ts"].map((file) =>
    join(root, file),
  );
  for (const folder of [
    "src/excel-stand-in/engine",
    "src/excel-stand-in/excel",
    "src/excel-stand-in/xlsx",
    "src/excel-stand-in/xlsx/charts",
  ]) {
    sources.push(...readdirSync(join(root, folder)).map((file) => join(root, folder, file)));
  }
  return sources.some((file) => statSync(file).mtimeMs > built);
}

async function bundleHeadlessBench(): Promise<void> {
  const started = new Date();
  const unfinished = `${bundle}.${process.pid}`;
  await build({
    entryPoints: [join(root, "src/excel-stand-in/headless.ts")],
    outfile: unfinished,
    bundle: true,
    platform: "node",
    format: "cjs",
    logLevel: "error",
    define: { "process.env.NODE_ENV": '"production"' },
    mainFields: ["module", "main"],
    plugins: [fastProperties],
  });
  // Sources changed while bundling make the bundle stale again; and nobody must read half of one.
  utimesSync(unfinished, started, started);
  renameSync(unfinished, bundle);
}

const loader = require("../../src/excel-stand-in/engine/fast-properties-loader.cjs") as {
  FILES: RegExp;
  rewrite(source: string, path: string): string;
  complaint(options: { hyphenation: boolean }): string | undefined;
};

const fastProperties: Plugin = {
  name: "fast-properties",
  setup(build) {
    build.onLoad({ filter: loader.FILES }, ({ path }) => ({ contents: loader.rewrite(readFileSync(path, "utf8"), path), loader: "js" }));
    build.onEnd(() => {
      const problem = loader.complaint({ hyphenation: false });
      if (problem) throw new Error(problem);
    });
  },
};
