// @ts-check
// The bench's engine without a page, for Node: tests, and the cached values of the sample workbooks.
import fastProperties from "../../excel-stand-in/engine/fast-properties-loader.cjs";
import { commonConfig, fromRoot } from "./common.js";

/** @returns {import("webpack").Configuration} */
export function headlessConfig() {
  const config = commonConfig("headless");
  return {
    ...config,
    target: "node20",
    entry: { headless: "./src/excel-stand-in/headless.ts" },
    output: { path: fromRoot("dist"), filename: "[name].cjs", library: { type: "commonjs2" } },
    module: { rules: [...config.module.rules, fastProperties.rule] },
    // Without a page there is no drawing engine, and so no hyphenation to look for.
    plugins: [new fastProperties.CheckPlugin({ hyphenation: false })],
    // Not minified: a stack trace from a test should be readable.
    optimization: { minimize: false, splitChunks: false },
  };
}
