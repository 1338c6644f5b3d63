import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Resvg } from "@resvg/resvg-js";
import type { Compiler, default as webpackModule } from "webpack";

const DRAWING = fileURLToPath(new URL("../icons/icon.svg", import.meta.url));

/** Edges in pixels: what Office asks for, and a large one for pages kept on a home screen. */
const SIZES = [16, 32, 64, 80, 128];

/** Draws the icon in each size into `icons/`. */
export function icons(webpack: typeof webpackModule) {
  return (compiler: Compiler) => {
    compiler.hooks.thisCompilation.tap("Icons", (compilation) => {
      compilation.fileDependencies.add(DRAWING);
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tap({ name: "Icons", stage }, () => {
        const drawing = readFileSync(DRAWING, "utf8");
        for (const size of SIZES) {
          const image = new Resvg(drawing, { fitTo: { mode: "width", value: size } }).render().asPng();
          compilation.emitAsset(`icons/icon-${size}.png`, new webpack.sources.RawSource(Buffer.from(image)));
        }
      });
    });
  };
}
