import { plain } from "../../core/check/plain";
import type { Cell, Sheet } from "../../sheet/sheet";
import type { WeightUnit } from "../settings";
import { headingUnit } from "../tables/headings/headingUnit";
import { KINDS, type KindName, matchColumns } from "../tables/kinds";
import { sameName } from "../tables/tableReader";
import { weightRatio } from "../tables/weightUnits";

interface Column {
  readonly heading: string;
  readonly width?: number;
  readonly format?: string;
  readonly formula?: string;
  /** The table and its column that know what may stand here. */
  readonly choices?: readonly [table: string, column: string];
}

const ROWS = 12;

/** A table that is in the workbook already. */
interface Present {
  readonly name: string;
  readonly headings: readonly string[];
}

/** The further tables that can be put in, each under the name by which it is found. */
export type FurtherKind = Exclude<KindName, "pour">;

/**
 * The tables a new workbook begins with: their rows are free, ready for the maker's own. Those that are there by
 * name are left out, and a Batch beside another Vessels looks the fills up there, or has them typed.
 */
export function starterSheets(unit: WeightUnit, present: readonly Present[] = []): Sheet[] {
  const there = (name: string) => present.find((table) => sameName(table.name) === sameName(name));
  const fill = fillHeading(unit);
  const sheets = [
    starterSheet("vessels", unit),
    starterSheet("scents", unit),
    starter(
      "Batch",
      "What to pour: a row for each vessel and scent (fragrance oil). Rows without a quantity are left out. A row typed or pasted right below the table becomes a part of it; one that does not, the pane asks about.",
      [
        { heading: "Vessel", width: 24, choices: ["Vessels", "Vessel"] },
        { heading: "Scent", width: 22, choices: ["Scents", "Scent"] },
        { heading: "Quantity", width: 10 },
        {
          heading: fill,
          ...weightLook(unit),
          ...lookUp(
            there("Vessels") ?? { name: "Vessels", headings: ["Vessel", fill] },
            "Batch[[#This Row],[Vessel]]",
            unit,
          ),
        },
      ],
    ),
  ];
  return sheets.filter(({ name }) => !there(name));
}

/** A further table with free rows. */
export function starterSheet(kind: FurtherKind, unit: WeightUnit): Sheet {
  const { note, columns } = FURTHER[kind](unit);
  return starter(KINDS[kind].name, note, columns);
}

const fillHeading = (unit: WeightUnit): string => `Fill weight (${unit})`;
const weightLook = (unit: WeightUnit) => ({
  width: 14,
  format: unit === "g" ? "0.0" : unit === "oz" ? "0.00" : "0.000",
});
const RATE = { width: 16, format: "0.0%" };
const MONEY = { width: 14, format: "#,##0.00" };

const FURTHER: Readonly<
  Record<FurtherKind, (unit: WeightUnit) => { readonly note: string; readonly columns: readonly Column[] }>
> = {
  vessels: (unit) => {
    const water = `Water weight (${unit})`;
    const formula = `=POUR.FILLWEIGHT(Vessels[[#This Row],[${water}]],Vessels[[#This Row],[Wax factor]])`;
    return {
      note: "Weigh the water each vessel holds to its fill line. A blank wax factor is taken as 0.86 until your own test pour shows a better one.",
      columns: [
        { heading: "Vessel", width: 24 },
        { heading: water, ...weightLook(unit) },
        { heading: "Wax factor", width: 12, format: "0.000" },
        { heading: fillHeading(unit), ...weightLook(unit), formula },
      ],
    };
  },
  scents: (unit) => {
    // Where wax is weighed in ounces, thermometers are read in Fahrenheit.
    const degrees = unit === "oz" || unit === "lb" ? "F" : "C";
    return {
      note: "Loads and limits come from the suppliers' documents; write 6% or 0.06. A load is a share of the wax or of the total, as its basis says.",
      columns: [
        { heading: "Scent", width: 22 },
        { heading: "Load (%)", ...RATE },
        { heading: "Basis (of wax or of total)", width: 14 },
        { heading: "Wax maximum (%)", ...RATE },
        { heading: "Product limit (%)", ...RATE },
        { heading: `Melt at (${degrees})`, width: 12 },
        { heading: `Add at (${degrees})`, width: 12 },
        { heading: "Stir (min)", width: 12 },
        { heading: `Pour at (${degrees})`, width: 12 },
        { heading: `Flash point (${degrees})`, width: 16 },
        { heading: "Cure days", width: 10 },
      ],
    };
  },
  recipes: () => ({
    note: "A row for each ingredient of a scent. Basis part: parts of the wax, any sum; of wax or of total: a load, such as 6%. Kind: wax, scent, dye or additive.",
    columns: [
      { heading: "Scent", width: 22, choices: ["Scents", "Scent"] },
      { heading: "Ingredient", width: 24 },
      { heading: "Share", width: 10 },
      { heading: "Basis", width: 12 },
      { heading: "Kind", width: 12 },
    ],
  }),
  stock: (unit) => ({
    note: `What is on hand, by the names that the run sheet uses: Wax or the ingredient, the scent, the vessel. Weights in ${unit}, vessels by number. An item with several packs may have several rows.`,
    columns: [
      { heading: "Item", width: 24 },
      { heading: `On hand (${unit})`, width: 14 },
      { heading: `Pack size (${unit})`, width: 14 },
      { heading: "Pack price", ...MONEY },
    ],
  }),
  prices: (unit) => ({
    note: `What one ${unit} of an ingredient costs, or one vessel, by the names that the run sheet uses.`,
    columns: [
      { heading: "Item", width: 24 },
      { heading: `Unit price (per ${unit})`, width: 16, format: "#,##0.00##" },
    ],
  }),
};

/** The formula that looks a vessel's fill up in this unit; none where the table of vessels has no column for it. */
function lookUp({ name, headings }: Present, sought: string, unit: WeightUnit): { formula?: string } {
  const { vessel, fill } = matchColumns("pour", headings);
  if (vessel === undefined || fill === undefined) return {};
  const known = headingUnit(headings[fill] as string);
  if (known && !("weight" in known)) return {};
  const ratio = weightRatio(known, unit);
  const column = (place: number) => `${name}[${escaped(headings[place] as string)}]`;
  return {
    formula: `=IF(${sought}="","",INDEX(${column(fill)},MATCH(TRIM(${sought}),${column(vessel)},0))${ratio === 1 ? "" : `*${plain(ratio)}`})`,
  };
}

/** A heading as a reference writes it: an apostrophe before each sign that would end it. */
const escaped = (heading: string): string => heading.replace(/['[\]#@]/g, "'$&");

function starter(name: string, note: string, columns: readonly Column[]): Sheet {
  const cells: Cell[] = [
    { row: 0, column: 0, content: { text: name }, look: "title" },
    { row: 1, column: 0, content: { text: note }, look: "note", across: columns.length },
  ];
  for (const [column, { heading, format, formula }] of columns.entries()) {
    cells.push({ row: 3, column, content: { text: heading }, look: "heading" });
    for (let row = 4; row < 4 + ROWS; row++) {
      cells.push({
        row,
        column,
        look: formula ? "body" : "input",
        ...(format && { format }),
        ...(formula && { content: { formula } }),
      });
    }
  }
  const choices = columns.flatMap(({ heading, choices: of }) => (of ? { heading, from: of[0], column: of[1] } : []));
  return {
    name,
    widths: columns.map(({ width }) => width ?? 12),
    cells,
    tables: [
      {
        name,
        row: 3,
        column: 0,
        headings: columns.map(({ heading }) => heading),
        rows: ROWS,
        ...(choices.length > 0 && { choices }),
      },
    ],
    frozenRows: 4,
  };
}
