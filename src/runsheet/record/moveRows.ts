import type { Addition } from "../../sheet/addition";
import type { Content } from "../../sheet/sheet";
import { tableSheet } from "../../sheet/tableSheet";
import type { WeightUnit } from "../settings";
import { CARRIED, type Opening } from "../stock/openings";
import { moveColumns } from "../tables/moves";
import type { TableRows } from "../tables/tableRows";

/** A row for the table of moves. */
export interface NewMove {
  readonly date: number;
  readonly item: string;
  readonly lot: string;
  /** Above 0 received, below 0 used, as the table counts it. */
  readonly change: number;
  readonly paid?: number | undefined;
  readonly bestBefore?: number | undefined;
  readonly run?: string;
  readonly note?: string;
}

/** The row that carries what stood in On hand over into the moves. */
export const openingMove = ({ item, change }: Opening, date: number): NewMove => ({
  ...{ date, item, lot: "", change },
  note: CARRIED,
});

/** The table of moves as it stands in the workbook. */
export type MovesTable = TableRows<"moves"> & { readonly name: string };

/** The name of the table that is begun where there is none. */
const NAME = "Moves";

/**
 * Rows for the table of moves as it stands; where there is none, a new one on a sheet of its own, in this unit. A
 * column that the maker's table does not have is left out.
 */
export function moveAddition(moves: readonly NewMove[], table: MovesTable | undefined, unit: WeightUnit): Addition {
  const columns = moveColumns(unit);
  const rows = moves.map((move) => columns.map(({ field }) => contentOf(move[field])));
  if (!table) return tableSheet({ name: NAME, table: NAME, columns }, rows);
  const there = columns.flatMap(({ field }, i) => {
    const heading = table.headings[table.columns[field] ?? -1];
    return heading === undefined ? [] : [{ heading, i }];
  });
  return {
    table: table.name,
    headings: there.map(({ heading }) => heading),
    rows: rows.map((row) => there.map(({ i }) => row[i] ?? null)),
  };
}

function contentOf(value: string | number | undefined): Content | null {
  if (value === undefined || value === "") return null;
  return typeof value === "number" ? { number: value } : { text: value };
}
