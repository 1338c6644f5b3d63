import { areaOf, COLUMNS, cellPlace } from "../addresses";
import type { BookSheet, ColumnRange } from "../book";
import { child, children, type Element } from "../xml/tree";
import type { Colors } from "./colors";
import { isOn, numberIn, said } from "./values";

type Frame = Pick<
  BookSheet,
  "columns" | "merges" | "frozen" | "showsGrid" | "tabColor" | "defaultWidth" | "defaultHeight"
>;

/** What a sheet says around its cells: widths, merged cells, panes and the like. */
export function readFrame(find: (name: string) => Element | undefined, styles: number, colors: Colors): Frame {
  const format = find("sheetFormatPr")?.attributes;
  const view = child(find("sheetViews"), "sheetView");
  return {
    columns: columns(find("cols"), styles),
    merges: children(find("mergeCells"), "mergeCell").flatMap(({ attributes }) => areaOf(attributes.ref ?? "") ?? []),
    frozen: frozen(view),
    showsGrid: isOn(view?.attributes.showGridLines, true),
    tabColor: colors(child(find("sheetPr"), "tabColor")),
    defaultWidth: numberIn(format?.defaultColWidth) ?? null,
    defaultHeight: numberIn(format?.defaultRowHeight) ?? null,
  };
}

const columns = (element: Element | undefined, styles: number): ColumnRange[] =>
  children(element, "col")
    .flatMap(({ attributes }) => {
      const first = (numberIn(attributes.min) ?? 0) - 1;
      const last = Math.min(numberIn(attributes.max) ?? 0, COLUMNS) - 1;
      const style = numberIn(attributes.style);
      if (!(first >= 0 && last >= first)) return [];
      const look = said({
        width: numberIn(attributes.width),
        hidden: isOn(attributes.hidden) || undefined,
        style: style !== undefined && style < styles && style > 0 ? style : undefined,
      });
      return [{ first, last, ...look }];
    })
    .sort((a, b) => a.first - b.first);

/** The rows and columns that stay in view, counted from the sheet's first ones also where it was scrolled. */
function frozen(view: Element | undefined): BookSheet["frozen"] {
  const pane = child(view, "pane")?.attributes;
  if (!pane || !["frozen", "frozenSplit"].includes(pane.state ?? "")) return { rows: 0, columns: 0 };
  const top = cellPlace(view?.attributes.topLeftCell ?? "") ?? { row: 0, column: 0 };
  const [rows, across] = [numberIn(pane.ySplit) ?? 0, numberIn(pane.xSplit) ?? 0];
  return {
    rows: rows > 0 ? Math.floor(rows) + top.row : 0,
    columns: across > 0 ? Math.floor(across) + top.column : 0,
  };
}
