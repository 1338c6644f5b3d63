/** The workbooks that a maker can begin from. */

import { EXAMPLE_NAME } from "../host/univer/editing/choices";
import { workbookData } from "../host/univer/workbook";
import { FIRST_SETTINGS } from "../runsheet/settings";
import { starterSheets } from "../runsheet/sheet/starterSheets";
import { SAMPLES } from "../samples/index";
import type { Cell, Sheet } from "../sheet/sheet";
import type { NewWorkbook } from "./parts";

export interface Beginning {
  /** What the press that makes one says. */
  readonly label: string;
  /** What it is for, in a line. */
  readonly note: string;
  readonly make: () => NewWorkbook;
  /** The cell to begin at, where it is not the first one. */
  readonly at?: { readonly sheet: string; readonly row: number; readonly column: number };
}

const NAMES: Readonly<Record<string, string>> = {
  studio: "Demo studio",
  "burn-tests": "Demo burn tests",
};

const NOTES: Readonly<Record<string, string>> = {
  studio: "An invented studio: vessels, scents, a batch and its pots, stock, what each candle costs, its label.",
  "burn-tests": "Burn tests of wicks, read and compared, and net weights.",
};

/** The first row below the headings of the starter tables. */
const EXAMPLE_ROW = 4;

const own = (label: string, note: string, sheets: () => readonly Sheet[], at?: Beginning["at"]): Beginning => ({
  label,
  note,
  make: () => ({ name: "My workbook", data: workbookData("", sheets()), original: null }),
  ...(at && { at }),
});

/** The maker's own tables, with one row filled in to show what goes where. */
export const STARTER = own(
  "Starter tables",
  "Vessels, scents and what to pour: free rows to fill in, and one example.",
  () => withExample(starterSheets(FIRST_SETTINGS.unit)),
  { sheet: "Vessels", row: EXAMPLE_ROW + 1, column: 0 },
);

export const BEGINNINGS: readonly Beginning[] = [
  STARTER,
  own("An empty workbook", "One sheet with nothing in it.", () => [{ name: "Sheet1", widths: [], cells: [] }]),
  ...SAMPLES.map(({ id, title, sheets }) => {
    const name = NAMES[id] ?? title;
    return {
      label: name,
      note: NOTES[id] ?? "",
      make: () => ({ name, data: workbookData("", sheets()), original: { sample: id } }),
    };
  }),
];

export const DEMO = BEGINNINGS.find(({ label }) => label === NAMES.studio) as Beginning;

/** The vessels with an example that says of itself that it is one; no run sheet pours it, for no batch names it. */
function withExample(sheets: readonly Sheet[]): Sheet[] {
  const example: readonly Cell[] = [
    { row: EXAMPLE_ROW, column: 0, look: "note", content: { text: EXAMPLE_NAME } },
    { row: EXAMPLE_ROW, column: 1, look: "note", content: { number: 200 } },
  ];
  return sheets.map((sheet) => {
    if (sheet.name !== "Vessels") return sheet;
    const cells = sheet.cells.map((cell) => {
      const { look, content } = example.find(({ row, column }) => row === cell.row && column === cell.column) ?? {};
      return content ? { ...cell, look, content } : cell;
    });
    return { ...sheet, cells };
  });
}
