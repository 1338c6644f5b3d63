import { areaAddress, cellAddress } from "../addresses";
import type { Area, BookSheet, ColumnRange } from "../book";
import { WIDEST_COLUMN } from "./limits";
import { type Attributes, attributeOf, type Cut, cut, element, join, openingTag, withAttributes } from "./rawXml";
import { put, rawOf } from "./sheetOrder";

/** Frozen panes and grid lines, in the first view of the sheet. */
export function putView(sheet: Cut, before: BookSheet, now: BookSheet): void {
  changeView(sheet, (view) => {
    const shown =
      before.showsGrid === now.showsGrid ? view : withAttributes(view, { showGridLines: now.showsGrid ? null : 0 });
    const { rows, columns } = now.frozen;
    if (before.frozen.rows === rows && before.frozen.columns === columns) return shown;
    const { head, pieces, tail } = cut(withAttributes(shown, { topLeftCell: null }));
    const others = pieces.filter(({ name }) => !["pane", "selection"].includes(name));
    return join({ head, pieces: [{ name: "pane", raw: pane(rows, columns) }, ...others], tail });
  });
}

/** Whether the sheet's tab is chosen. */
export const putChosen = (sheet: Cut, isChosen: boolean): void =>
  changeView(sheet, (view) => withAttributes(view, { tabSelected: isChosen ? 1 : null }));

function changeView(sheet: Cut, change: (view: string) => string): void {
  const views = cut(rawOf(sheet, "sheetViews") ?? `<sheetViews><sheetView workbookViewId="0"/></sheetViews>`);
  const at = views.pieces.findIndex(({ name }) => name === "sheetView");
  const view = views.pieces[at]?.raw ?? "";
  const changed = change(view);
  if (changed === view) return;
  views.pieces[at] = { name: "sheetView", raw: changed };
  put(sheet, "sheetViews", join(views));
}

function pane(rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return "";
  const activePane = rows === 0 ? "topRight" : columns === 0 ? "bottomLeft" : "bottomRight";
  return (
    element("pane", {
      xSplit: columns || null,
      ySplit: rows || null,
      topLeftCell: cellAddress(rows, columns),
      activePane,
      state: "frozen",
    }) + element("selection", { pane: activePane })
  );
}

export function putTabColor(sheet: Cut, color: string | null): void {
  const { head, pieces, tail } = cut(rawOf(sheet, "sheetPr") ?? "<sheetPr/>");
  const others = pieces.filter(({ name }) => name !== "tabColor");
  const own = color === null ? [] : [{ name: "tabColor", raw: element("tabColor", { rgb: `FF${color}` }) }];
  put(sheet, "sheetPr", join({ head, pieces: [...own, ...others], tail }));
}

/** The usual width of columns and height of rows. */
export function putUsualSizes(sheet: Cut, before: BookSheet, now: BookSheet): void {
  const own = rawOf(sheet, "sheetFormatPr");
  const { defaultWidth, defaultHeight } = now;
  const changes: Attributes = {
    ...(before.defaultWidth !== defaultWidth && { defaultColWidth: defaultWidth }),
    ...(before.defaultHeight !== defaultHeight && {
      defaultRowHeight: defaultHeight ?? 15,
      customHeight: defaultHeight === null ? null : 1,
    }),
  };
  put(sheet, "sheetFormatPr", withAttributes(own ?? `<sheetFormatPr defaultRowHeight="15"/>`, changes));
}

/** Widths, what is hidden, and looks of whole columns. What only the file knows of a column (groups) stays with it. */
export function putColumns(
  sheet: Cut,
  before: readonly ColumnRange[],
  now: readonly ColumnRange[],
  styleOf: (style: number) => number,
): void {
  const old = cut(rawOf(sheet, "cols") ?? "<cols/>").pieces.filter(({ name }) => name === "col");
  const columns = now.map(({ first, last, width, hidden, style }) => {
    const covering = old.find(
      ({ raw }) => Number(attributeOf(raw, "min")) <= first + 1 && Number(attributeOf(raw, "max")) > first,
    );
    const was = before.find((one) => one.first <= first && one.last >= first);
    return withAttributes(covering?.raw ?? "<col/>", {
      min: first + 1,
      max: last + 1,
      // A column has to have a width, even one that is hidden or only looks like something.
      ...(was?.width !== width || !covering
        ? { width: Math.min(width ?? DEFAULT_WIDTH, WIDEST_COLUMN), customWidth: width === undefined ? null : 1 }
        : {}),
      hidden: hidden ? 1 : null,
      ...(was?.style !== style || !covering ? { style: style === undefined ? null : styleOf(style) } : {}),
    });
  });
  put(sheet, "cols", columns.length === 0 ? "" : `<cols>${columns.map(openingTag).join("")}</cols>`);
}

/** In characters, as programs begin with. */
const DEFAULT_WIDTH = 8.43;

export const putMerges = (sheet: Cut, merges: readonly Area[]): void =>
  put(
    sheet,
    "mergeCells",
    merges.length === 0
      ? ""
      : element(
          "mergeCells",
          { count: merges.length },
          ...merges.map((area) => element("mergeCell", { ref: areaAddress(area) })),
        ),
  );

/** The cells in use. */
export function putDimension(sheet: Cut, now: BookSheet): void {
  const rows = now.rows.filter(({ cells }) => cells.length > 0);
  const columns = rows.flatMap(({ cells }) => [cells[0]?.column ?? 0, cells.at(-1)?.column ?? 0]);
  const [top, bottom] = [rows[0]?.row ?? 0, rows.at(-1)?.row ?? 0];
  const left = columns.reduce((least, one) => Math.min(least, one), columns[0] ?? 0);
  const right = columns.reduce((most, one) => Math.max(most, one), 0);
  const ref = areaAddress({ row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 });
  if (rawOf(sheet, "dimension") === undefined || attributeOf(rawOf(sheet, "dimension") ?? "", "ref") !== ref)
    put(sheet, "dimension", element("dimension", { ref }));
}
