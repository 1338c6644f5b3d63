/**
 * `npm run mutate`: breaks the core and the functions in thousands of small ways, one at a time, and prints where no
 * test notices. Names given choose among the domains: `npm run mutate -- fill scent`.
 */

import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Found, print, scoreLine } from "./found";

/** The tool is too heavy to come with every install: it has a place of its own, from which it finds our vitest. */
const TOOL = { "@stryker-mutator/core": "9.6.1", "@stryker-mutator/vitest-runner": "9.6.1" };

const root = fileURLToPath(new URL("../../", import.meta.url));
const place = `${root}.cache/mutate`;
const tool = `${place}/node_modules/@stryker-mutator/core`;
const report = `${place}/report.json`;

function run(command: string, args: readonly string[], cwd: string, env = {}): boolean {
  return spawnSync(command, args, { cwd, stdio: "inherit", env: { ...process.env, ...env } }).status === 0;
}

function install(): void {
  const version = TOOL["@stryker-mutator/core"];
  if (existsSync(tool) && JSON.parse(readFileSync(`${tool}/package.json`, "utf8")).version === version) return;
  mkdirSync(place, { recursive: true });
  writeFileSync(`${place}/package.json`, JSON.stringify({ private: true, dependencies: TOOL }));
  // Without that flag it would bring a vitest of its own.
  const flags = ["--legacy-peer-deps", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"];
  if (!run("npm", ["install", ...flags], place)) throw new Error("The tool for mutations could not be installed.");
}

/** What the tests of a domain notice. */
function mutate(domain: string, files: string): readonly Found[] {
  rmSync(report, { force: true });
  const args = [`${tool}/bin/stryker.js`, "run", "tests/mutate/stryker.config.json", "--mutate", files];
  if (!run("node", args, root, { POURWRIGHT_DOMAIN: domain })) throw new Error(`${domain} could not be measured.`);
  const { files: mutated } = JSON.parse(readFileSync(report, "utf8")) as {
    files: Record<string, { source: string; mutants: Omit<Found, "domain" | "file" | "before">[] }>;
  };
  return Object.entries(mutated).flatMap(([file, { source, mutants }]) =>
    mutants.map((mutant) => ({
      ...mutant,
      domain,
      file,
      before: source.split("\n")[mutant.location.start.line - 1] ?? "",
    })),
  );
}

const domains = readdirSync(`${root}src/core`, { withFileTypes: true }).filter((one) => one.isDirectory());
const files = new Map(domains.map(({ name }) => [name, `src/core/${name}/**/*.ts`]));
files.set("core", "src/core/*.ts").set("functions", "src/functions/**/*.ts");
const chosen = process.argv.slice(2);
const unknown = chosen.find((name) => !files.has(name));
if (unknown) throw new Error(`There is no ${unknown}. There are: ${[...files.keys()].join(", ")}.`);

install();
const found: Found[] = [];
for (const [domain, its] of files) {
  if (chosen.length > 0 && !chosen.includes(domain)) continue;
  const some = mutate(domain, its);
  found.push(...some);
  // It takes long: who stops it has something all the same.
  console.log(scoreLine(domain, some));
}
process.exit(print(found) ? 0 : 1);
