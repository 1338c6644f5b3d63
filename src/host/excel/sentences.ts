/**
 * What Excel's error codes mean to a user and what to do about them. Excel's own messages are written for
 * programmers and in the language of the installation.
 */
const REASONS: Readonly<Record<string, string>> = {
  AccessDenied:
    "the workbook or the sheet is protected or open for reading only. Take the protection off on the Review tab, or save a copy and work in that.",
  ActivityLimitReached: "Excel is busy. Wait a moment and try again.",
  ApiNotFound: "this Excel is too old. Update Office and try again.",
  Conflict: "somebody else changed the workbook at the same moment. Try again.",
  ConnectionFailure: "the connection to the workbook was lost. Check it and try again.",
  FilteredRangeConflict: "a filter is in the way. Clear the filter and try again.",
  InactiveWorkbook: "another workbook is in front. Click into the workbook you work on and try again.",
  InsertDeleteConflict:
    "cells would have to move and cannot, because of another table or of merged cells. Move those away and try again.",
  InvalidOperationInCellEditMode: "a cell is being edited. Press Enter or Esc in the sheet, then try again.",
  InvalidSelection: "this selection cannot be used. Select one block of cells and try again.",
  ItemAlreadyExists: "the name has been taken in the meantime. Try again.",
  ItemNotFound: "it is no longer in the workbook. Choose again from what is there now.",
  MemoryLimitReached: "Excel has no memory left. Close other workbooks or delete sheets that are not needed.",
  MergedRangeConflict: "merged cells are in the way. Unmerge them and try again.",
  NonBlankCellOffSheet: "the sheet has no room left at its end. Clear its last rows and try again.",
  OperationCellsExceedLimit: "that is more than Excel does at once. Choose fewer rows.",
  PivotTableRangeConflict: "a pivot table is in the way. Move it away and try again.",
  RangeExceedsLimit: "that is more than Excel reads at once. Choose fewer rows.",
  RequestAborted: "Excel broke it off. Try again.",
  RequestPayloadSizeLimitExceeded: "that is more than Excel on the web takes at once. Choose fewer rows.",
  ResponsePayloadSizeLimitExceeded:
    "that is more than Excel on the web hands over at once. Choose fewer rows or use Excel on the desktop.",
  ServiceNotAvailable: "Excel does not answer. Wait a moment and try again.",
  UnsupportedSheet: "this sheet is a chart. Choose a sheet with cells.",
};

/**
 * An error as a sentence to act on. Our own errors already are sentences and pass as they are, and so does a stop.
 * @param failed what could not be done: "Excel could not add the sheet"
 */
export function sentence(failed: string, error: unknown): Error {
  const code = typeof error === "object" && error !== null && "code" in error ? error.code : undefined;
  // The code of Excel's errors is a word; a stop has a number.
  if (typeof code !== "string") return error instanceof Error ? error : new Error(`${failed}: ${String(error)}.`);
  const own = error instanceof Error ? error.message : "";
  return new Error(`${failed}: ${REASONS[code] ?? `${own || "no reason given"} (${code}). Try again.`}`, {
    cause: error,
  });
}

/** What to load of a worksheet to know whether it is closed to writing; `path` leads to it. */
export const closedAt = (path = ""): string =>
  [
    "name",
    "protection/protected",
    "autoFilter/isDataFiltered",
    "tables/items/name",
    "tables/items/autoFilter/isDataFiltered",
  ]
    .map((property) => path + property)
    .join();

/** Whether a filter hides rows of a sheet: its own, or that of one of its tables, which the sheet's does not tell. */
export const isFiltered = ({ autoFilter, tables }: Excel.Worksheet): boolean =>
  autoFilter.isDataFiltered || tables.items.some((table) => table.autoFilter.isDataFiltered);

/**
 * Refuses a protected sheet, which Excel might write on in part, and a filtered one, where Excel puts blocks of cells
 * into the wrong rows. What `closedAt` names must be loaded.
 */
export function refuseClosed(worksheet: Excel.Worksheet): void {
  const { name, protection, tables } = worksheet;
  if (protection.protected) {
    throw new Error(`${name} is protected. Take the protection off (Review tab, Unprotect Sheet) and try again.`);
  }
  if (!isFiltered(worksheet)) return;
  const table = tables.items.find(({ autoFilter }) => autoFilter.isDataFiltered);
  if (!table) throw new Error(`A filter hides rows of ${name}. Clear it (Data tab, Clear) and try again.`);
  throw new Error(
    `A filter hides rows of ${name}, in the table ${table.name}. Click into the table, clear the filter (Data tab, Clear) and try again.`,
  );
}
