import { overlap } from "../addresses";
import type { BookSheet, BookTable } from "../book";
import { same } from "../same";
import { contentTypes } from "../zip/package";
import type { PackageEdit } from "./packageEdit";
import { attributeOf, type Cut, element } from "./rawXml";
import { put } from "./sheetOrder";
import { changedTable, newTable } from "./tableXml";

const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml";

interface InFile {
  /** Of the relation from the sheet to the table. */
  readonly relation: string;
  readonly path: string;
  readonly table: BookTable;
}

/** Puts a sheet's tables into the file: their own parts, and the list of them in the sheet. */
export function putTables(file: PackageEdit, path: string, sheet: Cut, before: BookSheet, now: BookSheet): void {
  const old = tablesInFile(file, path, before);
  const sources = matched(old, now.tables);
  const gone = old.filter((one) => !sources.includes(one));
  for (const { relation, path: part } of gone) {
    file.unrelate(path, relation);
    file.remove(part);
  }
  const relations = now.tables.map((table, i) => {
    const source = sources[i];
    if (source) {
      if (!same(source.table, table))
        file.write(source.path, changedTable(file.read(source.path), source.table, table));
      return source.relation;
    }
    const part = file.freePath("xl/tables/table", ".xml");
    file.add(part, TYPE, newTable(table, freeId(file)));
    return file.relate(path, "table", { path: part });
  });
  if (gone.length === 0 && relations.length === old.length) return;
  const list = relations.map((id) => element("tablePart", { "r:id": id }));
  put(sheet, "tableParts", list.length === 0 ? "" : element("tableParts", { count: list.length }, ...list));
}

/** The tables of the book by the parts that they came from. */
function tablesInFile(file: PackageEdit, path: string, before: BookSheet): InFile[] {
  return file.relations(path).flatMap(({ id, kind, target: part }) => {
    if (kind !== "table") return [];
    const raw = file.text(part);
    const name = raw && (attributeOf(raw, "displayName") ?? attributeOf(raw, "name"));
    const table = before.tables.find((one) => one.name === name);
    return table ? [{ relation: id, path: part, table }] : [];
  });
}

/** Which table of the file each one is: by its name, or else, renamed, by where it stands. */
function matched(old: readonly InFile[], tables: readonly BookTable[]): (InFile | undefined)[] {
  const free = new Set(old);
  const take = (found: InFile | undefined): InFile | undefined => {
    if (found) free.delete(found);
    return found;
  };
  const named = tables.map(({ name }) => take(old.find(({ table }) => table.name === name)));
  return named.map((found, i) => {
    const area = tables[i]?.area;
    return found ?? take(area && [...free].find(({ table }) => overlap(table.area, area)));
  });
}

/** A number that no table of the workbook has. */
function freeId(file: PackageEdit): number {
  const typeOf = contentTypes(file);
  const ids = [...file.parts.keys()]
    .filter((path) => typeOf(path) === TYPE)
    .map((path) => Number(attributeOf(file.read(path), "id")));
  return Math.max(0, ...ids) + 1;
}
