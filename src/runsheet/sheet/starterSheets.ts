import { choicesOf } from "../../sheet/columnChoices";
import type { Cell, Sheet } from "../../sheet/sheet";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import { TABLE_TYPES, type TableTypeId } from "../tables/registry";
import type { Present, Starter, TableType } from "../tables/tableType";

const ROWS = 12;
/** Free rows below those that are filled. */
const SPARE = 4;

/** The tables a new workbook begins with, in the order in which they are filled in. */
const FIRST = ["vessels", "scents", "pour"] as const;

/**
 * The tables a new workbook begins with: their rows are free, ready for the maker's own. Those that are there by
 * name are left out.
 */
export function starterSheets(unit: WeightUnit, present: readonly Present[] = []): Sheet[] {
  const there = (name: string) => present.find((table) => sameName(table.name) === sameName(name));
  return FIRST.map((id) => starterSheet(id, unit, there)).filter(({ name }) => !there(name));
}

/** A table with free rows. */
export function starterSheet(
  id: TableTypeId,
  unit: WeightUnit,
  present: StarterArguments[1] = () => undefined,
  known: StarterArguments[2] = [],
): Sheet {
  const type: TableType = TABLE_TYPES[id];
  const starter = type.starter(unit, present, known);
  const name = starter.name ?? type.name;
  return sheetOf(name, starter.name ?? type.table ?? name, starter);
}
type StarterArguments = Parameters<TableType["starter"]>;

function sheetOf(name: string, table: string, { note, columns, rows = [] }: Starter): Sheet {
  const count = Math.max(ROWS, rows.length + SPARE);
  const cells: Cell[] = [
    { row: 0, column: 0, content: { text: name }, look: "title" },
    { row: 1, column: 0, content: { text: note }, look: "note", across: columns.length },
  ];
  for (const [column, { heading, format, formula }] of columns.entries()) {
    cells.push({ row: 3, column, content: { text: heading }, look: "heading" });
    for (let row = 4; row < 4 + count; row++) {
      cells.push({
        row,
        column,
        look: formula ? "body" : "input",
        ...(format && { format }),
        ...contentOf(formula, rows[row - 4]?.[column]),
      });
    }
  }
  return {
    name,
    widths: columns.map(({ width }) => width ?? 12),
    cells,
    tables: [
      {
        name: table,
        row: 3,
        column: 0,
        headings: columns.map(({ heading }) => heading),
        rows: count,
        ...choicesOf(columns),
      },
    ],
    frozenRows: 4,
  };
}

function contentOf(formula: string | undefined, text: string | undefined): Pick<Cell, "content"> {
  if (formula) return { content: { formula } };
  return text ? { content: { text } } : {};
}
