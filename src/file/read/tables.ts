import { areaOf } from "../addresses";
import type { BookTable, TableColumn } from "../book";
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
  return {
    name: displayName ?? name,
    area,
    hasHeadings: headerRowCount !== "0",
    hasTotals: totalsRowCount !== "0",
    columns: children(child(root, "tableColumns"), "tableColumn").map(column),
    filter: readFilter(child(root, "autoFilter")),
    look: style?.attributes.name ?? null,
    stripes: isOn(style?.attributes.showRowStripes),
  };
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
