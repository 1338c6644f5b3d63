import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { type Column, heading, table, thisRow, type Value } from "../layout";
import { isFromPack, isPricesFromWrong, PRICES_FROM_WORDS } from "./candleSettings";

const own = thisRow("Items");
const right = { align: "right" } as const;
const amount = { look: "input", ...right } as const;
const money = { look: "input", format: FORMATS.money, ...right } as const;

const item = own("Item");
const ofItem = (...more: string[]): string => `COUNTIFS(${[`Moves[Item],${item}`, ...more].join(",")})`;
/** A sum of changes passes over a text, and one of prices over what was paid in words. */
const BAD_CHANGES = `${ofItem()}>${ofItem('Moves[Change (g)],">0"')}+${ofItem('Moves[Change (g)],"<=0"')}`;
const PAID_FOR_NOTHING = `${ofItem('Moves[Change (g)],"<=0"', 'Moves[Paid],">0"')}>0`;
const BAD_PAID = `AND(NOT(${isFromPack}),${ofItem('Moves[Paid],"<>"')}>${ofItem('Moves[Paid],">0"')})`;

/** What the moves of an item add up to, in its first row alone: an item with several packs has several rows. */
const ON_HAND = `=IF(LEN(${item})*COUNTIF(Moves[Item],${item})=0,"",IF(${BAD_CHANGES},"see Check",IF(MATCH(${item},Items[Item],0)<ROW(${item})-ROW(INDEX(Items[Item],1))+1,"",SUMIF(Moves[Item],${item},Moves[Change (g)]))))`;

/** Of what came in last and was paid for: all other rows give an error, and the last number is found. */
const PAID = `LOOKUP(9E+99,Moves[Paid]/Moves[Change (g)]/((Moves[Item]=${item})*(Moves[Change (g)]>0)*ISNUMBER(Moves[Paid])))`;
const LISTED = `IF(COUNT(${own("Unit price (per kg)")})=1,${own("Unit price (per kg)")}/IF(OR(${own("Kind")}="vessel",${own("Kind")}="component"),1,1000),IF(COUNT(${own("Pack size (g)")},${own("Pack price")})=2,${own("Pack price")}/${own("Pack size (g)")},"no price"))`;
/** Of a gram, or of a piece of what is counted; other sheets take that of an item's first row. */
const PRICE = `=IF(LEN(${item})=0,"",IF(LEN(${own("Check")})>0,"no price",IF(${isFromPack},${LISTED},IFERROR(${PAID},${LISTED}))))`;

const KINDS = ["wax", "scent", "dye", "other", "vessel", "component"];
/** Kind says what the unit price is for. */
const BAD_KIND = `AND(LEN(${own("Unit price (per kg)")})>0,ISNA(MATCH(${own("Kind")},{${KINDS.map((kind) => `"${kind}"`).join(",")}},0)))`;
const badFigure = (column: string, least: string, words: string): [string, string] => [
  `COUNTA(${own(column)})>COUNT(${own(column)})*COUNTIF(${own(column)},"${least}")`,
  `${column.replace(/ \(.*/, "")}: write a number${words}`,
];
/** There is no price while anything here holds. */
const WRONG: readonly (readonly [holds: string, words: string])[] = [
  [isPricesFromWrong, PRICES_FROM_WORDS],
  [BAD_CHANGES, "Change on the sheet Moves: write numbers"],
  [BAD_PAID, "Paid on the sheet Moves: write numbers above 0"],
  [`AND(NOT(${isFromPack}),${PAID_FOR_NOTHING})`, "Paid on the sheet Moves: beside nothing that came in"],
  badFigure("Pack size (g)", ">0", " above 0"),
  badFigure("Pack price", ">=0", ""),
  badFigure("Unit price (per kg)", ">=0", ""),
  badFigure("Reorder below (g)", ">=0", ""),
  badFigure("Delivery", ">=0", ""),
  [BAD_KIND, `Kind: write ${KINDS.slice(0, -1).join(", ")} or ${KINDS.at(-1)}`],
];
const CHECK = `=IF(LEN(${item})=0,"",${WRONG.reduceRight((rest, [holds, words]) => `IF(${holds},"${words}",${rest})`, '""')})`;

/** Invented suppliers, and what an order from each costs on top. */
const WAXES = ["Fennimar Wax", 9.5] as const;
const OILS = ["Quillby Oils", 4.9] as const;
const GLASS = ["Drostle Glass", 12] as const;
const WICKS = ["Wendicot Wicks", 3.5] as const;

type Supplier = readonly [name: string, delivery: number];

const bought = (name: string, kind: string, size: number, price: number, from: Supplier, reorder: Value = null) => [
  ...[name, kind, size, price, null, reorder],
  ...from,
];

const COLUMNS: readonly Column[] = [
  { heading: "Item", look: "input" },
  { heading: "Kind", look: "input" },
  { heading: "On hand (g)", formula: ON_HAND, format: FORMATS.count, ...right },
  { heading: "Pack size (g)", ...amount, format: FORMATS.count },
  { heading: "Pack price", ...money },
  { heading: "Unit price (per kg)", ...money },
  { heading: "Reorder below (g)", ...amount, format: FORMATS.count },
  { heading: "Supplier", look: "input" },
  { heading: "Delivery", ...money },
  { heading: "Price of one", formula: PRICE, format: FORMATS.unitPrice, ...right },
  { heading: "Check", formula: CHECK, look: "alert" },
];

/** All that is bought and used: the packs it is sold in, and by the moves what is on hand. The last rows are free. */
export function items(): Sheet {
  const list = table("Items", 3, 0, COLUMNS, [
    bought("Wax", "wax", 10_000, 60.5, WAXES, 3000),
    bought("Soy wax", "wax", 10_000, 54, WAXES),
    bought("Rapeseed wax", "wax", 5000, 34.5, WAXES),
    bought("Cedar oil", "scent", 50, 5.2, OILS),
    bought("Cedar oil", "scent", 100, 8.9, OILS),
    bought("Cedar oil", "scent", 250, 19.5, OILS),
    bought("Old paper oil", "scent", 100, 9.6, OILS),
    ["Colour block, cedar", "dye", null, null, 42],
    bought("Lamplit quince", "scent", 250, 13.2, OILS),
    bought("Plum thunder", "scent", 250, 14, OILS),
    bought("Rain on slate", "scent", 250, 13.5, OILS),
    bought("Tea-light cup", "vessel", 100, 18, GLASS),
    bought("Small tin", "vessel", 48, 33.6, GLASS),
    bought("Hexagon jar", "vessel", 24, 36, GLASS),
    bought("Medium tin", "vessel", 48, 49.2, GLASS),
    bought("Straight tumbler", "vessel", 12, 25.8, GLASS),
    bought("Tapered glass", "vessel", 12, 28.8, GLASS),
    bought("Stoneware mug", "vessel", 6, 28.8, GLASS),
    bought("Tall tumbler", "vessel", 12, 33.6, GLASS),
    bought("Square glass", "vessel", 12, 35.4, GLASS),
    bought("Footed bowl", "vessel", 6, 31.2, GLASS),
    bought("Wide bowl", "vessel", 6, 46.2, GLASS),
    bought("Wick, cotton 2", "component", 100, 5, WICKS),
    bought("Wick, cotton 3", "component", 50, 3.5, WICKS),
    bought("Wick, cotton 4", "component", 50, 4, WICKS),
    bought("Wick, cotton 5", "component", 50, 4.5, WICKS),
    bought("Wick, cotton 6", "component", 50, 5, WICKS, 20),
    bought("Wick, cotton 7", "component", 50, 5.5, WICKS),
    bought("Tumbler lid", "component", 12, 9.6, GLASS),
    bought("Hexagon jar lid", "component", 24, 14.4, GLASS),
    ["Safety label", "component", null, null, 0.04],
    [],
    [],
  ]);
  return {
    name: "Items",
    widths: [24, 12, 12, 12, 12, 14, 14, 18, 10, 13, 30],
    cells: [
      ...heading(
        "Items",
        "All that is bought and used: waxes and scents (fragrance oils) in grams, vessels and components by the piece. On hand is what the sheet Moves adds up to. A second size of pack has a row of its own; a unit price is only needed where there is no pack. Wax is what goes into every scent that has no recipe. Price of one is that of a gram or a piece, by what was paid last or by the pack: all costs are worked out with it. Check says why there is none.",
        11,
      ),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", landscape: true, repeatRows: [3, 3] },
  };
}
