import fc from "fast-check";
import { AT, kindOfKey } from "../../src/runsheet/sheet/layout";
import type { CellValue, Sheet } from "../../src/sheet/sheet";
import { plainOf } from "../pane/tablesAlone";
import { anyValue } from "./tables";

/** What is written on a run sheet after the pour, rightly and wrongly. */

/** Of one pot: how much more or less was weighed, what was spoilt, and of which lot it was; nothing of one not poured yet. */
const pour = fc.option(
  fc.record({
    ratio: fc.constantFrom(1, 1, 0.98, 1.01, 1.3, 0),
    spoilt: fc.nat(2),
    lot: fc.constantFrom<CellValue>("", "W-1", "a; b", 46_352),
  }),
  { freq: 3 },
);

/** Pots as poured, and cells that were written over anywhere. */
export const anyWriting = fc.record({
  pours: fc.array(pour, { minLength: 1, maxLength: 4 }),
  over: fc.oneof(
    { weight: 2, arbitrary: fc.constant([]) },
    { weight: 1, arbitrary: fc.array(fc.tuple(fc.nat(), anyValue), { maxLength: 3 }) },
  ),
});
type Writing = typeof anyWriting extends fc.Arbitrary<infer W> ? W : never;

/** The cells of a sheet of plain numbers as they are read, from A1 on. */
export function valuesOf({ cells }: Sheet): CellValue[][] {
  const rows: CellValue[][] = [];
  for (const { row, column, content } of cells) {
    rows[row] ??= [];
    (rows[row] as CellValue[])[column] = plainOf(content);
  }
  return Array.from(rows, (row) => Array.from(row ?? [], (value) => value ?? null));
}

/** The same cells with what was written on them. */
export function writtenOn(values: readonly (readonly CellValue[])[], { pours, over }: Writing): CellValue[][] {
  const rows = values.map((row) => [...row]);
  let pots = -1;
  for (const row of rows) {
    const kind = kindOfKey(row[AT.key]);
    if (kind === "pot") pots++;
    const poured = pots < 0 ? null : pours[pots % pours.length];
    if (!poured) continue;
    if (kind === "wax" || kind === "scent" || kind === "additive") {
      row[AT.actual] = Number(row[AT.planned]) * poured.ratio;
      row[AT.lotUsed] = poured.lot;
    }
    if (kind === "vessel") {
      row[AT.good] = Math.max(0, Number(row[AT.count]) - poured.spoilt);
      row[AT.weighed] = Number(row[AT.fill]) * Math.max(0.9, poured.ratio);
    }
  }
  const cells = rows.flatMap((row, r) => row.map((_, c) => [r, c] as const));
  for (const [at, value] of over) {
    const [r, c] = cells[at % cells.length] ?? [0, 0];
    (rows[r] as CellValue[])[c] = value;
  }
  return rows;
}
