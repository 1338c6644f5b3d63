import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Compilation, Compiler, Module, default as webpackModule } from "webpack";

/** A package whose code is in the built files. */
interface Package {
  readonly title: string;
  readonly author: string;
  /** What its package.json calls its licence. */
  readonly licence: string;
  /** Its licence and notice files, or the licence in its readme; empty where it comes without. */
  readonly text: string;
}

/** For packages that name a licence and come without its text: where this text stands. */
const STANDARD_TEXTS: Readonly<Record<string, string>> = {
  "Apache-2.0": "node_modules/typescript/LICENSE.txt",
  ISC: "node_modules/idb/LICENSE",
  MIT: "LICENSE",
};

/** Packages that are copied as they come, not bundled. */
const COPIED = ["@microsoft/office-js"];

/** Writes notices.txt: every package whose code the bundles hold or that is copied beside them, with its licence. */
export function notices(webpack: typeof webpackModule) {
  return (compiler: Compiler) => {
    compiler.hooks.thisCompilation.tap("Notices", (compilation) => {
      // After the last change of what is bundled.
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_REPORT;
      compilation.hooks.processAssets.tap({ name: "Notices", stage }, () => {
        const folders = new Set(COPIED.map((name) => join(compiler.context, "node_modules", name)));
        for (const module of bundled(compilation)) {
          const folder = packageFolder(module.nameForCondition() ?? "");
          if (folder) folders.add(folder);
        }
        const standard = (file: string) => readText(join(compiler.context, file));
        const text = noticeText([...folders].map(readPackage), standard);
        compilation.emitAsset("notices.txt", new webpack.sources.RawSource(text));
      });
    });
  };
}

/** The modules that ended in a file, those that were joined to another one too. */
function bundled({ modules, chunkGraph }: Compilation): Module[] {
  return [...modules]
    .filter((module) => chunkGraph.getNumberOfModuleChunks(module) > 0)
    .flatMap((module) => [module, ...((module as { modules?: Module[] }).modules ?? [])]);
}

/** The folder of the package that a file belongs to: the last one below a `node_modules`. */
function packageFolder(file: string): string | undefined {
  return /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(file)?.[0];
}

function readPackage(folder: string): Package {
  const { name, version, license, author } = JSON.parse(readText(join(folder, "package.json")));
  const read = (name: RegExp) =>
    readdirSync(folder)
      .filter((file) => name.test(file))
      .map((file) => readText(join(folder, file)));
  // A readme may only name the licence: one that is written out disclaims a warranty.
  const [inReadme = ""] = /^#+ *licen[cs]e.*warrant.*/ims.exec(read(/^readme/i).join()) ?? [];
  return {
    title: `${name} ${version}`,
    author: author?.name ?? String(author ?? "").replace(/ *<.*/, ""),
    licence: String(license?.type ?? license ?? ""),
    text: read(/^(licen[cs]e|copying|notice)/i).join("\n\n") || inReadme,
  };
}

const readText = (file: string): string => readFileSync(file, "utf8").replaceAll("\r\n", "\n").trim();

/** The whole notice. A text that several packages share stands once, below their names. */
export function noticeText(packages: readonly Package[], readStandard: (file: string) => string): string {
  const groups = new Map<string, string[]>();
  for (const { title, author, licence, text } of [...packages].sort((a, b) => (a.title < b.title ? -1 : 1))) {
    const file = STANDARD_TEXTS[licence];
    if (!text && !file) throw new Error(`${title} comes without the text of its licence (${licence}).`);
    // The standard text of somebody else's licence begins without the name of who holds that one.
    const whole = text || readStandard(file as string).replace(/^Copyright .*\n+/m, "");
    const line = text ? title : `${title} by ${author} (licence named: ${licence}; its usual text)`;
    groups.set(whole, [...(groups.get(whole) ?? []), line]);
  }
  const rule = "=".repeat(80);
  const parts = [...groups].map(([text, titles]) => `${rule}\n${titles.join("\n")}\n${rule}\n\n${text}\n`);
  return `Third-party code in Pourwright

The packages named below are part of the files beside this one, each under its own licence.
office.js is Microsoft's; its terms are below and are not those of an open licence.
Pourwright itself is under the MIT licence.

${parts.join("\n")}`;
}
