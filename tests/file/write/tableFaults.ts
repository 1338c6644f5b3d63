import { attributesOf } from "../../samples/zipped";
import {
  areaOf,
  doubled,
  inside,
  isA,
  overlapping,
  type Parts,
  partWith,
  plain,
  relationsOf,
  tags,
  textOf,
} from "./parts";

/**
 * What is wrong between tables and the cells they stand on: headings that are not the columns' names, a filter beyond
 * its table. Excel repairs such a workbook, and takes the table away (from memory).
 */
export function tableFaults(parts: Parts): string[] {
  const texts = [...partWith(parts, "sst").matchAll(/<si>(.*?)<\/si>|<si\/>/gs)].map(([si]) => textOf(si));
  const sheets = Object.keys(parts).filter((path) => isA(parts[path] ?? "", "worksheet"));
  return [
    ...sheets.flatMap((path) => {
      const sheet = parts[path] ?? "";
      const tables = relationsOf(parts, path)
        .filter(({ kind }) => kind === "table")
        .map(({ target }) => target);
      const refs = tables.map((table) => head(parts[table] ?? "").ref ?? "");
      const merges = tags(inside(sheet, "mergeCells"), "mergeCell").map(({ ref = "" }) => ref);
      return [
        ...tables.flatMap((table) => [
          ...headings(table, parts[table] ?? "", sheet, texts),
          ...height(table, parts[table] ?? ""),
          ...filter(table, parts[table] ?? ""),
        ]),
        ...(tags(sheet, "tablePart").length === tables.length ? [] : [`${path} does not list its tables`]),
        ...overlapping([...merges, ...refs]).map((ref) => `${path} has ${ref} over another block`),
      ];
    }),
    ...ownNumbers(parts),
  ];
}

/** Tables have numbers and names of their own, in the whole workbook. */
function ownNumbers(parts: Parts): string[] {
  const all = Object.entries(parts).filter(([, xml]) => isA(xml, "table"));
  const heads = all.map(([, xml]) => head(xml));
  const names = tags(partWith(parts, "workbook"), "definedName");
  const columns = all.flatMap(([path, xml]) => {
    const own = tags(xml, "tableColumn");
    const headings = own.map(({ name }) => name?.toLowerCase());
    return [...doubled(own.map(({ id }) => id)), ...doubled(headings)].map(
      (one) => `${path} has a column ${one} twice`,
    );
  });
  const called = heads.map(({ displayName = "" }) => displayName.toLowerCase());
  return [
    ...doubled(heads.map(({ id }) => id)).map((id) => `two tables have the number ${id}`),
    ...doubled([...names.map(({ name = "" }) => name.toLowerCase()).filter(isOnce), ...called]).map(
      (name) => `two tables or names are called ${name}`,
    ),
    ...called
      .filter((name) => !/^[\p{L}_\\][\p{L}\p{N}_.\\]*$/u.test(name) || /^(?:[a-z]{1,3}\d+|r\d*c\d*|[rc])$/.test(name))
      .map((name) => `no table can be called ${name}`),
    ...columns,
  ];
}

const isOnce = <T>(one: T, at: number, all: readonly T[]): boolean => all.indexOf(one) === at;

function headings(path: string, table: string, sheet: string, texts: readonly string[]): string[] {
  const { ref = "", headerRowCount = "1" } = head(table);
  if (headerRowCount === "0") return [];
  const { left, top, right } = areaOf(ref);
  const columns = [...table.matchAll(/<tableColumn\b[^>]*>/g)].map(([tag]) => plain(attributesOf(tag).name ?? ""));
  const row = new RegExp(`<row\\b[^>]*\\br="${top}"[^>]*>(.*?)</row>`, "s").exec(sheet)?.[1] ?? "";
  const cells = new Map(
    [...row.matchAll(/<c\b([^>]*?)(?:\/>|>(.*?)<\/c>)/gs)].map(([, tag = "", inside = ""]) => {
      const { r = "", t } = attributesOf(tag);
      const value = /<v>(.*?)<\/v>/s.exec(inside)?.[1] ?? "";
      const text = t === "s" ? texts[Number(value)] : t === "str" ? plain(value) : textOf(inside);
      return [areaOf(r).left, text] as const;
    }),
  );
  return [
    ...(columns.length === right - left + 1 ? [] : [`${path} has ${columns.length} columns on ${ref}`]),
    ...columns
      .filter((name, i) => cells.get(left + i) !== name)
      .map((name) => `${path} has a column ${name} under another heading`),
  ];
}

/** A table has a row of its own under the headings and above the totals. */
function height(path: string, table: string): string[] {
  const { ref = "", headerRowCount = "1", totalsRowCount = "0" } = head(table);
  const { top, bottom } = areaOf(ref);
  return bottom - top + 1 > Number(headerRowCount) + Number(totalsRowCount) ? [] : [`${path} has no row of its own`];
}

/** A filter covers the columns of its table and begins with its headings; a total row is beyond it. */
function filter(path: string, table: string): string[] {
  const tag = /<autoFilter\b[^>]*>/.exec(table)?.[0];
  if (!tag) return [];
  const { ref = "", totalsRowCount = "0" } = head(table);
  const [whole, filtered] = [areaOf(ref), areaOf(attributesOf(tag).ref ?? "")];
  const fits =
    filtered.left === whole.left &&
    filtered.right === whole.right &&
    filtered.top === whole.top &&
    filtered.bottom <= whole.bottom - Number(totalsRowCount);
  const beyond = [...table.matchAll(/<filterColumn\b[^>]*>/g)].some(
    ([column]) => Number(attributesOf(column).colId) > whole.right - whole.left,
  );
  return fits && !beyond ? [] : [`${path} has a filter that is not within it`];
}

const head = (table: string): Record<string, string> => attributesOf(/<table\b[^>]*>/.exec(table)?.[0] ?? "");
