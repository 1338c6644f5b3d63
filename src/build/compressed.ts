import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import type { Compiler, default as webpackModule } from "webpack";

/** Files that gain from it; pictures and workbooks are compressed already. */
const TEXTS = /\.(js|css|json|html|txt|svg)$/;

/** Smaller ones fit into the first answer of a server anyhow. */
const LEAST = 1400;

/** What is added to a file's name for each encoding, by the name that a browser asks for it by; the best one first. */
export const ENCODINGS = { br: ".br", gzip: ".gz" } as const;

/** Writes each text file of the site a second and third time, compressed, for servers that send such files as they are. */
export function compressed(webpack: typeof webpackModule) {
  const pack = {
    // The very best takes ten times as long for a twentieth less.
    br: (text: Buffer) =>
      promisify(brotliCompress)(text, {
        params: { [constants.BROTLI_PARAM_QUALITY]: 9, [constants.BROTLI_PARAM_SIZE_HINT]: text.length },
      }),
    gzip: (text: Buffer) => promisify(gzip)(text, { level: 9 }),
  };
  return (compiler: Compiler) => {
    compiler.hooks.thisCompilation.tap("Compressed", (compilation) => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_REPORT + 1;
      compilation.hooks.processAssets.tapPromise({ name: "Compressed", stage }, async (assets) => {
        const { RawSource } = webpack.sources;
        const each = Object.entries(assets).flatMap(([name, source]) => {
          const text = source.buffer();
          // The copy of office.js is large, and Excel loads it from this machine.
          if (!TEXTS.test(name.replace(/\?.*/, "")) || text.length < LEAST || name.startsWith("office/")) return [];
          return (Object.keys(ENCODINGS) as (keyof typeof ENCODINGS)[]).map(async (encoding) => {
            compilation.emitAsset(
              name.replace(/(\?.*)?$/, ENCODINGS[encoding]),
              new RawSource(await pack[encoding](text)),
            );
          });
        });
        await Promise.all(each);
      });
    });
  };
}
