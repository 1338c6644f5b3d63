import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { type Column, cell, heading, headingRow, setting, table, thisRow, unlessBlank } from "../layout";
import { firstRow, isUnknown } from "./slips";

const own = thisRow("ByScent");
const right = { align: "right" } as const;

/** A name that the batch does not know would read as a scent of which nothing is poured. */
const sumOf = (column: string): string =>
  unlessBlank(
    own("Scent"),
    `IF(COUNTIF(Batch[Scent],${own("Scent")})=0,"not on Batch",SUMIF(Batch[Scent],${own("Scent")},Batch[${column}]))`,
  );
const LEFT_OUT = firstRow(
  "Batch",
  "Scent",
  `(LEN(Batch[Scent])>0)*${isUnknown("Batch[Scent]", "ByScent", "Scent")}`,
  "its scent is not below.",
);
const SLIPS = `IF(COUNT($B$5)=0,"Extra to melt (loss): write a share, 0 for none.",IF(LEN(${LEFT_OUT})=0,"","Batch: "&${LEFT_OUT}))`;

/** The quantities of one scent's candles, blank beside the others: a pot holds one scent. */
const quantitiesOf = (scent: string): string => `IF(Batch[Scent]=${scent},Batch[Quantity],"")`;

/** The columns a plan spills into, and the rows kept ready for it. */
const PLAN: readonly Column[] = [
  { heading: "Pot", format: FORMATS.count, align: "center" },
  { heading: "Vessel" },
  { heading: "Candles", format: FORMATS.count, ...right },
  { heading: "To melt (g)", format: FORMATS.weight, ...right },
];
const PLAN_ROWS = 12;

/** How many pots each scent takes, and which candles are poured from which pot for one of them. */
export function pots(): Sheet {
  const list = table(
    "ByScent",
    7,
    0,
    [
      { heading: "Scent", look: "input" },
      { heading: "Candles", formula: sumOf("Quantity"), format: FORMATS.count, ...right },
      { heading: "Wax (g)", formula: sumOf("Wax total (g)"), format: FORMATS.weight, ...right },
      { heading: "Scent (g)", formula: sumOf("Scent total (g)"), format: FORMATS.weight, ...right },
      {
        heading: "Pots",
        formula: `=POUR.POTCOUNT(Batch[Fill weight (g)],${quantitiesOf(own("Scent"))},$B$4,$B$5)`,
        format: FORMATS.count,
        ...right,
      },
    ],
    [["Lamplit quince"], ["Attic cedar"], ["Plum thunder"], ["Rain on slate"], ["Bare, no scent"]],
  );
  const plan = `=IF(COUNTIF(Batch[Scent],B6)=0,"not on the sheet Batch",POUR.POTPLAN(Batch[Vessel],Batch[Fill weight (g)],${quantitiesOf("B6")},B4,B5))`;
  return {
    name: "Pots",
    widths: [22, 22, 12, 12, 10],
    cells: [
      ...heading(
        "Pots",
        "Whole candles, one scent (fragrance oil) a pot, the fewest pots. The loss is melted on top of what is poured.",
        5,
      ),
      ...setting(3, "Pot capacity (g)", 2500, "The most one pot melts at once.", 5, FORMATS.scale),
      ...setting(4, "Extra to melt (loss)", 0.03, "What stays in the pot and the jug.", 5, FORMATS.load),
      ...setting(5, "Scent to plan", "Lamplit quince", "One of the scents below.", 5),
      cell(6, 0, { formula: `=${SLIPS}` }, { look: "alert", across: 5 }),
      ...list.cells,
      cell(14, 0, "Pots for the scent to plan", { look: "label" }),
      ...headingRow(15, 0, PLAN),
      ...Array.from({ length: PLAN_ROWS }, (_, r) =>
        PLAN.map(({ heading: _, ...show }, c) => cell(16 + r, c, r + c === 0 ? { formula: plan } : null, show)),
      ).flat(),
    ],
    tables: [list.table],
    print: { paper: "a4" },
  };
}
