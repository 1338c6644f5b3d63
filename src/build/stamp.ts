import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import type { Compiler } from "webpack";

const HOME = fileURLToPath(new URL("../../", import.meta.url));
const STAMP = "built-from.txt";

/** What the build is made from. */
const SOURCES = [
  "manifest.xml",
  "package-lock.json",
  "sample-workbooks/1-studio.xlsx",
  "src",
  "tsconfig.json",
  "webpack.config.js",
];

/** Stands for the contents of all that the build is made from. Times of files say nothing after a checkout. */
export function sourcesHash(home = HOME): string {
  const hash = createHash("sha256");
  const files = SOURCES.flatMap((name) =>
    name === "src"
      ? readdirSync(join(home, name), { recursive: true, withFileTypes: true })
          .filter((entry) => entry.isFile() && !entry.name.endsWith(".tsbuildinfo"))
          .map(({ parentPath, name }) => join(parentPath, name))
          .sort()
      : [join(home, name)],
  );
  for (const file of files)
    hash
      .update(`${relative(home, file)}\0`)
      .update(readFileSync(file))
      .update("\0");
  return hash.digest("hex");
}

/** Notes beside the built files what they were built from, once all are written. */
export function stamp(sources: string) {
  return (compiler: Compiler) => {
    compiler.hooks.afterEmit.tap("Stamp", ({ outputOptions }) => {
      writeFileSync(join(outputOptions.path as string, STAMP), sources);
    });
  };
}

/** Says so when a directory was not built from the sources as they are now. */
export function requireCurrent(directory: string): void {
  let built = "";
  try {
    built = readFileSync(join(directory, STAMP), "utf8");
  } catch {
    // Never built to its end.
  }
  if (built !== sourcesHash()) throw new Error("dist was not built from the sources as they are. Run: npm run build");
}
