/** Notes of a file as the note plugin keeps them, and back. */

import type { Note } from "../../../file/book";

export interface NoteJson {
  readonly id: string;
  readonly row: number;
  readonly col: number;
  readonly width: number;
  readonly height: number;
  readonly note: string;
  readonly show?: boolean;
}

/** By sheet, row and column. */
export type NotesJson = Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, NoteJson>>>>>>;

const WIDTH = 160;
const HEIGHT = 72;

export function notesJson(notes: readonly Note[]): NotesJson[string] {
  const rows: Record<string, Record<string, NoteJson>> = {};
  for (const [i, { row, column, text }] of notes.entries()) {
    rows[row] ??= {};
    (rows[row] as Record<string, NoteJson>)[column] = {
      id: `n${i}`,
      row,
      col: column,
      width: WIDTH,
      height: HEIGHT,
      note: text,
      show: false,
    };
  }
  return rows;
}

/** By the ids of the plugin, those of the file in the order of the file. */
export function notesOf(json: NotesJson[string] | undefined): Map<string, Note> {
  const all = Object.values(json ?? {}).flatMap((row) => Object.values(row));
  const number = ({ id }: NoteJson) => (/^n\d+$/.test(id) ? Number(id.slice(1)) : Number.POSITIVE_INFINITY);
  const ordered = all.sort((a, b) => (number(a) === number(b) ? 0 : number(a) - number(b)));
  return new Map(ordered.map(({ id, row, col, note }) => [id, { row, column: col, text: note, author: "" }]));
}
