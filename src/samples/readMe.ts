import type { Cell, Look, Sheet } from "../sheet/sheet";
import { cell } from "./layout";

/** A heading, and the sentences that belong to it. */
export interface Group {
  readonly label: string;
  readonly look: Look;
  readonly texts: readonly string[];
}

/** Two columns: one that is wider than the paper cannot be fitted to it. */
const WIDTHS = [45, 45];

/** Saved figures last only in Excel: other programs work all formulas out when they open a file. */
export const FUNCTIONS_NOTE =
  "Formulas that begin with POUR. are worked out by the Pourwright add-in. Without it Excel shows the figures last saved, until something they hang on is changed; other programs show #NAME? in their place.";

export const PAPER_NOTE =
  "From its file this workbook prints one page wide, on A4 with margins that leave each page whole on Letter too.";

/** The first sheet of a sample: whose numbers these are, what to try, and the cautions. */
export function readMeSheet(title: string, groups: readonly Group[]): Sheet {
  const cells: Cell[] = [cell(0, 0, title, { look: "title" })];
  let row = 2;
  for (const { label, look, texts } of groups) {
    cells.push(cell(row++, 0, label, { look: "label" }));
    for (const text of texts) cells.push(cell(row++, 0, text, { look, across: WIDTHS.length }));
    row++;
  }
  return { name: "Read me", widths: WIDTHS, cells, print: { paper: "a4" } };
}
