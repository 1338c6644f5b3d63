import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Domain } from "./domains";
import type { Found } from "./found";

/** The tool is too heavy to come with every install: it has a place of its own, from which it finds our vitest. */
const TOOL = { "@stryker-mutator/core": "9.6.1", "@stryker-mutator/vitest-runner": "9.6.1" };

export const root = fileURLToPath(new URL("../../", import.meta.url));
const place = `${root}.cache/mutate`;
const tool = `${place}/node_modules/@stryker-mutator/core`;
const report = `${place}/report.json`;

function run(command: string, args: readonly string[], cwd: string, env = {}): boolean {
  return spawnSync(command, args, { cwd, stdio: "inherit", env: { ...process.env, ...env } }).status === 0;
}

export function install(): void {
  const version = TOOL["@stryker-mutator/core"];
  if (existsSync(tool) && JSON.parse(readFileSync(`${tool}/package.json`, "utf8")).version === version) return;
  mkdirSync(place, { recursive: true });
  writeFileSync(`${place}/package.json`, JSON.stringify({ private: true, dependencies: TOOL }));
  // Without that flag it would bring a vitest of its own.
  const flags = ["--legacy-peer-deps", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"];
  if (!run("npm", ["install", ...flags], place)) throw new Error("The tool for mutations could not be installed.");
}

/** What becomes of every so many-th change of a domain, drawn by chance; undefined where its tests fail by themselves. */
export function mutate({ name, files, tests }: Domain, every: number, seed: number): readonly Found[] | undefined {
  rmSync(report, { force: true });
  const args = [`${tool}/bin/stryker.js`, "run", "tests/mutate/stryker.config.json", "--mutate", files];
  const env = { POURWRIGHT_MUTATE: tests.join(" "), POURWRIGHT_SAMPLE: `${every} ${seed}` };
  if (!run("node", args, root, env)) return undefined;
  const { files: mutated } = JSON.parse(readFileSync(report, "utf8")) as {
    files: Record<string, { source: string; mutants: Omit<Found, "domain" | "file" | "before">[] }>;
  };
  return Object.entries(mutated).flatMap(([file, { source, mutants }]) =>
    mutants
      .filter(({ status }) => status !== NOT_DRAWN)
      .map((mutant) => ({
        ...mutant,
        domain: name,
        file,
        before: source.split("\n")[mutant.location.start.line - 1] ?? "",
      })),
  );
}

/** What `sampled.mjs` makes of the changes that were not drawn. */
const NOT_DRAWN = "CompileError";
