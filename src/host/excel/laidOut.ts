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
  let bytes = queuedBytes<Excel.Worksheet>((worksheet) => writeSheet(worksheet, sheet, layout, 0));
  const ofRows = (layout.formulas ?? []).map(rowBytes);
  const all = ofRows.reduce((sum, one) => sum + one, bytes);
  if (all <= MOST_BYTES) return { sheet, layout, atOnce: layout.rows, bytes: all };
  refuseTooMuch(requests === 1 ? all : bytes, all);
  let atOnce = 0;
  while (atOnce < ofRows.length && bytes < all / 2) bytes += ofRows[atOnce++] as number;
  refuseTooMuch(Math.max(bytes, all - bytes), all);
  return { sheet, layout, atOnce, bytes };
}
