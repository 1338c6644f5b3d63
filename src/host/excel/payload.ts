/** Excel on the web refuses requests of more than 5 MB; what is left is for what goes with each of them. */
export const MOST_BYTES = 4_900_000;
/** What the client writes at most for each of these, beside what is handed over. */
const AROUND = { property: 170, call: 120, result: 280, set: 140 };
/** It sends a block in pieces of whole rows with about so many cells, and so much around each. */
const PIECE_CELLS = 1500;
const AROUND_PIECE = 1000;

type Cells = readonly (readonly unknown[])[];

const bytesOf = (value: unknown): number => new TextEncoder().encode(JSON.stringify(value)).length;

/** How much longer a row makes the request. */
export const rowBytes = (row: readonly unknown[]): number =>
  bytesOf(row) + 1 + (AROUND_PIECE * row.length) / PIECE_CELLS;

/** Whether Excel gets a block in one piece, and so does it as a whole or not at all. */
export const isOnePiece = (rows: number, columns: number): boolean => rows * columns <= PIECE_CELLS;

const blockBytes = (rows: Cells): number => rows.reduce((sum, row) => sum + rowBytes(row), AROUND_PIECE);

/** How long the request for what is queued on one of Excel's objects will be, give or take a few hundredths. */
export function queuedBytes<T extends object>(queue: (object: T) => void): number {
  let bytes = 0;
  /** Stands for an object; what the client writes to reach it counts once something is done with it. */
  const standIn = (around: number): object =>
    new Proxy(() => {}, {
      get: () => {
        bytes += around;
        return standIn(AROUND.property);
      },
      apply: (_function, _this, given) => {
        bytes += AROUND.call + bytesOf(given);
        return standIn(AROUND.result);
      },
      set: (_object, _name, value) => {
        bytes += around + AROUND.set + (Array.isArray(value) ? blockBytes(value) : bytesOf(value));
        return true;
      },
    });
  queue(standIn(0) as T);
  return bytes;
}

/** Throws with what to do where a request would be too long. */
export function refuseTooMuch(bytes: number): void {
  if (bytes <= MOST_BYTES) return;
  throw new Error(
    `What is to be written is ${(bytes / 1e6).toFixed(1)} MB, more than Excel takes at once. Choose fewer rows or shorten the longest texts.`,
  );
}
