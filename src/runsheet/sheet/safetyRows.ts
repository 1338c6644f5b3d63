import { linesOf, roomIn } from "../../sheet/textLines";
import { nameOf, type ScentRun } from "../plan/runPlan";
import { AT, cellAt, type Rows } from "./layout";
import { limitWords } from "./loadRows";
import type { Page } from "./page";

/** Of the characters that fit by the widths: bold letters take more room, and lines break between words. */
const FILLED = 0.8;

/** More text than this is put into several rows: no program shows a row of any height. */
const MOST = 400;

/** What there is to say for safety of a pot whatever is weighed: right below its title. */
export function safetyRows(page: Page, run: ScentRun): void {
  for (const text of run.remarks.flatMap((one) => piecesOf(`${nameOf(run)}: ${one.text}`))) page.line(text, "alert");
}

/**
 * The line of a pot that says what its weights are over, and what is to fix in it: first what is for safety.
 * @param rows of its ingredients, of their total and of the loads
 */
export function sayRow(
  page: Page,
  run: ScentRun,
  isWeighed: string,
  rows: { readonly ingredients: Rows; readonly total: number; readonly loads: Rows },
): void {
  const each = ({ first, last }: Rows) => Array.from({ length: last - first + 1 }, (_, i) => first + i);
  const loads = (column: "plannedRemark" | "loadRemark") => each(rows.loads).map((row) => cellAt(column, row));
  const [planned, weighed] = [loads("plannedRemark"), loads("loadRemark")];
  const over = planned.length === 0 ? [] : [`IF(${isWeighed},${weighed.join("&")},${planned.join("&")})`];
  const fixes = each(rows.ingredients).map((row) => {
    const remark = cellAt("remark", row);
    return `IF(${remark}="","",${cellAt("name", row)}&": "&${remark}&". ")`;
  });
  const pot = cellAt("potRemark", rows.total);
  const formula = `=${[...over, ...fixes, `IF(${pot}="","",${pot}&". ")`].join("&")}`;
  const room = roomIn({ row: 0, column: AT.name, across: page.width }, page.widths, 0) * FILLED;
  page.row([{ formula, look: "say", across: page.width, lines: Math.max(1, linesOf(limitWords(run), room)) }]);
}

/** A text in pieces short enough for a row, broken between words. */
function piecesOf(text: string): string[] {
  const pieces = [""];
  for (const word of text.split(" ")) {
    const joined = `${pieces.at(-1)} ${word}`.trim();
    if (joined.length > MOST) pieces.push(word);
    else pieces[pieces.length - 1] = joined;
  }
  return pieces;
}
