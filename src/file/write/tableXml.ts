import { areaAddress } from "../addresses";
import type { BookTable, TableColumn } from "../book";
import { callsOurs } from "../formula/callsOurs";
import { toFileFormula } from "../formula/toFile";
import { same } from "../same";
import { filterXml } from "./filterXml";
import { SPACE, XML } from "./packageEdit";
import { attributeOf, type Cut, cut, element, escapeText, join, type Piece, withAttributes } from "./rawXml";

/** The part of a table that the file does not have yet. */
export function newTable(table: BookTable, id: number): string {
  const start = `${XML}<table xmlns="${SPACE}" id="${id}"/>`;
  return changedTable(start, null, table);
}

/** A table's part with what differs. */
export function changedTable(xml: string, before: BookTable | null, now: BookTable): string {
  const attributed = withAttributes(xml, {
    ...(before?.name !== now.name && { name: now.name, displayName: now.name }),
    ref: areaAddress(now.area),
    ...(before?.hasHeadings !== now.hasHeadings && { headerRowCount: now.hasHeadings ? null : 0 }),
    ...(before?.hasTotals !== now.hasTotals && {
      totalsRowCount: now.hasTotals ? 1 : null,
      totalsRowShown: now.hasTotals ? null : 0,
    }),
  });
  const table = cut(attributed);
  const find = (name: string): Piece | undefined => table.pieces.find((piece) => piece.name === name);
  const columns = columnsXml(before, now, find("tableColumns")?.raw);
  const filter = filterXml(before?.filter ?? null, now.filter, find("autoFilter")?.raw);
  const looks = before && before.look === now.look && before.stripes === now.stripes;
  const look = looks ? (find("tableStyleInfo")?.raw ?? "") : lookXml(now, find("tableStyleInfo")?.raw);
  const sort = same(before?.area, now.area) ? (find("sortState")?.raw ?? "") : "";
  const rest = find("extLst")?.raw ?? "";
  return join({ ...table, pieces: [{ name: "", raw: filter + sort + columns + look + rest }] });
}

const lookXml = ({ look, stripes }: BookTable, raw: string | undefined): string =>
  raw === undefined
    ? element("tableStyleInfo", {
        name: look,
        showFirstColumn: false,
        showLastColumn: false,
        showRowStripes: stripes,
        showColumnStripes: false,
      })
    : withAttributes(raw, { name: look, showRowStripes: stripes });

/** A column keeps its number as long as its heading, or else its place, is that of a column that was there. */
function columnsXml(before: BookTable | null, now: BookTable, raw: string | undefined): string {
  const old = raw === undefined ? [] : cut(raw).pieces.filter(({ name }) => name === "tableColumn");
  const was = before?.columns ?? [];
  const used = new Set<number>();
  const take = (at: number): number | undefined => {
    if (at < 0 || !old[at] || used.has(at)) return undefined;
    used.add(at);
    return at;
  };
  const byHeading = now.columns.map(({ heading }) => take(was.findIndex((one) => one.heading === heading)));
  const sources = byHeading.map((found, i) => found ?? (was.length === now.columns.length ? take(i) : undefined));
  let last = Math.max(0, ...old.map((piece) => Number(attributeOf(piece.raw, "id"))));
  const columns = now.columns.map((column, i) => {
    const source = sources[i];
    if (source === undefined) return columnXml(`<tableColumn id="${++last}"/>`, null, column);
    return columnXml(old[source]?.raw ?? "", was[source] ?? null, column);
  });
  return element("tableColumns", { count: columns.length }, ...columns);
}

function columnXml(raw: string, before: TableColumn | null, now: TableColumn): string {
  if (before && same(before, now)) return raw;
  const { heading, formula, total } = now;
  const inFile = total?.function ?? (total?.formula === undefined ? undefined : "custom");
  const column: Cut = cut(
    withAttributes(raw, {
      name: before?.heading === heading ? undefined : heading,
      totalsRowFunction: inFile ?? null,
      totalsRowLabel: total?.label ?? null,
    }),
  );
  const inside = column.pieces.filter(({ name }) => !["calculatedColumnFormula", "totalsRowFormula"].includes(name));
  const formulas = formulaXml("calculatedColumnFormula", formula) + formulaXml("totalsRowFormula", total?.formula);
  const written = join({ ...column, pieces: [{ name: "", raw: formulas }, ...inside] });
  return formulas === "" && inside.length === 0 ? written.replace(/><\/[^>]*>$/, "/>") : written;
}

const formulaXml = (name: string, formula: string | undefined): string =>
  formula === undefined ? "" : element(name, { array: callsOurs(formula) || null }, escapeText(toFileFormula(formula)));
