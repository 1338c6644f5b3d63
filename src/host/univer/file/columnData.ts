/** Columns of a file as Univer's, and back. */

import type { IColumnData, IWorksheetData } from "@univerjs/core";
import type { ColumnRange } from "../../../file/book";
import type { Extent } from "./areas";
import { YES } from "./codes";
import { LengthMemory, widthOf, widthPixels } from "./lengths";
import { type StyleNumbers, styleId } from "./styleData";

type Columns = Record<number, Partial<IColumnData>>;

export function columnData(columns: readonly ColumnRange[], extent: Extent): Columns {
  const data: Columns = {};
  for (const { first, last, width, hidden, style } of columns) {
    for (let column = first; column <= Math.min(last, extent.columns - 1); column++) {
      data[column] = {
        ...(width !== undefined && { w: widthPixels(width) }),
        ...(hidden && { hd: YES }),
        ...(style && { s: styleId(style) }),
      };
    }
  }
  return data;
}

/** Columns with something in common next to each other. Those beyond the sheet as Univer has it are as in the file. */
export function columnRanges(
  data: IWorksheetData["columnData"] | undefined,
  originals: readonly ColumnRange[],
  extent: Extent,
  styles: StyleNumbers,
): ColumnRange[] {
  const memory = new LengthMemory();
  for (const { first, last, width } of originals) {
    if (width === undefined) continue;
    for (let i = first; i <= Math.min(last, extent.columns - 1); i++) memory.note(i, width, widthPixels(width));
  }
  const ranges: ColumnRange[] = [];
  const add = (column: ColumnRange) => {
    const before = ranges.at(-1);
    const { first, last, ...look } = column;
    if (before && before.last === first - 1 && JSON.stringify(lookOf(before)) === JSON.stringify(look)) {
      ranges[ranges.length - 1] = { ...before, last };
    } else ranges.push(column);
  };
  for (const [key, said] of Object.entries((data ?? {}) as Columns).sort(([a], [b]) => Number(a) - Number(b))) {
    const column = Number(key);
    if (!said || column >= extent.columns) continue;
    const style = styles.of(said.s);
    const look = {
      ...(said.w !== undefined && { width: memory.at(column, said.w) ?? widthOf(said.w) }),
      ...(said.hd === YES && { hidden: true }),
      ...(style !== 0 && { style }),
    };
    if (Object.keys(look).length > 0) add({ first: column, last: column, ...look });
  }
  for (const one of originals) {
    if (one.last >= extent.columns) add({ ...ordered(one), first: Math.max(one.first, extent.columns) });
  }
  return ranges;
}

const ordered = ({ first, last, width, hidden, style }: ColumnRange): ColumnRange => ({
  first,
  last,
  ...(width !== undefined && { width }),
  ...(hidden && { hidden }),
  ...(style && { style }),
});

const lookOf = ({ first: _, last: __, ...look }: ColumnRange) => look;
