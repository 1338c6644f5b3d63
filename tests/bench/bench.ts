/**
 * Measures what must not be slow, side by side in one process, and prints each figure with its goal last. Names given
 * choose among the parts: `npm run bench -- pots packs`.
 */

import { excel } from "./excel";
import { type Figure, print } from "./figures";
import { functions } from "./functions";
import { packs } from "./packs";
import { page } from "./page";
import { pots } from "./pots";
import { recalculation } from "./recalculation";
import { runSheets } from "./runSheets";
import { stock } from "./stock";

const parts = { functions, recalculation, pots, packs, runSheets, excel, stock, page };

const chosen = process.argv.slice(2);
const begun = performance.now();
const measured: [string, readonly Figure[]][] = [];
for (const [name, { title, measure }] of Object.entries(parts)) {
  if (chosen.length > 0 && !chosen.includes(name)) continue;
  console.log(`Measuring ${name} ...`);
  measured.push([title, await measure()]);
}
for (const [title, figures] of measured) print(title, figures);
const all = measured.flatMap(([, figures]) => figures);
const short = all.filter(({ holds }) => holds === false);
const minutes = ((performance.now() - begun) / 60_000).toFixed(1);
console.log(`\n${all.filter(({ holds }) => holds).length} goals hold, ${short.length} fall short; ${minutes} minutes.`);
for (const { what, is, goal } of short) console.log(`  falls short: ${what}: ${is}, ${goal}`);
process.exit(0);
