import { readFileSync } from "node:fs";
import fc from "fast-check";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { SAMPLES } from "../../../src/samples/index";

import { richWorkbook } from "../richWorkbook";
import { anyBook } from "../write/books";
import { byExceljs } from "./byExceljs";
import { throughLibreOffice } from "./libreOffice";
import { worked } from "./worked";

/** A file that the project wrote. */
export interface Written {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What it was made from: faults that stand in there are the other program's. */
  readonly origin?: Uint8Array;
  /** Whether its values are what its formulas come to, so that another program finds the same. */
  readonly isComputed: boolean;
}

const RANDOM_BOOKS = 12;

export async function writtenFiles(cache: string): Promise<Written[]> {
  const samples = SAMPLES.map(({ file }) => {
    const bytes = new Uint8Array(readFileSync(new URL(`../../../sample-workbooks/${file}`, import.meta.url)));
    return { name: file.replace(".xlsx", ""), bytes };
  });
  const rich = richWorkbook();
  const others = new Map([...samples.map(({ name, bytes }) => [name, bytes] as const), ["rich", rich] as const]);
  const fromLibreOffice = throughLibreOffice(others, cache);
  const origins: readonly (readonly [string, Uint8Array])[] = [
    ["by hand", rich],
    ["by hand, from 1904", richWorkbook({ from1904: true })],
    ["exceljs", await byExceljs()],
    ...samples.map(({ name, bytes }) => [`sample ${name}`, bytes] as const),
    ...[...fromLibreOffice].flatMap(([name, bytes]) => (bytes ? [[`LibreOffice ${name}`, bytes] as const] : [])),
  ];
  const random = fc.sample(anyBook, { seed: 8, numRuns: RANDOM_BOOKS });
  return [
    ...samples.map(({ name, bytes }) => ({ name: `sample ${name}`, bytes, isComputed: true })),
    ...origins.map(([name, origin]) => ({ name: `edited, ${name}`, bytes: edited(origin), origin, isComputed: true })),
    ...origins.map(([name, origin]) => ({ name: `new, of ${name}`, bytes: anew(origin), isComputed: true })),
    ...random.map((book, i) => ({ name: `random ${i + 1}`, bytes: saveBook(null, book).bytes, isComputed: false })),
  ];
}

const edited = (origin: Uint8Array): Uint8Array => saveBook(origin, worked(openFile(origin, "a.xlsx").book)).bytes;

const anew = (origin: Uint8Array): Uint8Array => saveBook(null, openFile(origin, "a.xlsx").book).bytes;
