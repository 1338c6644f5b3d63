import { areaOf } from "../addresses";
import type { Filter, FilterColumn } from "../book";
import { child, children, type Element } from "../xml/tree";
import { unescaped } from "./text";
import { isOn } from "./values";

/** The filter of a sheet or of a table; null where there is none. */
export function readFilter(element: Element | undefined): Filter | null {
  const area = areaOf(element?.attributes.ref ?? "");
  return area ? { area, columns: children(element, "filterColumn").map(filterColumn) } : null;
}

function filterColumn(element: Element): FilterColumn {
  const column = Number(element.attributes.colId ?? 0);
  const [what] = element.children;
  if (what?.name === "filters" && what.children.every(({ name }) => name === "filter")) {
    const values = what.children.map(({ attributes }) => unescaped(attributes.val ?? ""));
    return { column, values: isOn(what.attributes.blank) ? [...values, ""] : values };
  }
  if (what?.name === "customFilters") {
    const rules = children(what, "customFilter").map(({ attributes }) => ({
      operator: attributes.operator ?? "equal",
      value: unescaped(attributes.val ?? ""),
    }));
    return { column, custom: { and: isOn(what.attributes.and), rules } };
  }
  return what && child(element, "extLst") !== what ? { column, other: true } : { column };
}
