import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { type Column, cell, heading, headingRow, setting } from "../layout";

const COLUMNS: readonly Column[] = [
  { heading: "Ingredient", look: "input" },
  { heading: "Share", look: "input", align: "right" },
  { heading: "Basis", look: "input", align: "center" },
  { heading: "Weight (g)", align: "right", format: FORMATS.scale },
];

const INGREDIENTS = [
  ["Soy wax", 3, "part", undefined],
  ["Rapeseed wax", 1, "part", undefined],
  ["Lamplit quince", 0.06, "of wax", FORMATS.load],
  ["Dye, pale straw", 0.002, "of total", FORMATS.load],
  [null, null, null, undefined],
] as const;

/** A recipe of several waxes, a scent and a dye, weighed out for one pot. The last row is free. */
export function recipe(): Sheet {
  const first = 7;
  const rows = INGREDIENTS.map(([ingredient, share, basis, format], r) => {
    const weight = r === 0 ? { formula: "=POUR.RECIPESPLIT(B4,B8:B12,C8:C12,B5)" } : null;
    return [ingredient, share, basis, weight].map((value, c) => {
      const { heading: _, ...show } = COLUMNS[c] as Column;
      return cell(first + r, c, value, c === 1 && format ? { ...show, format } : show);
    });
  });
  const last = first + INGREDIENTS.length;
  return {
    name: "Recipe",
    widths: [22, 14, 14, 20],
    cells: [
      ...heading(
        "Recipe for one pot",
        "Parts divide the wax among the waxes, in any sum; the others are loads, of wax or of total.",
        4,
      ),
      ...setting(3, "Fill (g)", 2400, "Everything together.", 4, FORMATS.scale),
      ...setting(4, "Scale division (g)", 1, "The smallest step it shows.", 4),
      ...headingRow(first - 1, 0, COLUMNS),
      ...rows.flat(),
      cell(last, 0, "Together", { look: "total" }),
      cell(last, 1, null, { look: "total" }),
      cell(last, 2, null, { look: "total" }),
      cell(last, 3, { formula: "=SUM(D8:D12)" }, { look: "total", align: "right", format: FORMATS.scale }),
    ],
    print: { paper: "a4" },
  };
}
