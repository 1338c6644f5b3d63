import { areaAddress, areaOf } from "../addresses";
import type { Link } from "../book";
import { same } from "../same";
import type { PackageEdit } from "./packageEdit";
import { attributeOf, type Cut, cut, element } from "./rawXml";
import { put, rawOf } from "./sheetOrder";

/** Puts a sheet's links in; those that are as they were keep their text. */
export function putLinks(
  file: PackageEdit,
  path: string,
  sheet: Cut,
  before: readonly Link[],
  now: readonly Link[],
): void {
  const old = cut(rawOf(sheet, "hyperlinks") ?? "<hyperlinks/>").pieces.filter(({ name }) => name === "hyperlink");
  const rawAt = (link: Link): string | undefined =>
    old.find(({ raw }) => same(areaOf(attributeOf(raw, "ref") ?? ""), link.area))?.raw;
  const kept = new Set<string | undefined>();
  const links = now.map((link) => {
    const raw = before.some((one) => same(one, link)) ? rawAt(link) : undefined;
    if (raw === undefined) return linkXml(file, path, link);
    kept.add(attributeOf(raw, "id"));
    return raw;
  });
  for (const { raw } of old) {
    const id = attributeOf(raw, "id");
    if (id && !kept.has(id)) file.unrelate(path, id);
  }
  put(sheet, "hyperlinks", links.length === 0 ? "" : element("hyperlinks", {}, ...links));
}

const linkXml = (file: PackageEdit, path: string, { area, address, place, tip }: Link): string =>
  element("hyperlink", {
    ref: areaAddress(area),
    "r:id": address === null ? null : file.relate(path, "hyperlink", { address: uri(address) }),
    location: place,
    tooltip: tip,
  });

/** Some signs cannot stand in the address of a relation. */
const uri = (address: string): string => address.replace(/[\s"<>\\^`{|}]/g, encodeURIComponent);
