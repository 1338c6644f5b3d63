/**
 * A workbook between the page and the worker: in pieces, each small enough that taking it apart keeps nobody waiting.
 */

import type { ICellData, IWorkbookData, IWorksheetData } from "@univerjs/core";

type Rows = Record<number, Record<number, ICellData>>;

/** The workbook without its sheets, a sheet without its cells, or some rows of the sheet that came last. */
export type Piece =
  | { readonly frame: IWorkbookData }
  | { readonly sheet: Partial<IWorksheetData> & { readonly id: string } }
  | { readonly rows: Rows };

/** About so many cells go at once. */
const CELLS = 4000;

export function* piecesOf(data: Readonly<IWorkbookData>): Generator<Piece> {
  yield { frame: { ...data, sheets: {} } };
  for (const id of data.sheetOrder) {
    const sheet = data.sheets[id];
    if (sheet) yield* sheetPieces({ ...sheet, id });
  }
}

export function* sheetPieces(sheet: Partial<IWorksheetData> & { readonly id: string }): Generator<Piece> {
  yield { sheet: { ...sheet, cellData: {} } };
  let rows: Rows = {};
  let count = 0;
  for (const [row, cells] of Object.entries((sheet.cellData ?? {}) as Rows)) {
    rows[Number(row)] = cells;
    count += Object.keys(cells ?? {}).length + 1;
    if (count < CELLS) continue;
    yield { rows };
    rows = {};
    count = 0;
  }
  if (count > 0) yield { rows };
}

/** Puts a workbook together again. */
export class Assembly {
  #data: IWorkbookData | undefined;
  #rows: Rows = {};

  add(piece: Piece): void {
    if ("frame" in piece) this.#data = { ...piece.frame, sheets: {} };
    else if ("rows" in piece) Object.assign(this.#rows, piece.rows);
    else {
      this.#rows = {};
      this.whole().sheets[piece.sheet.id] = { ...piece.sheet, cellData: this.#rows };
    }
  }

  whole(): IWorkbookData {
    if (!this.#data) throw new Error("A workbook begins with its frame.");
    return this.#data;
  }
}
