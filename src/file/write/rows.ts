import { cellAddress, cellPlace } from "../addresses";
import type { BookCell, BookRow } from "../book";
import { same } from "../same";
import { type CellContext, cellXml, changedCell, ownFormula, sameCell, sharedGroup } from "./cells";
import { HIGHEST_ROW } from "./limits";
import { attributeOf, cut, element, join, openingTag, withAttributes } from "./rawXml";

export interface RowContext extends CellContext {
  /** Whether the file's days count from 1904: then its numbers are not always those of the book. */
  readonly from1904: boolean;
}

type RawCells = Map<number, string>;

/** A row of the file: its raw text, and that of its cells by column. */
interface RawRow {
  readonly raw: string;
  readonly cells: RawCells;
}

/** The `sheetData` element with what differs; all other rows and cells stay as they stand. */
export function changedRows(
  raw: string,
  before: readonly BookRow[],
  now: readonly BookRow[],
  context: RowContext,
): string {
  const data = cut(raw);
  const old = rawRows(data.pieces.map((piece) => piece.raw));
  const said = context.from1904 ? before.map((row) => withFileNumbers(row, old.get(row.row)?.cells)) : before;
  const [were, are] = [byRow(said), byRow(now)];
  const broken = brokenGroups(old, were, are);
  const numbers = [...new Set([...old.keys(), ...are.keys()])].sort((a, b) => a - b);
  const rows = numbers.map((row) => {
    const [rawRow, was, is] = [old.get(row), were.get(row), are.get(row)];
    const breaks = [...(rawRow?.cells.values() ?? [])].some((cell) => broken.has(sharedGroup(cell) ?? ""));
    if (rawRow && !breaks && same(was, is)) return rawRow.raw;
    return rowXml(row, rawRow, was, is, broken, context);
  });
  return join({ ...data, pieces: [{ name: "", raw: rows.join("") }] });
}

const byRow = (rows: readonly BookRow[]): Map<number, BookRow> => new Map(rows.map((row) => [row.row, row]));
const byColumn = (row: BookRow | undefined): Map<number, BookCell> =>
  new Map((row?.cells ?? []).map((cell) => [cell.column, cell]));

/** A row with its numbers as the file has them. */
function withFileNumbers(row: BookRow, raw: RawCells | undefined): BookRow {
  const cells = row.cells.map((cell) => {
    const inside = typeof cell.value === "number" ? cut(raw?.get(cell.column) ?? "<c/>").pieces : [];
    const value = inside.find(({ name }) => name === "v")?.raw.replace(/<[^>]*>/g, "");
    return value === undefined ? cell : { ...cell, value: Number(value) };
  });
  return { ...row, cells };
}

/** Rows and cells need not say where they are: then they follow those before them. */
function rawRows(pieces: readonly string[]): Map<number, RawRow> {
  const rows = new Map<number, RawRow>();
  let next = 0;
  for (const raw of pieces) {
    if (!raw.startsWith("<row")) continue;
    const said = attributeOf(raw, "r");
    const row = said === undefined ? next : Number(said) - 1;
    next = row + 1;
    rows.set(row, { raw, cells: rawCells(raw, row) });
  }
  return rows;
}

function rawCells(raw: string, row: number): RawCells {
  const cells: RawCells = new Map();
  let next = 0;
  for (const { name, raw: cell } of cut(raw).pieces) {
    if (name !== "c") continue;
    const said = attributeOf(cell, "r");
    const column = said === undefined ? next : (cellPlace(said)?.column ?? next);
    next = column + 1;
    cells.set(column, said === undefined ? withAttributes(cell, { r: cellAddress(row, column) }) : cell);
  }
  return cells;
}

/** Groups of cells that share a formula, of which a cell no longer has it: the others have to say theirs themselves. */
function brokenGroups(
  old: ReadonlyMap<number, RawRow>,
  were: ReadonlyMap<number, BookRow>,
  are: ReadonlyMap<number, BookRow>,
): ReadonlySet<string> {
  const broken = new Set<string>();
  for (const [row, { raw, cells }] of old) {
    if (!raw.includes("shared")) continue;
    const [was, is] = [byColumn(were.get(row)), byColumn(are.get(row))];
    for (const [column, cell] of cells) {
      const group = sharedGroup(cell);
      if (group !== undefined && was.get(column)?.formula !== is.get(column)?.formula) broken.add(group);
    }
  }
  return broken;
}

function rowXml(
  row: number,
  old: RawRow | undefined,
  was: BookRow | undefined,
  is: BookRow | undefined,
  broken: ReadonlySet<string>,
  context: CellContext,
): string {
  const tag = rowTag(row, old, was, is, context);
  const [before, now] = [byColumn(was), byColumn(is)];
  const columns = [...new Set([...(old?.cells.keys() ?? []), ...now.keys()])].sort((a, b) => a - b);
  const cells = columns.map((column) => {
    const [raw, wasCell, cell] = [old?.cells.get(column), before.get(column), now.get(column)];
    if (raw === undefined) return cell ? cellXml(cell, row, context) : "";
    // Nothing that the book tells of, neither then nor now.
    if (!cell) return wasCell ? "" : raw;
    if (!wasCell) return cellXml(cell, row, context);
    const kept = broken.has(sharedGroup(raw) ?? "") && cell.formula !== undefined && cell.formula === wasCell.formula;
    const own = kept ? ownFormula(raw, cell.formula as string) : raw;
    return sameCell(wasCell, cell) ? own : changedCell(own, wasCell, cell, row, context);
  });
  const inside = cells.join("");
  const isEmpty = inside === "" && !/\s(?!r=|spans=)[\w:]+=/.test(tag);
  return isEmpty ? "" : `${tag}${inside}</row>`;
}

function rowTag(
  row: number,
  old: RawRow | undefined,
  was: BookRow | undefined,
  is: BookRow | undefined,
  context: CellContext,
): string {
  const start = old ? openingTag(old.raw).replace(/\s*\/>$/, ">") : element("row", { r: row + 1 }, " ").slice(0, -7);
  const style = is?.style;
  return withAttributes(start, {
    r: row + 1,
    // Only a help for reading, and wrong once a cell stands outside of it.
    spans: null,
    ...(was?.height !== is?.height && {
      ht: is?.height === undefined ? null : Math.min(is.height, HIGHEST_ROW),
      customHeight: is?.height === undefined ? null : 1,
    }),
    ...(was?.hidden !== is?.hidden && { hidden: is?.hidden ? 1 : null }),
    ...(was?.style !== style && {
      s: style === undefined ? null : context.styleOf({ style }),
      customFormat: style === undefined ? null : 1,
    }),
  });
}
