import type { Borders, Style as ExcelStyle } from "exceljs";
import type { Cell } from "../../sheet/sheet";
import { LINE, STYLES } from "../../sheet/styles";

const EDGE = { style: "thin", color: { argb: `FF${LINE}` } } as const;

const BORDERS: Readonly<Record<"all" | "bottom" | "top", Partial<Borders>>> = {
  all: { top: EDGE, bottom: EDGE, left: EDGE, right: EDGE },
  bottom: { bottom: EDGE },
  top: { top: EDGE },
};

/** How exceljs is told about a cell's look, number format and alignment. */
export function excelStyle({ look = "body", format, align }: Cell): Partial<ExcelStyle> {
  const { bold, italic, size = 11, color, fill, wrap, border } = STYLES[look];
  return {
    font: {
      name: "Calibri",
      family: 2,
      size,
      ...(bold && { bold }),
      ...(italic && { italic }),
      ...(color && { color: { argb: `FF${color}` } }),
    },
    ...(fill && { fill: { type: "pattern", pattern: "solid", fgColor: { argb: `FF${fill}` } } }),
    ...(border && { border: BORDERS[border] }),
    // In the middle, so that in a row of several lines all cells stand beside each other.
    alignment: { vertical: "middle", ...(wrap && { wrapText: true }), ...(align && { horizontal: align }) },
    ...(format && { numFmt: format }),
  };
}
