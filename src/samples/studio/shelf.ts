import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { type Column, cell, heading, headingRow, setting, table, thisRow, type Value } from "../layout";

const own = thisRow("Shelf");
const right = { align: "right" } as const;
const weight = { format: FORMATS.weight, ...right };
const scale = { format: FORMATS.scale, ...right };

const MELT: readonly Column[] = [
  { heading: "To melt" },
  { heading: "Exact (g)", ...weight },
  { heading: "On the scale (g)", ...scale },
];

/** All of a column of the batch for the scent to plan, with the loss. */
const melted = (column: string) => ({
  formula: `=IF(COUNTIF(Batch[Scent],Pots!$B$6)=0,"not on Batch",SUMIF(Batch[Scent],Pots!$B$6,Batch[${column}])*(1+Pots!$B$5))`,
});

/** The item to buy, and what the batch takes of it: melted with the loss, or counted with the candles. */
const ITEM = "$B$28";
const POURED =
  "(SUMIFS(Batch[Wax total (g)],Batch[Scent],Recipes[Scent])+SUMIFS(Batch[Scent total (g)],Batch[Scent],Recipes[Scent]))";
const MELTED = [
  `SUMPRODUCT((Recipes[Ingredient]=${ITEM})*${POURED},Recipes[In 100 g])/100`,
  `IF(COUNTIF(Recipes[Scent],${ITEM})=0,SUMIFS(Batch[Scent total (g)],Batch[Scent],${ITEM}))`,
  `IF(${ITEM}="Wax",SUMPRODUCT((COUNTIF(Recipes[Scent],Batch[Scent])=0)*1,Batch[Wax total (g)]))`,
];
/** A sum passes over what is no number. */
const NO_EACH = `SUMPRODUCT((Components[Item]=${ITEM})*(1-ISNUMBER(Components[Each])))>0`;
const TAKES = `=IF(${NO_EACH},"Each on Components: no number",(${MELTED.join("+")})*(1+Pots!$B$5)+SUMIFS(Batch[Quantity],Batch[Vessel],${ITEM})+SUMPRODUCT((Components[Item]=${ITEM})*SUMIFS(Batch[Quantity],Batch[Vessel],Components[Vessel]),Components[Each]))`;
const PACK = `(Items[Item]=${ITEM})*(Items[Pack size (g)]>0)`;
const PACKS = `MAX(0,B29-B30),IF(${PACK},Items[Pack size (g)],""),IF(${PACK},Items[Pack price],"")`;
const ofVessel = `INDEX(Vessels[Fill weight (g)],MATCH($B$13,Vessels[Vessel],0))`;
const ofScent = (column: string): string => `INDEX(Scents[${column}],MATCH($B$14,Scents[Scent],0))`;
/** Whether words stand in its On hand. Programs differ on what "?*" counts of numbers. */
const saysWhy = (item: string): string =>
  `SUMPRODUCT((Items[Item]=${item})*ISTEXT(Items[On hand (g)])*(LEN(Items[On hand (g)])>0))>0`;
/** An item may stand in several rows of the items; one that stands in none is not known to be 0. */
const onHand = (item: string): Value => ({
  formula: `=IF(COUNTIF(Items[Item],${item})=0,NA(),IF(${saysWhy(item)},"see Check on Items",SUMIF(Items[Item],${item},Items[On hand (g)])))`,
  look: "body",
});
const oneCandle = (part: string): Value => ({
  formula: `=POUR.${part}(${ofVessel},${ofScent("Load (%)")},${ofScent("Basis (of wax or of total)")})`,
  format: FORMATS.weight,
  look: "body",
});

const OF_VESSEL = `Components[Vessel],$B$13,Components[Item],${own("Item")}`;
/** A component of the vessel, by its name in the row. */
const component = (item: string): Value[] => [
  item,
  onHand(own("Item")),
  {
    formula: `=IF(COUNTIFS(${OF_VESSEL})>COUNTIFS(${OF_VESSEL},Components[Each],">0"),"how many?",SUMIFS(Components[Each],${OF_VESSEL}))`,
    format: FORMATS.count,
    look: "body",
  },
  "pieces",
];

/** What the scale can show of the day's wax and scent, and how many candles of one kind the shelf allows. */
export function shelf(): Sheet {
  const list = table(
    "Shelf",
    15,
    0,
    [
      { heading: "Item", look: "input" },
      { heading: "On hand", look: "input", format: FORMATS.count, ...right },
      { heading: "One candle takes", look: "input", format: FORMATS.count, ...right },
      { heading: "Unit", look: "input", align: "center" },
    ],
    [
      ["Wax", onHand('"Wax"'), oneCandle("WAXPART"), "g"],
      ["Scent", onHand("$B$14"), oneCandle("SCENTPART"), "g"],
      ["Vessel", onHand("$B$13"), 1, "pieces"],
      component("Wick, cotton 6"),
      component("Tumbler lid"),
      component("Safety label"),
    ],
  );
  return {
    name: "Shelf",
    widths: [22, 18, 18, 24],
    cells: [
      ...heading(
        "Scale and shelf",
        "The scent (fragrance oil) to plan on the sheet Pots, as the scale can weigh it; then what the shelf allows.",
        4,
      ),
      ...setting(3, "Scale reads to (g)", 1, "The smallest step the scale shows.", 4),
      ...headingRow(5, 0, MELT),
      cell(6, 0, "Wax"),
      cell(6, 1, melted("Wax total (g)"), weight),
      cell(6, 2, { formula: "=POUR.WEIGHOUT(B7:B8,B4)" }, scale),
      cell(7, 0, "Scent"),
      cell(7, 1, melted("Scent total (g)"), weight),
      cell(7, 2, null, scale),
      cell(8, 0, "Total", { look: "total" }),
      cell(8, 1, { formula: '=IF(COUNT(B7:B8)<2,"",SUM(B7:B8))' }, { look: "total", ...weight }),
      cell(8, 2, { formula: "=SUM(C7:C8)" }, { look: "total", ...scale }),
      cell(10, 0, "What the shelf allows", { look: "label" }),
      cell(
        11,
        0,
        "A candle of this kind takes what the table says; the scarcest item decides. What is on hand comes from the sheet Items. For another vessel write its wick and lid here.",
        {
          look: "note",
          across: 4,
        },
      ),
      ...setting(12, "Vessel", "Straight tumbler", "A name from the sheet Vessels.", 4),
      ...setting(13, "Scent", "Lamplit quince", "A name from the sheets Scents and Items.", 4),
      ...list.cells,
      cell(23, 0, "Candles it makes", { look: "total" }),
      cell(23, 1, { formula: "=POUR.MAKEABLE(Shelf[On hand],Shelf[One candle takes])" }, { look: "total", ...scale }),
      cell(25, 0, "What to buy", { look: "label" }),
      cell(26, 0, "Of one item at a time, for the batch; the pane says of all which packs to buy.", {
        look: "note",
        across: 4,
      }),
      ...setting(27, "Item", "Cedar oil", "A name from the sheet Items.", 4),
      cell(28, 0, "The batch takes"),
      cell(28, 1, { formula: TAKES }, weight),
      cell(29, 0, "On hand"),
      cell(29, 1, onHand(ITEM), scale),
      cell(30, 0, "What is missing costs"),
      cell(30, 1, { formula: `=POUR.PACKCOST(${PACKS})` }, { format: FORMATS.money, ...right }),
    ],
    tables: [list.table],
    print: { paper: "a4" },
  };
}
