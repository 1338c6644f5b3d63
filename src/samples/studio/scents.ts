import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, table, thisRow, unlessBlank } from "../layout";
import { firstLack, priceOf } from "./prices";

const own = thisRow("Scents");
const rate = { look: "input", format: FORMATS.load, align: "center" } as const;
const whole = { look: "input", format: FORMATS.count, align: "center" } as const;

const scent = own("Scent");
const part = (name: string): string => `POUR.${name}(100,${own("Load (%)")},${own("Basis (of wax or of total)")})`;
const ofRecipe = (more = ""): string => `SUMIFS(Recipes[Cost in 100 g],Recipes[Scent],${scent}${more})`;
const isMixed = `COUNTIF(Recipes[Scent],${scent})>0`;

const BY_RECIPE = `IFNA(${firstLack("Recipes", "Cost in 100 g", "Scent", scent)},${ofRecipe()})`;
/** Without a recipe it is one wax and the scent. */
const WAX = own("Wax in that cost");
const PLAIN = `IF(OR(ISTEXT(${WAX}),${own("Load (%)")}=0),${WAX},IF(ISNUMBER(${priceOf(scent)}),${WAX}+${part("SCENTPART")}*${priceOf(scent)},${scent}&": no price"))`;
const COST = unlessBlank(scent, `IF(${isMixed},${BY_RECIPE},${PLAIN})`);
const WAX_COST = unlessBlank(
  scent,
  `IF(${isMixed},${ofRecipe(',Recipes[Basis],"part*"')},IF(LEN(${own("Load (%)")})=0,"no load",IF(ISNUMBER(${priceOf('"Wax"')}),${part("WAXPART")}*${priceOf('"Wax"')},"Wax: no price")))`,
);

const CHECKED = ["Load (%)", "Wax maximum (%)", "Product limit (%)", "Basis (of wax or of total)"];

const [LOAD, MAXIMUM, LIMIT, BASIS] = CHECKED.map(own) as [string, string, string, string];
/** A basis that is not given is taken for wax, and a limit that is not given is passed by nothing. */
const UNSURE = `LEN(${LOAD})*(LEN(${BASIS})*LEN(${MAXIMUM})*LEN(${LIMIT})=0)>0`;
const UNSURE_WORDS = `IF(LEN(${BASIS})=0,"of wax or of total?",IF(LEN(${MAXIMUM})=0,"no wax maximum","no product limit"))`;

/** The scents with their loads, limits, temperatures and times, all from invented papers; the last row is free. */
export function scents(): Sheet {
  const list = table(
    "Scents",
    3,
    0,
    [
      { heading: "Scent", look: "input" },
      { heading: "Load (%)", ...rate },
      { heading: "Basis (of wax or of total)", look: "input", align: "center" },
      { heading: "Wax maximum (%)", ...rate },
      { heading: "Product limit (%)", ...rate },
      {
        heading: "Check",
        // Wax without scent has no limits to keep.
        formula: `=IF(COUNTIF(${own("Load (%)")},0)=1,"",IF(${UNSURE},${UNSURE_WORDS},POUR.LOADCHECK(${CHECKED.map(own).join(",")})))`,
        look: "alert",
      },
      { heading: "Melt at (C)", ...whole },
      { heading: "Add at (C)", ...whole },
      { heading: "Stir (min)", ...whole },
      { heading: "Pour at (C)", ...whole },
      { heading: "Flash point (C)", ...whole },
      { heading: "Cure days", ...whole },
      { heading: "Cost of 100 g", formula: COST, format: "0.000", align: "right" },
      { heading: "Wax in that cost", formula: WAX_COST, format: "0.000", align: "right" },
    ],
    [
      ["Lamplit quince", 0.06, "of wax", 0.1, 0.09, 75, 65, 2, 57, 93, 14],
      ["Attic cedar", 0.08, "of wax", 0.1, 0.08, 78, 68, 3, 60, 96, 14],
      ["Plum thunder", 0.07, "of total", 0.1, 0.085, 75, 62, 2, 55, 84, 10],
      ["Rain on slate", 0.05, "of wax", 0.1, 0.06, 75, 60, 2, 55, 79, 10],
      ["Bare, no scent", 0, "of wax", null, null, 75, null, null, 60, null, 3],
      ["Cedar oil", null, null, 0.1, 0.07, null, null, null, null, 104],
      ["Old paper oil", null, null, 0.1, 0.03, null, null, null, null, 96],
      [],
    ],
  );
  return {
    name: "Scents",
    widths: [18, 10, 14, 12, 12, 26, 8, 8, 8, 9, 8, 8, 9, 10],
    cells: [
      ...heading(
        "Scents",
        "Scents are fragrance oils. The load is a share of the wax or of the total, as its basis says. The wax maximum is of wax, the product limit of total; Check stays empty while both are kept. The two oils of Attic cedar are here for their own limits and flash points. Temperatures and times stand on the run sheet as they stand here; the cost serves the sheet Candles.",
        6,
      ),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", landscape: true, repeatRows: [3, 3] },
  };
}
