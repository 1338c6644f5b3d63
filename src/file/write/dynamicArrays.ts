import { type PackageEdit, SPACE, XML } from "./packageEdit";
import { putter, rawOf } from "./putter";
import { attributeOf, type Cut, cut, element, join, withAttributes } from "./rawXml";

const PATH = "xl/metadata.xml";
const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";
const KIND = "XLDAPR";
const NONE = `${XML}<metadata xmlns="${SPACE}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"/>`;

/** By [MS-XLSX] and ECMA-376 Part 1, 18.9.15. */
const put = putter("metadataTypes metadataStrings mdxMetadata futureMetadata cellMetadata valueMetadata extLst");

const SPILLS = `<bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray" fDynamic="1" fCollapsed="0"/></ext></extLst></bk>`;

/**
 * The number by which cells (`cm`) say that their formula is a dynamic array: without it programs show `@` or braces
 * around it. One that the file does not have yet is put in.
 */
export function dynamicMark(file: PackageEdit, workbook: string): number {
  const known = file.relations(workbook).find(({ kind }) => kind === "sheetMetadata")?.target;
  const path = known ?? PATH;
  if (!known) {
    file.add(PATH, TYPE, NONE);
    file.relate(workbook, "sheetMetadata", { path: PATH });
  }
  const root = cut(file.read(path));
  const type = typeNumber(root);
  const property = propertyNumber(root);
  const cells = list(rawOf(root, "cellMetadata") ?? "<cellMetadata/>");
  const record = element("rc", { t: type, v: property });
  const found = cells.pieces.findIndex(({ raw }) => raw.replace(/\s+/g, " ").includes(record));
  if (found >= 0) return found + 1;
  cells.pieces.push({ name: "bk", raw: element("bk", {}, record) });
  put(root, "cellMetadata", counted(cells));
  file.write(path, join(root));
  return cells.pieces.length;
}

function list(raw: string): Cut {
  const { head, pieces, tail } = cut(raw);
  return { head, pieces: pieces.filter(({ name }) => name !== ""), tail };
}

const counted = (of: Cut): string => withAttributes(join(of), { count: of.pieces.length });

/** Types are counted from 1. */
function typeNumber(root: Cut): number {
  const types = list(rawOf(root, "metadataTypes") ?? "<metadataTypes/>");
  const found = types.pieces.findIndex(({ raw }) => attributeOf(raw, "name") === KIND);
  if (found >= 0) return found + 1;
  const flags =
    "copy pasteAll pasteValues merge splitFirst rowColShift clearFormats clearComments assign coerce cellMeta";
  const own = Object.fromEntries(flags.split(" ").map((flag) => [flag, 1]));
  types.pieces.push({
    name: "metadataType",
    raw: element("metadataType", { name: KIND, minSupportedVersion: 120000, ...own }),
  });
  put(root, "metadataTypes", counted(types));
  return types.pieces.length;
}

/** What a type says is counted from 0. */
function propertyNumber(root: Cut): number {
  const isOwn = ({ name, raw }: { name: string; raw: string }): boolean =>
    name === "futureMetadata" && attributeOf(raw, "name") === KIND;
  const own = list(root.pieces.find(isOwn)?.raw ?? element("futureMetadata", { name: KIND }));
  const found = own.pieces.findIndex(
    ({ raw }) => /fDynamic="(1|true)"/.test(raw) && !/fCollapsed="(1|true)"/.test(raw),
  );
  if (found >= 0) return found;
  own.pieces.push({ name: "bk", raw: SPILLS });
  const others = root.pieces.filter((piece) => piece.name === "futureMetadata" && !isOwn(piece)).map(({ raw }) => raw);
  put(root, "futureMetadata", ...others, counted(own));
  return own.pieces.length - 1;
}
