import { Inflate } from "fflate";
import { damaged, FileRefused, tooLarge } from "../refused";
import { crc32 } from "./crc32";
import { type Entry, packedBytes, readDirectory } from "./directory";

/** A workbook file's parts by their path, in the order of the file. */
export interface Package {
  readonly parts: ReadonlyMap<string, Uint8Array>;
}

const MB = 1_000_000;
/** What a file may hold unpacked, in all. */
const MOST_UNPACKED = 500 * MB;
/** Deflate cannot pack tighter than about this. */
const TIGHTEST = 1_040;
/** Packed bytes that are unpacked at once: what they could become fits into memory. */
const STEP = 16_384;
const STORED = 0;
const DEFLATED = 8;

/** The parts of a zip; throws FileRefused for one that is damaged, dangerous or too large. */
export function unpack(bytes: Uint8Array, progress?: (share: number) => void): Package {
  const entries = readDirectory(bytes).filter(({ path, size }) => !(path.endsWith("/") && size === 0));
  checkPaths(entries);
  const total = entries.reduce((sum, { size }) => sum + size, 0);
  if (total > MOST_UNPACKED) {
    throw tooLarge(
      `Unpacked it would take ${Math.ceil(total / MB)} MB; the page opens up to ${MOST_UNPACKED / MB} MB.`,
    );
  }
  const parts = new Map<string, Uint8Array>();
  let done = 0;
  for (const entry of entries) {
    parts.set(entry.path, unpackOne(packedBytes(bytes, entry), entry));
    done += entry.size;
    progress?.(done / total);
  }
  return { parts };
}

/** Names that lead out of the package or that name two parts alike are no workbook's. */
function checkPaths(entries: readonly Entry[]): void {
  const seen = new Set<string>();
  for (const { path } of entries) {
    const steps = path.split("/");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there.
    if (/[\\\u0000-\u001f]|^[a-z]:/i.test(path) || steps.some((step) => ["", ".", ".."].includes(step))) {
      throw damaged(`It has a part with a name that no workbook has: ${JSON.stringify(path.slice(0, 80))}.`);
    }
    const alike = path.toLowerCase();
    if (seen.has(alike)) throw damaged(`It has two parts of one name: ${JSON.stringify(path.slice(0, 80))}.`);
    seen.add(alike);
  }
}

function unpackOne(packed: Uint8Array, { path, encrypted, method, size, crc }: Entry): Uint8Array {
  if (encrypted) {
    throw new FileRefused(
      "This file is locked with a password. Take the password off in the program that made it, and open it again.",
    );
  }
  if (method !== STORED && method !== DEFLATED) {
    throw damaged(`The part "${path}" is packed in a way that workbooks are not.`);
  }
  if (size > packed.length * TIGHTEST + 64) throw damaged(`The part "${path}" says that it is larger than it can be.`);
  const content = method === STORED ? packed : inflate(packed, path, size);
  if (content.length !== size || crc32(content) !== crc) throw damaged(`The part "${path}" has changed bytes.`);
  return content;
}

/** Stops as soon as more comes out than the directory says. */
function inflate(packed: Uint8Array, path: string, size: number): Uint8Array {
  const content = new Uint8Array(size);
  let filled = 0;
  const inflater = new Inflate((chunk) => {
    if (filled + chunk.length > size) throw damaged(`The part "${path}" holds more than it says.`);
    content.set(chunk, filled);
    filled += chunk.length;
  });
  try {
    for (let at = 0; at < packed.length; at += STEP) {
      inflater.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
    }
  } catch (error) {
    throw error instanceof FileRefused ? error : damaged(`The part "${path}" cannot be unpacked.`);
  }
  if (filled !== size) throw damaged(`The part "${path}" breaks off.`);
  return content;
}
