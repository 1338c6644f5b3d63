/**
 * `npm run mutate`: breaks the core, the functions and the run sheet in small ways, one at a time, and prints where no
 * test notices. Of all such changes it takes a part drawn by chance, the same each time.
 *
 * `npm run mutate -- fill runsheet --every 4`: these domains alone, and a larger part; `--all` takes every change,
 * `--seed 7` draws others.
 */

import { parseArgs } from "node:util";
import { domainsOf } from "./domains";
import { type Found, printMissed, printScores } from "./found";
import { install, mutate } from "./tool";

const { values: given, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    all: { type: "boolean", default: false },
    every: { type: "string", default: "80" },
    seed: { type: "string", default: "0" },
  },
});
const every = given.all ? 1 : Number(given.every);
if (!(Number.isInteger(every) && every >= 1))
  throw new Error("Write a whole number behind --every: 4 takes a quarter.");
const domains = domainsOf(positionals);

install();
const found: Found[] = [];
const failed: string[] = [];
for (const domain of domains) {
  const some = mutate(domain, every, Number(given.seed));
  if (!some) failed.push(domain.name);
  printMissed(some ?? []);
  found.push(...(some ?? []));
}
if (failed.length > 0) console.log(`\nNot measured, see above why its tests do not pass: ${failed.join(", ")}.`);
const holds = printScores(found, every);
process.exit(holds && failed.length === 0 ? 0 : 1);
