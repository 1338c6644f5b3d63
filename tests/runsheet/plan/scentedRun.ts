import { buildRun } from "../../../src/runsheet/buildRun";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import type { CellValue } from "../../../src/sheet/sheet";

/** Tables of a run with a scent, by which its limits and temperatures are checked. */
export interface ScentedRun {
  /** Rows of the table of scents: scent, wax maximum, product limit, add at, pour at, flash point, melt at. */
  readonly scents?: readonly (readonly CellValue[])[];
  /** Rows of recipes of Forest: ingredient, share, basis, kind. */
  readonly recipe?: readonly (readonly CellValue[])[];
  /** Rows of the batch: vessel, quantity, fill, scent, load, basis. */
  readonly rows?: readonly CellValue[][];
  /** Those of the table of scents: a column whose heading is empty is not there. */
  readonly headings?: readonly string[];
}

export const HEADINGS = ["Scent", "Wax maximum", "Product limit", "Add at (C)", "Pour at (C)", "Flash point (C)"];
/** Ten candles of 106 at 6 % of wax: 1000 of wax and 60 of scent, 5.66 % of total. */
const ROWS: CellValue[][] = [["Tin", 10, 106, "Forest", 0.06, "of wax"]];
const SCENT_FIELDS = ["scent", "waxMaximum", "productLimit", "add", "pour", "flash", "melt"];

export const SETTINGS: Settings = { ...FIRST_SETTINGS, potCapacity: 5000, loss: 0, division: 0.1 };

export function scentedRun(
  { scents, recipe, rows = ROWS, headings = HEADINGS }: ScentedRun,
  settings: Settings = SETTINGS,
) {
  const columns = Object.fromEntries(headings.flatMap((heading, i) => (heading === "" ? [] : [[SCENT_FIELDS[i], i]])));
  return buildRun(
    {
      pour: {
        ...{ type: "pour", headings: [], rows },
        columns: { vessel: 0, quantity: 1, fill: 2, scent: 3, load: 4, basis: 5 },
      },
      ...(scents && { scents: { type: "scents", headings, rows: scents, columns } }),
      ...(recipe && {
        recipes: {
          ...{ type: "recipes", headings: [], rows: recipe.map((row) => ["Forest", ...row]) },
          columns: { scent: 0, ingredient: 1, share: 2, basis: 3, sort: 4 },
        },
      }),
    },
    settings,
  );
}
