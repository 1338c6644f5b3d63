import type { Cell, Look, Sheet } from "../sheet/sheet";
import { cell } from "./layout";

/** A heading, and the sentences that belong to it. */
export interface Group {
  readonly label: string;
  readonly look: Look;
  readonly texts: readonly string[];
}

/** The first sheet of a sample: whose numbers these are, what to try, and the cautions. */
export function readMeSheet(title: string, groups: readonly Group[]): Sheet {
  const cells: Cell[] = [cell(0, 0, title, { look: "title" })];
  let row = 2;
  for (const { label, look, texts } of groups) {
    cells.push(cell(row++, 0, label, { look: "label" }));
    for (const text of texts) cells.push(cell(row++, 0, text, { look }));
    row++;
  }
  return { name: "Read me", widths: [70], cells, print: { paper: "a4" } };
}
