/** The links of a sheet: those in texts, and those that their cells carry beside what they hold. */

import type { ICellData, IWorksheetData } from "@univerjs/core";
import type { Book, BookSheet, Link } from "../../../file/book";
import { inAnyCase, renamedIn } from "../../../file/write/renames";
import { asideOf } from "./cellData";
import { asListed } from "./keptAsWas";
import { targetOf, urlOf } from "./links";
import { documentLink } from "./richText";
import type { Context } from "./sheetOf";

interface Found {
  readonly row: number;
  readonly column: number;
  /** Of a link of the file, its number; of a newer one infinity. */
  readonly number: number;
  /** Where it leads; nothing for a link that Univer was not given. */
  readonly url?: string;
}

export function linksOf(sheet: Partial<IWorksheetData>, context: Context): BookSheet["links"] {
  const originals = context.original?.links ?? [];
  const found = Object.entries(sheet.cellData ?? {}).flatMap(([row, cells]) =>
    Object.entries(cells as Record<string, ICellData | null>).flatMap(([column, cell]) => {
      const link = cell && linkIn(cell);
      return link ? [{ ...link, row: Number(row), column: Number(column) }] : [];
    }),
  );
  const sorted = found.sort((a, b) => (a.number === b.number ? 0 : a.number - b.number));
  return asListed(
    originals,
    sorted.flatMap((one) => linkNow(one, originals[one.number], context) ?? []),
  );
}

function linkIn(cell: ICellData): Pick<Found, "number" | "url"> | null {
  const { link } = asideOf(cell);
  if (link !== undefined) return { number: link };
  const inText = cell.p?.body && documentLink(cell.p.body);
  if (!inText) return null;
  const number = /^l(\d+)$/.exec(inText.id)?.[1];
  return { number: number === undefined ? Number.POSITIVE_INFINITY : Number(number), url: inText.url };
}

function linkNow({ row, column, url }: Found, original: Link | undefined, context: Context): Link | null {
  const book = context.before?.book;
  const isUnchanged = original && book && (url === undefined || url === urlOf(original, book));
  if (isUnchanged) {
    const { area } = original;
    const place = original.place && renamedIn(original.place, renamesOf(book, context));
    if (area.row === row && area.column === column && place === original.place) return original;
    return { ...original, area: { ...area, row, column }, place };
  }
  if (url === undefined) return null;
  const definedName = (id: string) => context.plugins.names[id]?.name;
  const area = { row, column, rows: 1, columns: 1 };
  return { area, ...targetOf(url, context.sheetName, definedName), tip: original?.tip ?? null };
}

/** Sheets that are called another way than in the file. */
const renamesOf = ({ sheets }: Pick<Book, "sheets">, { sheetName }: Context) =>
  inAnyCase(
    sheets.flatMap(({ id, name }) => {
      const now = sheetName(id);
      return now === undefined || now === name ? [] : [[name, now] as const];
    }),
  );
