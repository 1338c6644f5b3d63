import type { Compiler, default as webpackModule } from "webpack";
import { functionDocs } from "./functionDocs";
import { inOrder } from "./order";

type Webpack = typeof webpackModule;

/**
 * Finishes functions.json after the metadata plugin: the functions stand in the order in which a spreadsheet should
 * offer them, each gets the address of its help page, and error cells are let through to the functions (without that
 * flag one error in a range would make the whole answer an error). The metadata plugin knows no tag for any of it.
 */
export function finishMetadata(webpack: Webpack, address: string) {
  return (compiler: Compiler) => {
    compiler.hooks.compilation.tap("FinishMetadata", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_DERIVED;
      compilation.hooks.processAssets.tap({ name: "FinishMetadata", stage }, () => {
        const asset = compilation.getAsset("functions.json");
        if (!asset) return;
        const metadata = JSON.parse(asset.source.source().toString()) as { functions: { id: string }[] };
        const parts = new Map(functionDocs().map(({ id, part }) => [id, part]));
        const ordered = inOrder(metadata.functions.map((one) => ({ one, id: one.id, part: parts.get(one.id) ?? "" })));
        const finished = {
          allowErrorForDataTypeAny: true,
          ...metadata,
          functions: ordered.map(({ one }) => ({ ...one, helpUrl: `${address}/help/${one.id}.html` })),
        };
        compilation.updateAsset("functions.json", new webpack.sources.RawSource(JSON.stringify(finished, null, 2)));
      });
    });
  };
}
