// @ts-check
// What the three sets of bundles have in common.
import path from "node:path";
import { fileURLToPath } from "node:url";
import { EsbuildPlugin } from "esbuild-loader";

export const root = fileURLToPath(new URL("../../../", import.meta.url));
export const fromRoot = (/** @type {string[]} */ ...parts) => path.join(root, ...parts);

/** Every browser that current Excel runs add-ins in (WebView2, Safari, the user's own) knows ES2022. */
const language = "es2022";

/**
 * @param {string} name
 * @returns {import("webpack").Configuration & { module: { rules: import("webpack").RuleSetRule[] } }}
 */
export function commonConfig(name) {
  return {
    name,
    context: root,
    mode: "production",
    devtool: false,
    // One folder for each set: a change in one does not throw away what is known about the others.
    cache: {
      type: "filesystem",
      name,
      cacheDirectory: fromRoot(".cache/webpack"),
      buildDependencies: { config: [fromRoot("src/build/webpack/")] },
    },
    resolve: { extensions: [".ts", ".tsx", ".js", ".mjs"] },
    module: {
      rules: [
        {
          test: /\.tsx?$/,
          include: fromRoot("src"),
          loader: "esbuild-loader",
          options: { target: language, tsconfig: fromRoot("tsconfig.json") },
        },
        // Some published modules leave the ending off their own imports although they say "type": "module".
        { test: /\.m?js$/, resolve: { fullySpecified: false } },
      ],
    },
    optimization: {
      minimizer: [minimizer()],
      splitChunks: false,
      runtimeChunk: false,
    },
    // The size of the bundles is held by `npm run bench`, against the targets that we set ourselves.
    performance: { hints: false },
    stats: "errors-warnings",
  };
}

/**
 * Without a format esbuild leaves webpack's own wrapping alone. Told to make a script of it, it takes a bundle that
 * mentions `exports` for a CommonJS module and wraps it once more, and the browser then reads 7 MB twice: 0.9 s.
 *
 * @param {{ format?: "iife", treeShaking?: boolean, banner?: string }} options
 */
export const minimizer = (options = {}) =>
  new EsbuildPlugin({ target: language, css: true, legalComments: "none", format: undefined, ...options });
