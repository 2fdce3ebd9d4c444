import { existsSync, mkdirSync, readFileSync, readdirSync, renameSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, type Plugin } from "esbuild";
import type * as Headless from "../../src/bench/headless";

const root = join(dirname(fileURLToPath(import.meta.url)), "../..");
const bundle = join(root, "dist/headless.cjs");
const require = createRequire(import.meta.url);

/** The headless bench as one CommonJS file: the grid's packages cannot be imported by Node as they are published. */
export async function loadHeadlessBench(): Promise<typeof Headless> {
  if (isStale()) await bundleHeadlessBench();
  return require(bundle) as typeof Headless;
}

function isStale(): boolean {
  if (!existsSync(bundle)) return true;
  const built = statSync(bundle).mtimeMs;
  const sources = readdirSync(join(root, "src"), { recursive: true, withFileTypes: true });
  return sources.some((file) => file.isFile() && statSync(join(file.parentPath, file.name)).mtimeMs > built);
}

async function bundleHeadlessBench(): Promise<void> {
  mkdirSync(dirname(bundle), { recursive: true });
  const unfinished = `${bundle}.${process.pid}`;
  await build({
    entryPoints: [join(root, "src/bench/headless.ts")],
    outfile: unfinished, bundle: true, platform: "node", format: "cjs", logLevel: "error",
    define: { "process.env.NODE_ENV": '"production"' }, mainFields: ["module", "main"], plugins: [fastProperties],
  });
  // Test files run side by side: one that finds a finished bundle must never read half of another.
  renameSync(unfinished, bundle);
}

const loader = require("../../src/bench/engine/fast-properties-loader.cjs") as {
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
