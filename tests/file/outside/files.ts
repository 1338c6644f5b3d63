import { readFileSync } from "node:fs";
import fc from "fast-check";
import type { Condition } from "../../../src/file/book";
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
    // Formulas of a duplicate still read the tables of its source by name.
    ...origins.map(([name, origin]) => ({
      name: `duplicated, ${name}`,
      bytes: duplicated(origin),
      origin,
      isComputed: false,
    })),
    ...origins.map(([name, origin]) => ({ name: `new, of ${name}`, bytes: anew(origin), isComputed: true })),
    ...random.map((book, i) => ({ name: `random ${i + 1}`, bytes: saveBook(null, book).bytes, isComputed: false })),
  ];
}

const edited = (origin: Uint8Array): Uint8Array => saveBook(origin, worked(openFile(origin, "a.xlsx").book)).bytes;

/** Each sheet once more, with icons of several sets beside its own rules. */
function duplicated(origin: Uint8Array): Uint8Array {
  const { book } = openFile(origin, "a.xlsx");
  const copies = book.sheets.map((sheet, i) => ({
    ...sheet,
    ...{ id: `copy ${i}`, copyOf: sheet.id, name: `${i} of ${sheet.name}`.slice(0, 31) },
    conditions: [...sheet.conditions, CHOSEN],
  }));
  return saveBook(origin, { ...book, sheets: [...book.sheets, ...copies] }).bytes;
}

const CHOSEN: Condition = {
  ...{ areas: [{ row: 0, column: 1, rows: 9, columns: 1 }], kind: "iconSet", priority: 99, stops: false, formulas: [] },
  stopsAt: ["0", "5", "9"].map((value) => ({ kind: "num", value })),
  icons: {
    ...{ set: "3Flags", reversed: false, hidesValue: false },
    each: [
      { set: "NoIcons", place: 0 },
      { set: "3Stars", place: 1 },
      { set: "5Boxes", place: 4 },
    ],
  },
};

const anew = (origin: Uint8Array): Uint8Array => saveBook(null, openFile(origin, "a.xlsx").book).bytes;
