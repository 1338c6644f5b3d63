import type { NewRows } from "../../sheet/addition";
import type { Cell } from "../../sheet/sheet";
import { type Contents, contentsOf } from "./layOut";
import { closedAt, refuseClosed } from "./sentences";
import { textOfTyped } from "./typedText";

/** A table as it is before rows are added to it, asked for and not there yet. */
interface Asked {
  readonly added: NewRows;
  readonly table: Excel.Table;
  readonly header: Excel.Range;
  readonly body: Excel.Range;
  /** What of its rows holds anything. */
  readonly used: Excel.Range;
}

/** Rows that are about to be added to a table. */
export interface AddingRows {
  readonly name: string;
  readonly table: Excel.Table;
  readonly contents: Contents;
  /** How many rows the table has before. */
  readonly before: number;
  /** How many of the new rows stand in blank ones that the table ends with. */
  readonly free: number;
  /** Where the first new row stands on the sheet, and the columns of the table. */
  readonly place: { readonly row: number; readonly column: number; readonly columns: number };
}

/** Asks for what must be known of a table before rows are added to it; the caller syncs. */
export function askForTable(context: Excel.RequestContext, added: NewRows): Asked {
  const table = context.workbook.tables.getItem(added.table);
  table.load(closedAt("worksheet/"));
  table.rows.load("count");
  const body = table.getDataBodyRange().load("rowIndex,rowCount");
  return {
    added,
    table,
    header: table.getHeaderRowRange().load("values,columnIndex"),
    body,
    used: body.getUsedRangeOrNullObject(true).load("rowIndex,rowCount"),
  };
}

/** Where the rows will stand and what they hold; refuses what a table cannot take. */
export function planRows({ added, table, header, body, used }: Asked): AddingRows {
  refuseClosed(table.worksheet);
  const { table: name, headings, rows } = added;
  const there = (header.values[0] ?? []).map(String);
  const places = headings.map((heading) => there.indexOf(heading));
  const missing = headings[places.indexOf(-1)];
  if (missing !== undefined) {
    throw new Error(`The table ${name} has no column "${missing}". Name the column so again, then try once more.`);
  }
  // A table that was begun empty ends with blank rows: they are filled first.
  const filled = used.isNullObject ? 0 : used.rowIndex + used.rowCount - body.rowIndex;
  const place = { row: body.rowIndex + filled, column: header.columnIndex, columns: there.length };
  const cells = rows.flatMap((row, r) =>
    row.flatMap((content, i): Cell[] =>
      content ? [{ row: place.row + r, column: place.column + (places[i] as number), content }] : [],
    ),
  );
  return {
    name,
    table,
    contents: contentsOf(cells, { ...place, rows: rows.length }),
    before: table.rows.count,
    free: Math.min(body.rowCount - filled, rows.length),
    place,
  };
}

/**
 * Queues the rows. Each is added empty, so that Excel gives it the formulas and the formats of its columns, and is
 * filled then: a value sent along, even an empty one, would take the formula's place. What stands below the table, its
 * total row too, Excel moves down, or refuses to.
 */
export function queueRows({ table, contents: { constants, formulas }, free, place }: AddingRows): void {
  const rows = constants.length;
  const [first] = constants.slice(free).map(() => table.rows.add());
  const added =
    free === 0 && first
      ? first.getRange().getResizedRange(rows - 1, 0)
      : table.worksheet.getRangeByIndexes(place.row, place.column, rows, place.columns);
  if (formulas) added.formulas = formulas;
  added.values = constants;
}

/** Asks for what was added of some rows, to take it back; gives what does that. */
export function askForAdded(
  context: Excel.RequestContext,
  { name, contents: { constants }, before, free, place }: AddingRows,
): { areOurs(): boolean; takeBack(): void } {
  const table = context.workbook.tables.getItem(name);
  table.rows.load("items/values");
  const blank =
    free > 0
      ? table.worksheet.getRangeByIndexes(place.row, place.column, free, place.columns).load("values")
      : undefined;
  const added = () => table.rows.items.slice(before);
  const isOurs = (cells: readonly unknown[], r: number): boolean =>
    constants[r]?.every((sent, c) => sent === null || cells[c] === "" || cells[c] === held(sent)) ?? false;
  return {
    // Somebody else may have written in them at the same moment.
    areOurs: () => [...(blank?.values ?? []), ...added().map(({ values: [cells = []] }) => cells)].every(isOurs),
    takeBack: () => {
      for (const row of added().reverse()) row.delete();
      const cleared = constants.slice(0, free).map((row) => row.map((sent) => (sent === null ? null : "")));
      if (blank) blank.values = cleared;
    },
  };
}

/** What a cell holds of what was sent. */
const held = (sent: string | number): string | number => (typeof sent === "string" ? textOfTyped(sent) : sent);
