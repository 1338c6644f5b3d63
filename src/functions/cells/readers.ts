/** What one cell gives: a number, a date, a text or a name, else a fault that says what to write there. */

import { keptNumber } from "../../core/check/keptNumber";
import { plain } from "../../core/check/plain";
import { wrong } from "../../core/check/wrong";

export function readNumber(name: string, cell: unknown): number {
  if (typeof cell === "number" && Number.isFinite(cell)) return keptNumber(name, cell);
  if (typeof cell === "string") {
    if (cell.trim() === "") throw wrong(name, "the cell holds only spaces; clear it or write a number");
    throw wrong(name, `"${cell.slice(0, 40)}" is text; write a plain number`);
  }
  const shown = typeof cell === "boolean" ? String(cell).toUpperCase() : "this kind of cell";
  throw wrong(name, `${shown} is not a number; write a plain number`);
}

export function readDate(name: string, cell: unknown): number {
  if (typeof cell !== "string" || cell.trim() === "") return readNumber(name, cell);
  throw wrong(name, `"${cell.slice(0, 40)}" is text; write it as a date, such as =DATE(2026,11,26)`);
}

export function readText(name: string, cell: unknown): string {
  if (typeof cell === "object" || (typeof cell === "number" && !Number.isFinite(cell))) {
    throw wrong(name, "this kind of cell cannot be read; write plain text");
  }
  return typeof cell === "number" ? plain(cell) : String(cell);
}

export const readName = (name: string, cell: unknown): number | string =>
  typeof cell === "number" && Number.isFinite(cell) ? cell : readText(name, cell);
