import { unzipSync } from "fflate";
import { SaxesParser } from "saxes";
import { partsOf } from "../../samples/zipped";
import { metadataFaults } from "./metadataFaults";
import { doubled, type Parts, partWith, relationsOf, tags } from "./parts";
import { sheetFaults } from "./sheetFaults";
import { styleFaults } from "./styleFaults";
import { tableFaults } from "./tableFaults";

/** What is wrong with a workbook file's package, by rules that the Open XML schema says or that it cannot say. */
export function faultsOf(bytes: Uint8Array): string[] {
  const parts = partsOf(bytes);
  return [
    ...entries(bytes),
    ...badXml(parts),
    ...contents(parts),
    ...relations(parts),
    ...sheetFaults(parts),
    ...styleFaults(parts),
    ...tableFaults(parts),
    ...metadataFaults(partWith(parts, "metadata")),
    ...workbook(parts),
  ];
}

/** No two entries of the zip are the same part, whose names do not tell capitals apart. */
function entries(bytes: Uint8Array): string[] {
  const names: string[] = [];
  unzipSync(bytes, { filter: ({ name }) => names.push(name.toLowerCase()) < 0 });
  return doubled(names).map((name) => `${name} is in the zip twice`);
}

function badXml(parts: Parts): string[] {
  return Object.entries(parts)
    .filter(([path]) => /\.(?:xml|rels)$/.test(path))
    .flatMap(([path, xml]) => {
      const faults: string[] = [];
      const parser = new SaxesParser({ xmlns: true });
      parser.on("error", ({ message }) => faults.push(`${path} is no XML: ${message}`));
      parser.write(xml).close();
      return faults.slice(0, 1);
    });
}

/**
 * What each part says that it is, by the kind of the relation that leads to it (ECMA-376 Part 1, 12.3 and 15, from
 * memory; what LibreOffice writes says the same).
 */
const TYPES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    [
      "calcChain",
      "chartsheet",
      "comments",
      "externalLink",
      "pivotCacheDefinition",
      "pivotCacheRecords",
      "pivotTable",
      "sharedStrings",
      "sheetMetadata",
      "styles",
      "table",
      "worksheet",
    ].map((kind) => [kind, `openxmlformats-officedocument.spreadsheetml.${kind}+xml`]),
  ),
  officeDocument: "openxmlformats-officedocument.spreadsheetml.sheet.main+xml",
  theme: "openxmlformats-officedocument.theme+xml",
  drawing: "openxmlformats-officedocument.drawing+xml",
  chart: "openxmlformats-officedocument.drawingml.chart+xml",
  vmlDrawing: "openxmlformats-officedocument.vmlDrawing",
  "core-properties": "openxmlformats-package.core-properties+xml",
  "extended-properties": "openxmlformats-officedocument.extended-properties+xml",
};

/** Every part says what it is, and nothing else is said to be one. */
function contents(parts: Parts): string[] {
  const xml = parts["[Content_Types].xml"] ?? "";
  const named = tags(xml, "Override").map(({ PartName = "" }) => PartName.slice(1));
  const endings = tags(xml, "Default").map(({ Extension = "" }) => Extension.toLowerCase());
  const known = (path: string): boolean =>
    named.includes(path) || endings.includes(path.slice(path.lastIndexOf(".") + 1).toLowerCase());
  const typeOf = (path: string): string | undefined =>
    tags(xml, "Override").find(({ PartName }) => PartName === `/${path}`)?.ContentType ??
    tags(xml, "Default").find(({ Extension = "" }) => path.toLowerCase().endsWith(`.${Extension.toLowerCase()}`))
      ?.ContentType;
  const wrong = ["", ...Object.keys(parts)].flatMap((path) =>
    relationsOf(parts, path).filter(({ kind, target }) => {
      const type = TYPES[kind];
      return type !== undefined && target in parts && typeOf(target) !== `application/vnd.${type}`;
    }),
  );
  return [
    ...wrong.map(({ kind, target }) => `${target} is not said to be a ${kind}`),
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

function workbook(parts: Parts): string[] {
  const xml = partWith(parts, "workbook");
  const list = tags(xml, "sheet");
  const names = tags(xml, "definedName");
  const { activeTab = "0" } = tags(xml, "workbookView")[0] ?? {};
  const isNoName = (name: string): boolean =>
    name === "" || name.length > 31 || /[[\]:*?/\\]|^'|'$/.test(name) || name.toLowerCase() === "history";
  return [
    ...(list.some(({ state = "visible" }) => state === "visible") ? [] : ["no sheet is shown"]),
    ...(Number(activeTab) < list.length ? [] : [`the sheet ${activeTab} that is shown is not there`]),
    ...list.filter(({ name = "" }) => isNoName(name)).map(({ name }) => `no sheet can be called ${name}`),
    ...doubled(list.map(({ sheetId }) => sheetId)).map((id) => `two sheets have the number ${id}`),
    ...doubled(list.map(({ name }) => name?.toLowerCase())).map((name) => `two sheets are called ${name}`),
    ...doubled(names.map(({ name, localSheetId }) => `${name} ${localSheetId}`)).map((name) => `two names ${name}`),
    ...names
      .filter(({ localSheetId }) => Number(localSheetId ?? 0) >= list.length)
      .map(({ name }) => `the name ${name} is for a sheet that is not there`),
  ];
}
