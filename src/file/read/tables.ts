import { areaOf } from "../addresses";
import type { BookTable, Filter, TableColumn } from "../book";
import { fromFileFormula } from "../formula/fromFile";
import { damaged } from "../refused";
import { child, children, type Element } from "../xml/tree";
import { readFilter } from "./filters";
import { unescaped } from "./text";
import { isOn, said } from "./values";

/** A table from the root of its part. */
export function readTable(root: Element): BookTable {
  const { displayName, name = displayName, ref = "", headerRowCount = "1", totalsRowCount = "0" } = root.attributes;
  const area = areaOf(ref);
  if (!area || name === undefined) throw damaged("One of its tables does not say where it stands.");
  const style = child(root, "tableStyleInfo");
  const hasTotals = totalsRowCount !== "0";
  const filter = readFilter(child(root, "autoFilter"));
  return {
    name: displayName ?? name,
    area,
    hasHeadings: headerRowCount !== "0",
    hasTotals,
    columns: children(child(root, "tableColumns"), "tableColumn").map(column),
    filter: hasTotals ? above(filter, area.row + area.rows - 1) : filter,
    look: style?.attributes.name ?? null,
    stripes: isOn(style?.attributes.showRowStripes),
  };
}

/** A filter that ends above the row of totals: LibreOffice counts that row in, and Excel then repairs the file. */
function above(filter: Filter | null, totals: number): Filter | null {
  if (!filter || filter.area.row >= totals || filter.area.row + filter.area.rows <= totals) return filter;
  return { ...filter, area: { ...filter.area, rows: totals - filter.area.row } };
}

function column(element: Element): TableColumn {
  const { name = "", totalsRowFunction, totalsRowLabel } = element.attributes;
  const formula = child(element, "calculatedColumnFormula")?.text;
  const totalFormula = child(element, "totalsRowFormula")?.text;
  const total = said({
    function: totalsRowFunction === "none" ? undefined : totalsRowFunction,
    label: totalsRowLabel === undefined ? undefined : unescaped(totalsRowLabel),
    formula: totalFormula ? fromFileFormula(totalFormula) : undefined,
  });
  return {
    heading: unescaped(name),
    ...(formula && { formula: fromFileFormula(formula) }),
    ...(Object.keys(total).length > 0 && { total }),
  };
}
