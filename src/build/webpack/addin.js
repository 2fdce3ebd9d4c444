// @ts-check
// What Excel loads: functions.js (classic and synchronous, so that the functions are registered before Excel asks for
// them) and the task pane. The bench gets a page of its own with the very same two bundles and another office.js.
import path from "node:path";
import HtmlWebpackPlugin from "html-webpack-plugin";
import MiniCssExtractPlugin from "mini-css-extract-plugin";
import { policies } from "../policies.mjs";
import { commonConfig, fromRoot, minimizer } from "./common.js";

const microsoftOfficeJs = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

/** The worksheet functions, whose descriptions come without their words. @returns {import("webpack").Configuration} */
export function functionsConfig() {
  const config = commonConfig("functions");
  return {
    ...config,
    target: ["web", "es2022"],
    entry: { functions: "./src/addin/functions.ts" },
    // In a module esbuild sees what nobody uses any more, the constants of what was cut among it; of the rest it makes a script.
    output: { path: fromRoot("dist"), filename: "[name].js", module: true },
    experiments: { outputModule: true },
    module: {
      rules: [
        ...config.module.rules,
        {
          test: /\.ts$/,
          include: fromRoot("src/functions"),
          enforce: "pre",
          loader: fromRoot("src/build/webpack/without-words-loader.mjs"),
        },
      ],
    },
    optimization: { ...config.optimization, minimizer: [minimizer({ format: "iife", treeShaking: true, banner: '"use strict";' })] },
  };
}

/** @returns {import("webpack").Configuration} */
export function paneConfig() {
  const config = commonConfig("addin");
  return {
    ...config,
    target: ["web", "es2022"],
    entry: { taskpane: "./src/addin/taskpane.ts" },
    // What a screen loads on demand lies beside the bundle that asks for it, under whatever address that was loaded from. Its
    // name follows from its content: a browser never takes last month's screen for this month's pane.
    output: { path: fromRoot("dist"), filename: "[name].js", chunkFilename: "pane/[name].[contenthash:10].js", publicPath: "auto" },
    module: {
      rules: [...config.module.rules, { test: /\.css$/, use: [MiniCssExtractPlugin.loader, "css-loader"] }],
    },
    // What several screens need is fetched once, not with each of them. The script of the page stays whole.
    optimization: { ...config.optimization, splitChunks: { chunks: "async" } },
    plugins: [
      new MiniCssExtractPlugin({ filename: "[name].css", chunkFilename: "pane/[name].[contenthash:10].css" }),
      page("taskpane.html", { officeJs: microsoftOfficeJs, base: "", policy: policies.pane }),
      page("bench/taskpane.html", { officeJs: "office-stand-in.js", base: "../", policy: policies.benchPane }),
    ],
  };
}

/**
 * @param {string} filename
 * @param {{ officeJs: string, base: string, policy: string }} values `base`: the way from the page to the bundles
 */
function page(filename, values) {
  return new HtmlWebpackPlugin({
    filename,
    template: fromRoot("src/addin/taskpane.html"),
    inject: false,
    minify: false,
    chunks: ["taskpane"],
    templateParameters: (_, assets) => ({ ...values, styles: assets.css.map((file) => path.posix.basename(file)) }),
  });
}
