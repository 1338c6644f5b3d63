import { attributesOf, partsOf } from "../../samples/zipped";
import { metadataFaults } from "./metadataFaults";
import { tableFaults } from "./tableFaults";

/** What is wrong with a workbook file's package, by rules that the Open XML schema says or that it cannot say. */
export function faultsOf(bytes: Uint8Array): string[] {
  const parts = partsOf(bytes);
  return [
    ...contents(parts),
    ...relations(parts),
    ...sheets(parts),
    ...tables(parts),
    ...tableFaults(parts),
    ...metadataFaults(parts["xl/metadata.xml"] ?? ""),
    ...workbook(parts),
  ];
}

type Parts = Readonly<Record<string, string>>;

const tags = (xml: string, name: string): Record<string, string>[] =>
  [...xml.matchAll(new RegExp(`<(?:\\w+:)?${name}\\b[^>]*>`, "g"))].map(([tag]) => attributesOf(tag));

const doubled = (list: readonly (string | undefined)[]): (string | undefined)[] =>
  list.filter((one, i) => list.indexOf(one) !== i);

/** Every part says what it is, and nothing else is said to be one. */
function contents(parts: Parts): string[] {
  const xml = parts["[Content_Types].xml"] ?? "";
  const named = tags(xml, "Override").map(({ PartName = "" }) => PartName.slice(1));
  const endings = tags(xml, "Default").map(({ Extension = "" }) => Extension.toLowerCase());
  const known = (path: string): boolean =>
    named.includes(path) || endings.includes(path.slice(path.lastIndexOf(".") + 1).toLowerCase());
  return [
    ...named.filter((path) => !(path in parts)).map((path) => `${path} is said to be there`),
    ...doubled(named).map((path) => `${path} is listed twice`),
    ...Object.keys(parts)
      .filter((path) => path !== "[Content_Types].xml" && !known(path))
      .map((path) => `${path} does not say what it is`),
  ];
}

/** Relations lead to parts that are there, each by an id of its own, and each id that a part uses is one of them. */
function relations(parts: Parts): string[] {
  const lists = Object.entries(parts).filter(([path]) => path.endsWith(".rels"));
  const ids = new Map<string, readonly (string | undefined)[]>();
  const faults = lists.flatMap(([path, xml]) => {
    const all = tags(xml, "Relationship");
    const owner = path.replace("_rels/", "").replace(/\.rels$/, "");
    ids.set(
      owner,
      all.map(({ Id }) => Id),
    );
    const folder = owner.replace(/[^/]*$/, "");
    const inside = all.filter(({ TargetMode }) => TargetMode !== "External");
    const targets = inside.map(({ Target = "" }) => decodeURI(new URL(Target, `zip:/${folder}`).pathname.slice(1)));
    return [
      ...(owner === "" || owner in parts ? [] : [`${path} is left over`]),
      ...targets.filter((target) => !(target in parts)).map((target) => `${path} leads to ${target}`),
      ...doubled(all.map(({ Id }) => Id)).map((id) => `${path} has ${id} twice`),
    ];
  });
  const dangling = Object.entries(parts)
    .filter(([path]) => path.endsWith(".xml"))
    .flatMap(([path, xml]) =>
      [...xml.matchAll(/\sr:(?:id|embed|link)="([^"]*)"/g)]
        .filter(([, id]) => !ids.get(path)?.includes(id))
        .map(([, id]) => `${path} uses ${id}`),
    );
  return [...faults, ...dangling];
}

/** The order of a sheet's elements, ECMA-376 Part 1, 18.3.1.99 (from memory). */
const ORDER =
  "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter rowBreaks colBreaks customProperties cellWatches ignoredErrors smartTags drawing legacyDrawing legacyDrawingHF drawingHF picture oleObjects controls webPublishItems tableParts extLst".split(
    " ",
  );

function sheets(parts: Parts): string[] {
  const styles = Object.values(parts).find((xml) => /<(?:\w+:)?styleSheet\b/.test(xml)) ?? "";
  const looks = [...(/<cellXfs[^>]*>(.*)<\/cellXfs>/s.exec(styles)?.[1] ?? "").matchAll(/<xf\b/g)].length;
  const marks = [
    ...(/<cellMetadata.*<\/cellMetadata>/s.exec(parts["xl/metadata.xml"] ?? "")?.[0] ?? "").matchAll(/<bk>/g),
  ];
  return Object.entries(parts)
    .filter(([path, xml]) => path.endsWith(".xml") && /<(?:\w+:)?worksheet\b/.test(xml))
    .flatMap(([path, xml]) => {
      const cells = tags(xml, "c");
      const places = topLevel(xml)
        .map((name) => ORDER.indexOf(name))
        .filter((place) => place >= 0);
      const rows = tags(xml, "row").map(({ r }) => Number(r));
      return [
        ...(places.every((place, i) => i === 0 || place >= (places[i - 1] ?? 0)) ? [] : [`${path} is out of order`]),
        ...(rows.every((row, i) => i === 0 || row > (rows[i - 1] ?? 0)) ? [] : [`${path} has rows out of order`]),
        ...doubled(cells.map(({ r }) => r)).map((address) => `${path} has ${address} twice`),
        ...cells
          .filter(({ cm }) => cm !== undefined && Number(cm) > marks.length)
          .map(({ r }) => `${path} ${r} has no mark`),
        ...cells.filter(({ s = "0" }) => Number(s) >= looks).map(({ r }) => `${path} ${r} has no look`),
      ];
    });
}

/** The names of the elements right under the root. */
function topLevel(xml: string): string[] {
  const names: string[] = [];
  let depth = 0;
  for (const [tag, closing, name] of xml.matchAll(/<(\/?)(?:\w+:)?(\w+)(?:\s(?:"[^"]*"|'[^']*'|[^>"'])*)?>/g)) {
    if (depth === 1 && !closing) names.push(name ?? "");
    if (closing) depth--;
    else if (!tag.endsWith("/>")) depth++;
  }
  return names;
}

/** Tables have numbers and names of their own, in the whole workbook. */
function tables(parts: Parts): string[] {
  const all = Object.entries(parts).filter(([path]) => /^xl\/tables\//.test(path) && path.endsWith(".xml"));
  const heads = all.map(([, xml]) => tags(xml, "table")[0] ?? {});
  const columns = all.flatMap(([path, xml]) => {
    const own = tags(xml, "tableColumn");
    const headings = own.map(({ name }) => name?.toLowerCase());
    return [...doubled(own.map(({ id }) => id)), ...doubled(headings)].map(
      (one) => `${path} has a column ${one} twice`,
    );
  });
  return [
    ...doubled(heads.map(({ id }) => id)).map((id) => `two tables have the number ${id}`),
    ...doubled(heads.map(({ displayName }) => displayName?.toLowerCase())).map(
      (name) => `two tables are called ${name}`,
    ),
    ...columns,
  ];
}

function workbook(parts: Parts): string[] {
  const xml = Object.values(parts).find((one) => /<(?:\w+:)?workbook\b/.test(one)) ?? "";
  const list = tags(xml, "sheet");
  const names = tags(xml, "definedName");
  return [
    ...doubled(list.map(({ sheetId }) => sheetId)).map((id) => `two sheets have the number ${id}`),
    ...doubled(list.map(({ name }) => name?.toLowerCase())).map((name) => `two sheets are called ${name}`),
    ...doubled(names.map(({ name, localSheetId }) => `${name} ${localSheetId}`)).map((name) => `two names ${name}`),
    ...names
      .filter(({ localSheetId }) => Number(localSheetId ?? 0) >= list.length)
      .map(({ name }) => `the name ${name} is for a sheet that is not there`),
  ];
}
