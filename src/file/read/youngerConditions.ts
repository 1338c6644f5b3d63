import { areasOf } from "../addresses";
import type { Area } from "../book";
import { child, children, type Element, within } from "../xml/tree";

/** Rules that stand in the younger list alone: those of the older list have an entry there for their finer points. */
export function aloneRules(
  older: readonly Element[],
  younger: Element | undefined,
): { readonly rule: Element; readonly areas: readonly Area[] }[] {
  const known = new Set(older.flatMap((element) => [...within(element, "x14:id")].map(({ text }) => text.trim())));
  return [...within(younger, "x14:conditionalFormatting")].flatMap((format) => {
    const areas = areasOf(child(format, "xm:sqref")?.text ?? "");
    return children(format, "x14:cfRule").flatMap((rule) => {
      const { id = "" } = rule.attributes;
      if (id === "" || known.has(id) || areas.length === 0) return [];
      known.add(id);
      return [{ rule, areas }];
    });
  });
}

/** Those of them that cannot be read: no id tells them apart, or no cells are said. */
export function unreadRules(older: readonly Element[], younger: Element | undefined): number {
  const bound = new Set(older.flatMap((element) => [...within(element, "x14:id")].map(({ text }) => text.trim())));
  const all = [...within(younger, "x14:cfRule")].filter(({ attributes }) => !bound.has(attributes.id ?? ""));
  return all.length - aloneRules(older, younger).length;
}

const OLDER_NAMES: Readonly<Record<string, string>> = { "xm:f": "formula", "x14:fillColor": "color" };

/** A rule as the older list would say it, which has no elements for values. */
export const asOlder = (element: Element): Element => ({
  ...element,
  name: OLDER_NAMES[element.name] ?? element.name.replace(/^x14:/, ""),
  attributes:
    element.name === "x14:cfvo" ? { ...element.attributes, ...boundOf(child(element, "xm:f")) } : element.attributes,
  children: element.children.map(asOlder),
});

const boundOf = (formula: Element | undefined) => (formula ? { val: formula.text.trim() } : {});
