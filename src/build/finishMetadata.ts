import type { Compiler, default as webpackModule } from "webpack";

type Webpack = typeof webpackModule;

/**
 * Finishes functions.json after the metadata plugin: each function gets the address of its help page, and error
 * cells are let through to the functions (without that flag one error in a range would make the whole answer an
 * error). The metadata plugin knows no tag for either.
 */
export function finishMetadata(webpack: Webpack, address: string) {
  return (compiler: Compiler) => {
    compiler.hooks.compilation.tap("FinishMetadata", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_DERIVED;
      compilation.hooks.processAssets.tap({ name: "FinishMetadata", stage }, () => {
        const asset = compilation.getAsset("functions.json");
        if (!asset) return;
        const metadata = JSON.parse(asset.source.source().toString()) as { functions: { id: string }[] };
        const finished = {
          allowErrorForDataTypeAny: true,
          ...metadata,
          functions: metadata.functions.map((one) => ({ ...one, helpUrl: `${address}/help/${one.id}.html` })),
        };
        compilation.updateAsset("functions.json", new webpack.sources.RawSource(JSON.stringify(finished, null, 2)));
      });
    });
  };
}
