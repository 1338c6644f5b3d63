import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import CopyPlugin from "copy-webpack-plugin";
import CustomFunctionsMetadataPlugin from "custom-functions-metadata-plugin";
import MiniCssExtractPlugin from "mini-css-extract-plugin";
import MinimizerPlugin from "minimizer-webpack-plugin";
import webpack from "webpack";
import { compressed } from "./src/build/compressed.ts";
import { eagerModules } from "./src/build/eagerModules.ts";
import { finishMetadata } from "./src/build/finishMetadata.ts";
import { helpPages } from "./src/build/helpPages.ts";
import { icons } from "./src/build/icons.ts";
import { leftOut } from "./src/build/leftOut.ts";
import { notices } from "./src/build/notices.ts";
import { sourcesHash, stamp } from "./src/build/stamp.ts";
import { wholeFiles } from "./src/build/wholeFiles.ts";
import { savedValues } from "./src/samples/file/savedValues.ts";

const HOME = "https://localhost:3000";

/** The files that declare spreadsheet functions: the files of src/functions; how they read cells stands in a folder. */
const functionFiles = readdirSync(new URL("src/functions", import.meta.url))
  .filter((name) => name.endsWith(".ts"))
  .map((name) => `./src/functions/${name}`);

/** One script that imports them all: so their modules become one, which is smaller and sooner read. */
const allFunctions = functionFiles.map(
  (file) => `import ${JSON.stringify(fileURLToPath(new URL(file, import.meta.url)))};`,
);

/** What of office.js Excel loads on Windows, on a Mac and on the web, as it comes: it must not be minified again. */
const officeFiles = [
  { from: "office.js" },
  // Outside Excel it looks here before it says that it is nowhere.
  { from: "o15apptofilemappingtable.js" },
  { from: "excel-{win32,mac,web}-16*.js" },
  { from: "*/office_strings.js" },
  { from: "telemetry/oteljs_agave.js" },
  { from: "ariatelemetry/aria-web-telemetry.js" },
  // office.js asks for it by this name, and not every server is blind to capitals.
  { context: "agaveerrorux", from: "**", to: "AgaveErrorUX" },
].map(({ context = "", from, to = "" }) => ({
  context: `node_modules/@microsoft/office-js/dist/${context}`,
  from,
  to: `office/${to}`,
  globOptions: { ignore: ["**/*.debug.js"] },
  info: { minimized: true },
}));

/** The workbook that newcomers see, whose values are known from its file. */
const DEMO = new URL("sample-workbooks/1-studio.xlsx", import.meta.url);

/** What the page loads at once beside its own script, each a file of its own; index.html names them too. */
const PARTS = [
  {
    name: "engine",
    where:
      /node_modules\/@univerjs\/(core|themes|engine-\w+|sheets|sheets-(formula|numfmt|table)|rpc|network|drawing)\//,
  },
  { name: "face", where: /node_modules/ },
];

/** Looks stay in one file: their order matters. @param {RegExp} where */
const isScriptOf =
  (where) =>
  (/** @type {any} */ { type, resource }) =>
    type.startsWith("javascript") && where.test(resource ?? "");

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
        // Only our own code says what loads later: what is put below in the place of a part left out needs no file.
        { include: /node_modules/, parser: { dynamicImportMode: "eager" } },
      ],
    },
    resolve: { extensions: [".tsx", ".ts", ".js"] },
    performance: false,
  };

  return [
    {
      ...common,
      name: "functions",
      entry: { functions: `data:text/javascript,${encodeURIComponent(allFunctions.join(""))}` },
      output: { clean: true },
      optimization: {
        minimizer: [
          new MinimizerPlugin({
            terserOptions: {
              module: true,
              // A function put in the place of its one call would be made anew for each cell: a third of its time.
              compress: { reduce_funcs: false, inline: 1, passes: 2, unsafe_arrows: true },
            },
          }),
        ],
      },
      plugins: [
        wholeFiles,
        new CustomFunctionsMetadataPlugin({ output: "functions.json", input: functionFiles }),
        finishMetadata(webpack, address),
        helpPages(webpack),
        icons(webpack),
        compressed(webpack),
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
    {
      ...common,
      name: "pages",
      // The first one empties dist before it writes.
      dependencies: ["functions"],
      entry: { tryout: "./src/tryout/tryout.ts", pane: "./src/excelpage/excelPage.ts" },
      // A browser that kept an older part asks for it anew: its address is another one.
      output: { chunkFilename: "[name].js?[contenthash:8]" },
      // Univer is large: webpack's own minimizer would take a minute for it.
      optimization: {
        minimizer: [new MinimizerPlugin({ minify: MinimizerPlugin.esbuildMinify })],
        // Several files of a like size are read at the same time.
        splitChunks: {
          cacheGroups: Object.fromEntries(
            PARTS.map(({ name, where }, i) => [
              name,
              {
                name,
                filename: "[name].js",
                chunks: ({ name }) => name === "tryout",
                test: isScriptOf(where),
                // The first one that fits takes a module.
                priority: PARTS.length - i,
                enforce: true,
              },
            ]),
          ),
        },
      },
      plugins: [
        wholeFiles,
        stamp(sourcesHash()),
        notices(webpack),
        eagerModules(webpack),
        compressed(webpack),
        ...leftOut(webpack),
        new webpack.DefinePlugin({ DEMO_VALUES: JSON.stringify(savedValues(DEMO)) }),
        new MiniCssExtractPlugin({ chunkFilename: "[name].css?[contenthash:8]" }),
        new CopyPlugin({
          patterns: [
            { from: "src/tryout/index.html" },
            { from: "src/excelpage/pane.html" },
            { from: "sample-workbooks", to: "samples" },
            ...officeFiles,
          ],
        }),
      ],
    },
  ];
};
