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
    const address = id === undefined ? null : (targets.get(id) ?? null);
    const { location, tooltip } = attributes;
    if (!area || (address === null && !location)) return [];
    return [{ area, address, place: location ? unescaped(location) : null, tip: tooltip ? unescaped(tooltip) : null }];
  });
}
