import { rename } from "node:fs";
import { basename, dirname, join } from "node:path";
import type { Compiler } from "webpack";

/** Writes each file aside and puts it in its place at once: nobody who reads them meanwhile gets a half one. */
export function wholeFiles(compiler: Compiler): void {
  const files = compiler.outputFileSystem;
  if (!files) throw new Error("The build has nowhere to write to.");
  const writeFile = (path: string, content: string | Buffer, done: (problem: Error | null) => void): void => {
    const aside = join(dirname(path), `.${basename(path)}`);
    files.writeFile(aside, content, (problem) => (problem ? done(problem) : rename(aside, path, done)));
  };
  compiler.outputFileSystem = Object.assign(Object.create(files), { writeFile });
}
