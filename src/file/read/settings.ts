import { children, readTree } from "../xml/tree";
import { relationships } from "../zip/package";
import type { Package } from "../zip/unpack";

/** The settings that the pane keeps in a part of custom XML of its own. */
export function readSettings(pack: Package, workbook: string): Record<string, string> {
  for (const { kind, target } of relationships(pack, workbook)) {
    const bytes = kind === "customXml" ? pack.parts.get(target) : undefined;
    if (!bytes || !new TextDecoder().decode(bytes.subarray(0, 1000)).includes('"urn:pourwright:settings"')) continue;
    return Object.fromEntries(
      children(readTree(target, bytes), "setting").map(({ attributes, text }) => [attributes.key ?? "", text]),
    );
  }
  return {};
}
