import type { Tables } from "../plan/buildRun";
import type { KindName } from "./kinds";
import type { Problem } from "./tableReader";

/** Rows right below a table, which it does not take in by itself: nothing is written until the maker has decided. */
export function rowsOutside(tables: Tables): Problem[] {
  return (Object.keys(tables) as KindName[]).flatMap((kind): Problem[] => {
    const { rows, below } = tables[kind] ?? {};
    if (!rows || !below || below.rows === 0) return [];
    const text = below.isLeftOut
      ? `${countOf(below.rows)} below the table left out`
      : `${countOf(below.rows)} right below the table, no part of it: to be taken in or left out`;
    return [{ kind, row: rows.length, text, stops: !below.isLeftOut, below: below.rows }];
  });
}

const countOf = (rows: number): string => `${rows} ${rows === 1 ? "row" : "rows"}`;
