/**
 * `npm run check:files`: has the files that the project writes judged by others. Microsoft's validator is to find
 * nothing in them, LibreOffice is to open them and to come to the same numbers.
 */

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Written, writtenFiles } from "./outside/files";
import { libreOfficeVersion, throughLibreOffice } from "./outside/libreOffice";
import { differentNumbers } from "./outside/numbers";
import { faultText, validator } from "./outside/validator";
import { faultsOf } from "./write/packageFaults";

const cache = fileURLToPath(new URL("../../.cache/check-files/", import.meta.url));
const MOST_SHOWN = 5;

type Validate = Awaited<ReturnType<typeof validator>>;

async function validated(validate: Validate, name: string, bytes: Uint8Array): Promise<string[]> {
  const path = join(cache, `${name.replace(/[^\w-]+/g, "-")}.xlsx`);
  writeFileSync(path, bytes);
  return (await validate(path)).map((fault) => `validator: ${faultText(fault)}`);
}

/** What others find wrong in a file; the numbers that were compared. */
async function judged(
  file: Written,
  validate: Validate,
  opened: Uint8Array | undefined,
): Promise<{ faults: string[]; compared: number }> {
  const all = async (name: string, bytes: Uint8Array): Promise<string[]> => [
    ...faultsOf(bytes).map((fault) => `package: ${fault}`),
    ...(await validated(validate, name, bytes)),
  ];
  const theirs = new Set(file.origin ? await all(`${file.name} before`, file.origin) : []);
  const faults = (await all(file.name, file.bytes)).filter((fault) => !theirs.has(fault));
  if (!opened) return { faults: [...faults, "LibreOffice does not open it"], compared: 0 };
  if (!file.isComputed) return { faults, compared: 0 };
  const { compared, different } = differentNumbers(file.bytes, opened);
  return { faults: [...faults, ...different.map((one) => `number: ${one}`)], compared };
}

async function check(): Promise<boolean> {
  const version = libreOfficeVersion();
  mkdirSync(cache, { recursive: true });
  const validate = await validator(cache);
  const files = await writtenFiles(cache);
  const opened = throughLibreOffice(new Map(files.map(({ bytes }, i) => [String(i), bytes])), cache);
  let [faulty, numbers] = [0, 0];
  for (const [i, file] of files.entries()) {
    const { faults, compared } = await judged(file, validate, opened.get(String(i)));
    numbers += compared;
    if (faults.length > 0) faulty++;
    console.log(`${faults.length === 0 ? "good" : "BAD "} ${file.name}${compared > 0 ? `, ${compared} numbers` : ""}`);
    for (const fault of faults.slice(0, MOST_SHOWN)) console.log(`     ${fault}`);
    if (faults.length > MOST_SHOWN) console.log(`     and ${faults.length - MOST_SHOWN} more`);
  }
  console.log(`${files.length} files, ${faulty} with faults; ${numbers} numbers compared with ${version}.`);
  return faulty === 0 && numbers > 0;
}

try {
  process.exitCode = (await check()) ? 0 : 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
