import { readdirSync } from "node:fs";
import CopyPlugin from "copy-webpack-plugin";
import CustomFunctionsMetadataPlugin from "custom-functions-metadata-plugin";
import MiniCssExtractPlugin from "mini-css-extract-plugin";
import webpack from "webpack";
import { finishMetadata } from "./src/build/finishMetadata.ts";
import { helpPages } from "./src/build/helpPages.ts";

const HOME = "https://localhost:3000";

/** The files that declare spreadsheet functions: every file of src/functions but the one that reads cells. */
const functionFiles = readdirSync(new URL("src/functions", import.meta.url))
  .filter((name) => name.endsWith(".ts") && name !== "cells.ts")
  .map((name) => `./src/functions/${name}`);

/** @param {{ address?: string }} env */
export default (env = {}) => {
  const address = (env.address ?? HOME).replace(/\/+$/, "");
  if (!/^https:\/\/[^/]+/.test(address)) throw new Error(`address: ${address} must begin with https://`);

  const common = {
    mode: "production",
    devtool: false,
    module: {
      rules: [
        { test: /\.tsx?$/, loader: "ts-loader", options: { transpileOnly: true } },
        { test: /\.css$/, use: [MiniCssExtractPlugin.loader, "css-loader"] },
      ],
    },
    resolve: { extensions: [".tsx", ".ts", ".js"] },
    performance: false,
  };

  return [
    {
      ...common,
      name: "functions",
      entry: { functions: functionFiles },
      output: { clean: true },
      plugins: [
        new CustomFunctionsMetadataPlugin({ output: "functions.json", input: functionFiles }),
        finishMetadata(webpack, address),
        helpPages(webpack),
        new CopyPlugin({
          patterns: [
            {
              from: "manifest.xml",
              transform: (text) => text.toString().replaceAll(HOME, address),
            },
          ],
        }),
      ],
    },
  ];
};
