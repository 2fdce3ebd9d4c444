import { createRequire } from "node:module";
import path from "node:path";
import type * as Headless from "../../excel-stand-in/headless";
import { openBench } from "../make-sample";
import { root } from "../run.mjs";

/** Work on a headless bench of its own. */
export async function withBench<T>(work: (bench: Headless.HeadlessBench) => Promise<T>): Promise<T> {
  const bench = openBench(createRequire(import.meta.url)(path.join(root, "dist/headless.cjs")) as typeof Headless);
  try {
    return await work(bench);
  } finally {
    bench.dispose();
  }
}
