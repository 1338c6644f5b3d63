import { areaAddress } from "../addresses";
import type { Filter, FilterColumn } from "../book";
import { same } from "../same";
import { attributeOf, cut, element } from "./rawXml";

/** An `autoFilter` element. What a column's filter says that is not worked out here keeps the text of the file. */
export function filterXml(before: Filter | null, now: Filter | null, raw: string | undefined): string {
  if (!now) return "";
  const old = raw === undefined ? [] : cut(raw).pieces.filter(({ name }) => name === "filterColumn");
  const columns = now.columns.map((column) => {
    const was = before?.columns.find((one) => one.column === column.column);
    const kept = old.find((piece) => Number(attributeOf(piece.raw, "colId")) === column.column);
    return kept && was && same(was, column) ? kept.raw : columnXml(column);
  });
  return element("autoFilter", { ref: areaAddress(now.area) }, ...columns);
}

function columnXml({ column, values, custom }: FilterColumn): string {
  if (values) {
    const filters = values.filter((value) => value !== "").map((val) => element("filter", { val }));
    const blank = values.includes("") || null;
    return element("filterColumn", { colId: column }, element("filters", { blank }, ...filters));
  }
  if (custom) {
    const rules = custom.rules.map(({ operator, value }) =>
      element("customFilter", { operator: operator === "equal" ? null : operator, val: value }),
    );
    return element("filterColumn", { colId: column }, element("customFilters", { and: custom.and || null }, ...rules));
  }
  return element("filterColumn", { colId: column });
}
