import type { Sheet } from "../../sheet/sheet";
import { type Layout, layOut } from "./layOut";
import { MOST_BYTES, queuedBytes, refuseTooMuch, rowBytes } from "./payload";
import { writeSheet } from "./writeSheet";

/** A sheet and how it goes into requests. */
export interface LaidOut {
  readonly sheet: Sheet;
  readonly layout: Layout;
  /** So many rows of formulas are sent with all else; those below follow in a second request. */
  readonly atOnce: number;
  /** How long the first request will be. */
  readonly bytes: number;
}

/**
 * Splits what is sent for a sheet so that two requests are about equally long where one would be too long. Throws what
 * `layOut` does, and when it is too much.
 * @param requests how many there may be for it
 */
export function laidOut(sheet: Sheet, requests: 1 | 2): LaidOut {
  const layout = layOut(sheet);
  const ofRows = (layout.formulas ?? []).map(rowBytes);
  // What is far too much shows in the contents: the looks of so many cells would take long to count.
  const contents = [...layout.constants, ...(layout.formats ?? [])].map(rowBytes).concat(ofRows).reduce(sum);
  refuseTooMuch(contents / requests, contents);
  let bytes = queuedBytes<Excel.Worksheet>((worksheet) => writeSheet(worksheet, sheet, layout, 0));
  const all = ofRows.reduce(sum, bytes);
  if (all <= MOST_BYTES) return { sheet, layout, atOnce: layout.rows, bytes: all };
  refuseTooMuch(requests === 1 ? all : bytes, all);
  let atOnce = 0;
  while (atOnce < ofRows.length && bytes < all / 2) bytes += ofRows[atOnce++] as number;
  refuseTooMuch(Math.max(bytes, all - bytes), all);
  return { sheet, layout, atOnce, bytes };
}

const sum = (one: number, other: number): number => one + other;
