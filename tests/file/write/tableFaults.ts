import { attributesOf } from "../../samples/zipped";

type Parts = Readonly<Record<string, string>>;
interface Area {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * What is wrong between tables and the cells they stand on: headings that are not the columns' names, a filter beyond
 * its table. Excel repairs such a workbook, and takes the table away (from memory).
 */
export function tableFaults(parts: Parts): string[] {
  const texts = [...(parts["xl/sharedStrings.xml"] ?? "").matchAll(/<si>(.*?)<\/si>|<si\/>/gs)].map(([si]) =>
    textOf(si),
  );
  return Object.entries(parts)
    .filter(([path]) => /^xl\/worksheets\/_rels\//.test(path))
    .flatMap(([path, rels]) => {
      const sheet = parts[path.replace("_rels/", "").replace(/\.rels$/, "")] ?? "";
      return [...rels.matchAll(/<Relationship\b[^>]*>/g)]
        .map(([tag]) => attributesOf(tag))
        .filter(({ Type = "" }) => Type.endsWith("/table"))
        .map(({ Target = "" }) => new URL(Target, "zip:/xl/worksheets/").pathname.slice(1))
        .flatMap((table) => [
          ...headings(table, parts[table] ?? "", sheet, texts),
          ...filter(table, parts[table] ?? ""),
        ]);
    });
}

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

/** The texts of a shared text or of a cell that holds its own, without how they are read aloud. */
const textOf = (xml: string): string =>
  [...xml.replace(/<rPh\b.*?<\/rPh>/gs, "").matchAll(/<t\b[^>]*>(.*?)<\/t>/gs)]
    .map(([, text = ""]) => plain(text))
    .join("");

const ENTITIES: Record<string, string> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

function plain(text: string): string {
  return text
    .replace(/&#(x?)([\da-f]+);/gi, (_, hex, code) => String.fromCodePoint(Number.parseInt(code, hex ? 16 : 10)))
    .replace(/&(amp|lt|gt|quot|apos);/g, (_, name: string) => ENTITIES[name] ?? "")
    .replace(/_x([\da-f]{4})_/gi, (_, code) => String.fromCharCode(Number.parseInt(code, 16)));
}

function areaOf(ref: string): Area {
  const [first = "", last = first] = ref.split(":");
  const column = (address: string): number =>
    [...address.replace(/[^A-Z]/g, "")].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  const row = (address: string): number => Number(address.replace(/\D/g, ""));
  return { left: column(first), top: row(first), right: column(last), bottom: row(last) };
}
