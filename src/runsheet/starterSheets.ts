import { plain } from "../core/check/plain";
import type { Cell, Sheet } from "../sheet/sheet";
import { matchColumns } from "./kinds";
import type { WeightUnit } from "./settings";
import { sameName } from "./tableReader";
import { headingUnit, weightRatio } from "./weightUnits";

interface Column {
  readonly heading: string;
  readonly width?: number;
  readonly format?: string;
  readonly formula?: string;
}

const ROWS = 12;

/** A table that is in the workbook already. */
interface Present {
  readonly name: string;
  readonly headings: readonly string[];
}

/**
 * The tables a new workbook begins with: their rows are free, ready for the maker's own. Those that are there by
 * name are left out, and a Batch beside another Vessels looks the fills up there, or has them typed.
 */
export function starterSheets(unit: WeightUnit, present: readonly Present[] = []): Sheet[] {
  const weight = { width: 14, format: "0.0" };
  const rate = { width: 16, format: "0.0%" };
  // Where wax is weighed in ounces, thermometers are read in Fahrenheit.
  const degrees = unit === "oz" || unit === "lb" ? "F" : "C";
  const of = (table: string) => (column: string) => `${table}[[#This Row],[${column}]]`;
  const [vessels, batch] = [of("Vessels"), of("Batch")];
  const fill = `Fill weight (${unit})`;
  const there = (name: string) => present.find((table) => sameName(table.name) === sameName(name));
  const sheets = [
    starter(
      "Vessels",
      "Weigh the water each vessel holds to its fill line. A blank wax factor is taken as 0.86 until your own test pour shows a better one.",
      [
        { heading: "Vessel", width: 24 },
        { heading: `Water weight (${unit})`, ...weight },
        { heading: "Wax factor", width: 12, format: "0.000" },
        {
          heading: fill,
          ...weight,
          formula: `=POUR.FILLWEIGHT(${vessels(`Water weight (${unit})`)},${vessels("Wax factor")})`,
        },
      ],
    ),
    starter(
      "Scents",
      "Loads and limits come from the suppliers' documents. A load is a share of the wax or of the total, as its basis says.",
      [
        { heading: "Scent", width: 22 },
        { heading: "Load (%)", ...rate },
        { heading: "Basis (of wax or of total)", width: 14 },
        { heading: "Wax maximum (%)", ...rate },
        { heading: "Product limit (%)", ...rate },
        { heading: `Melt at (${degrees})`, width: 12 },
        { heading: `Add at (${degrees})`, width: 12 },
        { heading: "Stir (min)", width: 12 },
        { heading: `Pour at (${degrees})`, width: 12 },
        { heading: `Flash point (${degrees})`, width: 16 },
        { heading: "Cure days", width: 10 },
      ],
    ),
    starter("Batch", "What to pour: a row for each vessel and scent. Rows without a quantity are left out.", [
      { heading: "Vessel", width: 24 },
      { heading: "Scent", width: 22 },
      { heading: "Quantity", width: 10, format: "0" },
      {
        heading: fill,
        ...weight,
        ...lookUp(there("Vessels") ?? { name: "Vessels", headings: ["Vessel", fill] }, batch("Vessel"), unit),
      },
    ]),
  ];
  return sheets.filter(({ name }) => !there(name));
}

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
  return {
    name,
    widths: columns.map(({ width }) => width ?? 12),
    cells,
    tables: [{ name, row: 3, column: 0, headings: columns.map(({ heading }) => heading), rows: ROWS }],
    frozenRows: 4,
  };
}
