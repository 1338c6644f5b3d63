/**
 * `npm run check:files`: has the files that the project writes judged by others. Microsoft's validator is to find
 * nothing in them, LibreOffice is to open them and to come to the same values when it works their formulas out.
 */

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Written, writtenFiles } from "./outside/files";
import { libreOfficeVersion, throughLibreOffice } from "./outside/libreOffice";
import { faultText, validator } from "./outside/validator";
import { differentValues, withWrongValue } from "./outside/values";
import { faultsOf } from "./write/packageFaults";

const cache = fileURLToPath(new URL("../../.cache/check-files/", import.meta.url));
const MOST_SHOWN = 5;

type Validate = Awaited<ReturnType<typeof validator>>;

async function validated(validate: Validate, name: string, bytes: Uint8Array): Promise<string[]> {
  const path = join(cache, `${name.replace(/[^\w-]+/g, "-")}.xlsx`);
  writeFileSync(path, bytes);
  return (await validate(path)).map((fault) => `validator: ${faultText(fault)}`);
}

/** What others find wrong in a file; how many formulas were worked out again. */
async function judged(
  file: Written,
  validate: Validate,
  opened: Uint8Array | undefined,
): Promise<{ faults: string[]; formulas: number }> {
  const all = async (name: string, bytes: Uint8Array): Promise<string[]> => [
    ...faultsOf(bytes).map((fault) => `package: ${fault}`),
    ...(await validated(validate, name, bytes)),
  ];
  const theirs = new Set(file.origin ? await all(`${file.name} before`, file.origin) : []);
  const faults = (await all(file.name, file.bytes)).filter((fault) => !theirs.has(fault));
  if (!opened) return { faults: [...faults, "LibreOffice does not open it"], formulas: 0 };
  if (!file.isComputed) return { faults, formulas: 0 };
  const { formulas, different } = differentValues(file.bytes, opened);
  return { faults: [...faults, ...different.map((one) => `value: ${one}`)], formulas };
}

async function check(): Promise<boolean> {
  const version = libreOfficeVersion();
  mkdirSync(cache, { recursive: true });
  const validate = await validator(cache);
  const files = await writtenFiles(cache);
  const wrong = withWrongValue((files[0] as Written).bytes);
  const given = [...files.map(({ bytes }, i) => [String(i), bytes] as const), ["wrong", wrong] as const];
  const opened = throughLibreOffice(new Map(given), cache);
  if (differentValues(wrong, opened.get("wrong") ?? wrong).different.length === 0) {
    throw new Error("LibreOffice did not work the formulas out again: a wrong value was not noticed.");
  }
  let [faulty, worked] = [0, 0];
  for (const [i, file] of files.entries()) {
    const { faults, formulas } = await judged(file, validate, opened.get(String(i)));
    worked += formulas;
    if (faults.length > 0) faulty++;
    console.log(`${faults.length === 0 ? "good" : "BAD "} ${file.name}${formulas > 0 ? `, ${formulas} formulas` : ""}`);
    for (const fault of faults.slice(0, MOST_SHOWN)) console.log(`     ${fault}`);
    if (faults.length > MOST_SHOWN) console.log(`     and ${faults.length - MOST_SHOWN} more`);
  }
  console.log(`${files.length} files, ${faulty} with faults; ${worked} formulas worked out by ${version}.`);
  return faulty === 0 && worked > 0;
}

try {
  process.exitCode = (await check()) ? 0 : 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
