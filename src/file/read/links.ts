import { areaOf } from "../addresses";
import type { Link } from "../book";
import { children, type Element } from "../xml/tree";
import type { Relationship } from "../zip/package";
import { unescaped } from "./text";

/** The links of a sheet; addresses outside stand in its relationships. */
export function readLinks(element: Element | undefined, related: readonly Relationship[]): Link[] {
  const targets = new Map(related.map(({ id, target }) => [id, target]));
  return children(element, "hyperlink").flatMap(({ attributes }) => {
    const area = areaOf(attributes.ref ?? "");
    const id = attributes["r:id"];
    const target = id === undefined ? undefined : targets.get(id);
    const { location, tooltip } = attributes;
    const said = location ? unescaped(location) : null;
    const inside = said === null && target?.startsWith("#") ? placeIn(target) : null;
    const address = inside === null ? (target ?? null) : null;
    const place = inside ?? said;
    if (!area || (address === null && !place)) return [];
    return [{ area, address, place, tip: tooltip ? unescaped(tooltip) : null }];
  });
}

/** The place that `#Vessels!A1` leads to: some programs write one as an address, with `%20` for a space. */
function placeIn(address: string): string {
  const place = address.slice(1);
  try {
    return decodeURIComponent(place);
  } catch {
    return place;
  }
}
