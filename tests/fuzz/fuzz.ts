/**
 * `npm run fuzz`: generated calls of all functions through Microsoft's own runtime, and generated tables through the
 * run sheet. Prints its figures last, and ends with 1 where anything failed. Repeatable: the same seed gives the same
 * cases, and what failed is printed with what repeats it.
 *
 * `npm run fuzz -- --seed 7 --only FILLWEIGHT --path 12:0`: one part alone, from a failure's own path on.
 */

import { parseArgs } from "node:util";
import fc from "fast-check";
import { excelCalls } from "./excelCalls";
import { Heap } from "./heap";
import type { Part } from "./part";
import { reached, runSheets } from "./runSheets";
import { Watch } from "./watched";

const { values: given } = parseArgs({
  options: {
    seed: { type: "string", default: String(Date.now() % 1e6) },
    only: { type: "string" },
    path: { type: "string" },
    calls: { type: "string", default: "200000" },
    sheets: { type: "string", default: "3000" },
  },
});
const seed = Number(given.seed);
/** Equal steps, each of which asks all parts the same number of cases: between them the heap is measured. */
const STEPS = 10;
/** How long a failing case is made smaller, in milliseconds. */
const SHRINKING = 30_000;
/** How much of a case is printed: the whole of it comes again by its seed and path. */
const MOST_SHOWN = 6000;

let failures = 0;
const cases = { calls: 0, sheets: 0 };

/** Asks a part; says what failed, made as small as it went. */
async function ask(part: Part, from: number, numRuns: number): Promise<boolean> {
  let until = Infinity;
  const property = fc.asyncProperty(part.cases, async (one) => {
    if (performance.now() > until) return;
    try {
      await part.holds(one);
    } catch (thrown) {
      until = Math.min(until, performance.now() + SHRINKING);
      throw thrown;
    }
  });
  const path = given.path === undefined ? {} : { path: given.path };
  const result = await fc.check(property, { seed: from, numRuns, ...path });
  if (!result.failed) return true;
  failures++;
  const { counterexample, counterexamplePath, errorInstance } = result;
  console.error(
    `\nFAILED ${part.name}: ${errorInstance instanceof Error ? errorInstance.message : String(errorInstance)}`,
    `\n  smallest case: ${JSON.stringify(counterexample?.[0])?.slice(0, MOST_SHOWN)}`,
    `\n  to repeat it: npm run fuzz -- --seed ${from} --only ${part.name} --path ${counterexamplePath}\n`,
  );
  return false;
}

const gc = globalThis.gc;
if (!gc) throw new Error("The heap cannot be measured: run it by npm run fuzz.");
const heap = new Heap(gc);
const watch = new Watch();
const [began, worked] = [performance.now(), process.cpuUsage()];
const calls = excelCalls(watch) as Part[];
const sheets = runSheets(watch) as Part;
const standing = [...calls, sheets].filter(({ name }) => given.only === undefined || name === given.only);
if (standing.length === 0)
  throw new Error(
    `Nothing is called ${given.only}. There are: ${[...calls, sheets].map(({ name }) => name).join(", ")}.`,
  );
/** How many functions the calls are shared by. */
const asked = standing.filter((part) => part !== sheets).length;
console.log(`Seed ${seed}. The same cases again: npm run fuzz -- --seed ${seed}`);

for (let step = 0; step < (given.path === undefined ? STEPS : 1); step++) {
  for (const part of [...standing]) {
    const kind = part === sheets ? "sheets" : "calls";
    const each = Math.ceil(Number(given[kind]) / STEPS / (kind === "sheets" ? 1 : asked));
    cases[kind] += each;
    // Another seed for each step; a path leads from one that was printed.
    if (!(await ask(part, seed + step, each))) standing.splice(standing.indexOf(part), 1);
  }
  heap.measure();
}

if (heap.isGrowing) {
  failures++;
  console.error(`\nFAILED memory: ${heap.growth.toFixed(1)} MB more stay on the heap from step to step.`);
}
// Cases that all stop early would prove nothing.
if (cases.sheets > 0 && given.path === undefined && reached.corrected === 0) {
  failures++;
  console.error("\nFAILED run sheets: no case came as far as a correction in the log.");
}

const { user, system } = process.cpuUsage(worked);
const seconds = (milliseconds: number) => (milliseconds / 1000).toFixed(1);
console.log(
  [
    `seed       ${seed}`,
    `calls      ${cases.calls} through the custom-functions runtime`,
    `functions  ${calls.length}`,
    `tables     ${reached.tables} in ${cases.sheets} workbooks: ${reached.planned} planned, ${reached.described} described, ${reached.read} sheets read back, ${reached.logged} logged, ${reached.corrected} logged again or corrected`,
    `seconds    ${seconds(performance.now() - began)}, of a processor ${seconds((user + system) / 1000)}`,
    "slowest    milliseconds of a processor:",
    ...watch.slowest.map(({ name, work, given: what }) => `  ${work.toFixed(0).padStart(6)} ${name} ${what}`),
    `heap       MB after each step: ${heap.steps.map((one) => one.toFixed(1)).join(" ")}`,
    failures === 0 ? "Nothing failed." : `${failures} FAILED`,
  ].join("\n"),
);
process.exit(failures === 0 ? 0 : 1);
