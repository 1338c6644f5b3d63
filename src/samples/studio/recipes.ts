import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, headingRow, setting, table, thisRow, unlessBlank, type Value } from "../layout";
import { costOf } from "./prices";
import { allSaid, firstRow, isUnknown, slipLine } from "./slips";

const right = { align: "right" } as const;
const load = (share: number): Value => ({ number: share, format: FORMATS.load });

const own = thisRow("Recipes");
/** Of a column, the cells of this row's scent; blank beside all others. */
const ofOwn = (column: string): string => `IF(Recipes[Scent]=${own("Scent")},Recipes[${column}],"")`;
const IN_HUNDRED = unlessBlank(
  own("Scent"),
  `INDEX(POUR.RECIPESPLIT(100,${ofOwn("Share")},${ofOwn("Basis")}),ROW(${own("Scent")})-ROW(INDEX(Recipes[Scent],1))+1)`,
);

/** What goes into no scent, or is none of it. */
const ROW = "LEN(Recipes[Scent]&Recipes[Ingredient]&Recipes[Share])>0";
const LOST = [
  firstRow(
    "Recipes",
    "Scent",
    `(${ROW})*${isUnknown("Recipes[Scent]", "Scents", "Scent")}`,
    "no such scent on the sheet Scents.",
  ),
  firstRow("Recipes", "Scent", `(${ROW})*(LEN(Recipes[Ingredient])=0)`, "which ingredient?"),
  firstRow(
    "Recipes",
    "Scent",
    `(${ROW})*((1-ISNUMBER(Recipes[Share]))+(Recipes[Share]<=0)>0)`,
    "write its share as a number above 0.",
  ),
];
/** A row without a share would make the scent cheaper. */
const COST = unlessBlank(
  own("Scent"),
  `IF(LEN(${own("Ingredient")})=0,"which ingredient?",IF(N(${own("Share")})<=0,${own("Ingredient")}&": what share?",IF(COUNT(${own("In 100 g")})=0,"recipe not right yet",${costOf(own("Ingredient"), own("In 100 g"))})))`,
);

/** The total, above the table so that nothing stands in the way of further recipes. */
const TOTAL = 7;
const HEADING = TOTAL + 1;

/** Of a column, the cells of the scent to weigh out; blank beside all others. */
const ofScent = (column: string): string => `IF(Recipes[Scent]=$B$6,Recipes[${column}],"")`;

/**
 * What a scent is made of where that is more than one wax and one oil; the run sheet weighs out each of its pots by
 * it. The loads of the two oils together are the load that Scents gives. The last rows are free.
 */
export function recipes(): Sheet {
  const list = table(
    "Recipes",
    HEADING,
    0,
    [
      { heading: "Scent", look: "input", choices: ["Scents", "Scent"] },
      { heading: "Ingredient", look: "input" },
      { heading: "Share", look: "input", ...right },
      { heading: "Basis", look: "input", align: "center" },
      { heading: "Kind", look: "input", align: "center" },
      { heading: "In 100 g", formula: IN_HUNDRED, format: "0.00", ...right },
      {
        heading: "Cost in 100 g",
        formula: COST,
        format: "0.000",
        ...right,
      },
    ],
    [
      ["Attic cedar", "Soy wax", 3, "part", "wax"],
      ["Attic cedar", "Rapeseed wax", 1, "part", "wax"],
      ["Attic cedar", "Cedar oil", load(0.06), "of wax", "scent"],
      ["Attic cedar", "Old paper oil", load(0.02), "of wax", "scent"],
      ["Attic cedar", "Colour block, cedar", load(0.012), "of total", "dye"],
      [],
      [],
    ],
  );
  const first = HEADING + 2;
  return {
    name: "Recipes",
    widths: [20, 20, 9, 10, 9, 9, 9, 14],
    cells: [
      ...heading(
        "Recipes",
        "For scents of more than one wax and one fragrance oil. Parts divide the wax among the waxes, in any sum; the others are loads, of wax or of total. Kind says what counts as scent. Each is worked out for a hundred grams, with what they cost; beside the table one recipe is weighed out for one pot.",
        8,
      ),
      slipLine(allSaid(LOST), 8),
      ...setting(3, "Fill (g)", 2400, "Everything in the pot together.", 8, FORMATS.scale),
      ...setting(4, "Scale reads to (g)", 1, "The smallest step the scale shows.", 8),
      ...setting(5, "Scent to weigh out", "Attic cedar", "One of the table's scents.", 8),
      cell(TOTAL, 0, "Total", { look: "total" }),
      ...[1, 2, 3, 4, 5, 6].map((column) => cell(TOTAL, column, null, { look: "total" })),
      cell(
        TOTAL,
        7,
        { formula: `=IF(ISTEXT(H${first}),"",SUM(H${first}:H${first + 40}))` },
        { look: "total", format: FORMATS.scale, ...right },
      ),
      ...list.cells,
      ...headingRow(HEADING, 7, [{ heading: "For one pot (g)", ...right }]),
      ...Array.from({ length: list.table.rows }, (_, r) => {
        const weighed = `POUR.RECIPESPLIT($B$4,${ofScent("Share")},${ofScent("Basis")},$B$5)`;
        const split = `=IF(COUNTIF(Recipes[Scent],$B$6)=0,"no such scent",${weighed})`;
        return cell(HEADING + 1 + r, 7, r === 0 ? { formula: split } : null, { format: FORMATS.scale, ...right });
      }),
    ],
    tables: [list.table],
    frozenRows: HEADING + 1,
    print: { paper: "a4", repeatRows: [HEADING, HEADING] },
  };
}
