import type { CellValue } from "../../sheet/sheet";
import { kindOfKey } from "../sheet/layout";

/** Labels of a run sheet beside or below which makers write words. */
export const MADE_BY = "Made by";
export const NOTES = "Notes: anything unusual";
const LABELS: readonly string[] = [MADE_BY, NOTES, "Checked by", "Poured: name, date", "Checked: name, date"];

/** What is written beside a label up to the next one, and right below it where nothing else stands there. */
export function besideLabel(cells: readonly (readonly CellValue[])[], label: string): string {
  const row = cells.findIndex((one) => one.includes(label));
  if (row === -1) return "";
  const line = cells[row] as readonly CellValue[];
  const at = line.indexOf(label);
  const rest = line.slice(at + 1);
  const end = rest.findIndex((cell) => LABELS.includes(String(cell)));
  const beside = (end === -1 ? rest : rest.slice(0, end)).map(wordsIn);
  return [...beside, ...below(cells[row + 1] ?? [], at)].filter((words) => words !== "").join(" ");
}

/** The words of a line that continues the one above: it has no label of its own and nothing in a column before. */
const below = (line: readonly CellValue[], at: number): string[] =>
  at === 0 && wordsIn(line[0] ?? null) === "" ? line.slice(1).map(wordsIn) : [];

const wordsIn = (cell: CellValue): string =>
  cell === null || typeof cell === "object" || kindOfKey(cell) !== undefined ? "" : String(cell).trim();
