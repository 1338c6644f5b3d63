/**
 * A workbook's data in pieces that are kept each by itself: an edit changes few of them. A piece is a text, and the
 * slot that it stands in says what it is of.
 */

import type { IWorkbookData, IWorksheetData } from "@univerjs/core";
import type { Change } from "../../host/univer/changes";

/** `book`, `resource/<plugin>`, `sheet/<id>` (all of it but its cells), `cells/<id>/<block>`. */
export type Slot = string;

/** Rows of a sheet whose cells stand in one slot. */
const BLOCK = 250;

type Rows = Record<number, unknown>;

/** All slots that a workbook fills. */
export function slotsOf({ resources, sheetOrder, sheets }: Readonly<IWorkbookData>): Slot[] {
  return [
    "book",
    ...(resources ?? []).map(({ name }) => `resource/${name}`),
    ...sheetOrder.flatMap((id) => [`sheet/${id}`, ...cellSlots(id, rowsOf(sheets[id]))]),
  ];
}

/**
 * The slots whose pieces a change may have made others, where they are full. Of the workbook itself anything may have
 * changed. All cells of a sheet are `cells/<id>/`.
 */
export function slotsOfChange({ sheets, rows }: Change): Slot[] {
  return sheets.flatMap((id) => {
    const cells = rows === "all" ? [`cells/${id}/`] : rows === "none" ? [] : blocksOf(id, rows);
    return [`sheet/${id}`, ...cells];
  });
}

/** Whether a slot is one of these, or of all cells of a sheet that is among them. */
export const isAmong = (slots: ReadonlySet<Slot>, slot: Slot) =>
  slots.has(slot) || slots.has(slot.slice(0, slot.lastIndexOf("/") + 1));

/** Whether the pieces of a slot are small and looked at with every change. */
export const isOfBook = (slot: Slot) => slot === "book" || slot.startsWith("resource/");

/** The piece of a slot that the workbook fills. */
export function pieceOf(data: Readonly<IWorkbookData>, slot: Slot): string {
  const [kind, rest] = split(slot);
  if (kind === "resource") return data.resources?.find(({ name }) => name === rest)?.data ?? "";
  if (kind === "sheet") return JSON.stringify({ ...data.sheets[rest], cellData: undefined });
  if (kind === "cells") return cellsOf(data, rest);
  // Whatever id it has now, it will be opened with another one.
  return JSON.stringify({ ...data, id: undefined, resources: undefined, sheets: undefined });
}

/** The workbook that these pieces are of. Throws when they do not make one. */
export function workbookOf(pieces: ReadonlyMap<Slot, string>): IWorkbookData {
  const { sheetOrder, ...book } = JSON.parse(pieces.get("book") ?? "") as IWorkbookData;
  const sheets: Record<string, Partial<IWorksheetData>> = {};
  const resources: { name: string; data: string }[] = [];
  for (const id of sheetOrder) sheets[id] = { ...JSON.parse(pieces.get(`sheet/${id}`) ?? ""), cellData: {} };
  for (const [slot, piece] of pieces) {
    const [kind, rest] = split(slot);
    if (kind === "resource") resources.push({ name: rest, data: piece });
    if (kind === "cells") Object.assign(sheets[placeOf(rest).id]?.cellData ?? {}, JSON.parse(piece));
  }
  return { ...book, id: "", sheetOrder, sheets, resources };
}

function cellsOf(data: Readonly<IWorkbookData>, rest: string): string {
  const { id, block } = placeOf(rest);
  const rows = rowsOf(data.sheets[id]);
  const own: Rows = {};
  for (let row = block * BLOCK; row < (block + 1) * BLOCK; row++) if (rows[row]) own[row] = rows[row];
  return JSON.stringify(own);
}

const rowsOf = (sheet: Partial<IWorksheetData> | undefined) => (sheet?.cellData ?? {}) as Rows;

const cellSlots = (id: string, rows: Rows) => blocksOf(id, Object.keys(rows).map(Number));

function blocksOf(id: string, rows: readonly number[]): Slot[] {
  return [...new Set(rows.map((row) => Math.floor(row / BLOCK)))].map((block) => `cells/${id}/${block}`);
}

function split(slot: Slot): [kind: string, rest: string] {
  const end = slot.indexOf("/");
  return end < 0 ? [slot, ""] : [slot.slice(0, end), slot.slice(end + 1)];
}

/** Ids of sheets may hold anything. */
function placeOf(rest: string): { id: string; block: number } {
  const end = rest.lastIndexOf("/");
  return { id: rest.slice(0, end), block: Number(rest.slice(end + 1)) };
}
