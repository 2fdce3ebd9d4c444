// @ts-check
// The local page for people without Excel: grid, formula engine, and the stand-in for Office.js.
import { existsSync } from "node:fs";
import HtmlWebpackPlugin from "html-webpack-plugin";
import MiniCssExtractPlugin from "mini-css-extract-plugin";
import fastProperties from "../../bench/engine/fast-properties-loader.cjs";
import { commonConfig, fromRoot } from "./common.js";

const page = ["src/bench/page/main.ts", "src/bench/page/main.tsx"].find((file) => existsSync(fromRoot(file)));
const standIn = "src/bench/page/office-stand-in.ts";
const template = "src/bench/page/index.html";

/** @returns {import("webpack").Configuration | undefined} */
export function benchConfig() {
  if (page === undefined) return undefined;
  const config = commonConfig("bench");
  return {
    ...config,
    target: ["web", "es2022"],
    entry: { bench: `./${page}`, ...(existsSync(fromRoot(standIn)) ? { "office-stand-in": `./${standIn}` } : {}) },
    output: { path: fromRoot("dist/bench"), filename: "[name].js", chunkFilename: "[name].js", assetModuleFilename: "[name][ext]", publicPath: "" },
    module: {
      rules: [
        ...config.module.rules,
        fastProperties.rule,
        { test: /\.css$/, use: [MiniCssExtractPlugin.loader, "css-loader"] },
        { test: /\.(woff2?|ttf|svg|png)$/, type: "asset/resource" },
      ],
    },
    plugins: [
      new fastProperties.CheckPlugin(),
      new MiniCssExtractPlugin({ filename: "[name].css", ignoreOrder: true }),
      new HtmlWebpackPlugin({ filename: "index.html", chunks: ["bench"], scriptLoading: "defer", title: "Gylebook bench", ...(existsSync(fromRoot(template)) ? { template: fromRoot(template) } : {}) }),
    ],
  };
}
