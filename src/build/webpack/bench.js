// @ts-check
// The local page for people without Excel: grid, formula engine, and the stand-in for Office.js.
import HtmlWebpackPlugin from "html-webpack-plugin";
import MiniCssExtractPlugin from "mini-css-extract-plugin";
import fastProperties from "../../excel-stand-in/engine/fast-properties-loader.cjs";
import { policies } from "../policies.mjs";
import { commonConfig, fromRoot } from "./common.js";

/** @returns {import("webpack").Configuration} */
export function benchConfig() {
  const config = commonConfig("bench");
  return {
    ...config,
    target: ["web", "es2022"],
    entry: { bench: "./src/bench/page/main.ts", "office-stand-in": "./src/bench/page/office-stand-in.ts" },
    output: {
      path: fromRoot("dist/bench"),
      filename: "[name].js",
      chunkFilename: "parts/[name].[contenthash:10].js",
      assetModuleFilename: "[name][ext]",
      publicPath: "auto",
    },
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
      new MiniCssExtractPlugin({ filename: "[name].css", chunkFilename: "parts/[name].[contenthash:10].css", ignoreOrder: true }),
      new HtmlWebpackPlugin({
        filename: "index.html",
        chunks: ["bench"],
        scriptLoading: "defer",
        template: fromRoot("src/bench/page/index.html"),
        templateParameters: { policy: policies.bench },
      }),
    ],
  };
}
