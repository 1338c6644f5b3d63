/** Notes lie beside the cells: sorting would leave them where they are. */

import type { IMutationInfo, Injector } from "@univerjs/core";
import { RESOURCES } from "../file/codes";
import type { NoteJson, NotesJson } from "../file/noteResource";
import type { Consequence } from "./edits";
import { heldBy } from "./lateParts";
import type { Reorder } from "./sorting";

/** The notes of rows that are sorted, each to where its row goes. */
export function movedNotes(injector: Injector, { unitId, subUnitId, range, order }: Reorder): Consequence {
  const rows = heldBy<NotesJson[string]>(injector, RESOURCES.notes, unitId)[subUnitId] ?? {};
  const goesTo = new Map(Object.entries(order).map(([to, from]) => [from, Number(to)]));
  const before = Object.values(rows)
    .flatMap((row) => Object.values(row))
    .filter(({ row, col }) => goesTo.has(row) && col >= range.startColumn && col <= range.endColumn);
  const after = before.map((note) => ({ ...note, row: goesTo.get(note.row) as number }));
  const ids = { unitId, sheetId: subUnitId };
  // Univer watches notes by their cells: all of them leave before the first comes to where another was.
  const replaced = (now: readonly NoteJson[]): IMutationInfo[] => [
    ...now.map(({ id }) => ({ id: "sheet.mutation.remove-note", params: { ...ids, noteId: id } })),
    ...now.map((note) => ({
      id: "sheet.mutation.update-note",
      params: { ...ids, row: note.row, col: note.col, note },
    })),
  ];
  return { redos: replaced(after), undos: replaced(before) };
}
