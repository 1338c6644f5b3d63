/** The strip under the sheet: what is wrong in the selected cell, and all formulas to fix. */

import { cellName, type Problem } from "../engine/problems";
import type { CellPlace, Spreadsheet } from "../host/univer/start";
import { byId } from "./byId";
import { setText } from "./setText";

/** More than this nobody reads; with the first ones fixed, the next ones appear. */
const LISTED = 50;

export function showMessages(spreadsheet: Spreadsheet): void {
  const message = byId("message");
  const details = byId("problems") as HTMLDetailsElement;
  const summary = details.querySelector("summary") as HTMLElement;
  const list = details.querySelector("ul") as HTMLElement;

  /** As of the last change: looking through a large workbook takes a while, and a selection changes none of it. */
  let problems: readonly Problem[] = [];
  /** What was told of the last thing done, and on which sheet: it stays until the next one, wherever the selection goes. */
  let said = { words: "", sheet: "" };
  const lastSaid = (sheet = said.sheet) =>
    said.words !== "" && sheet !== said.sheet ? `${said.sheet}: ${said.words}` : said.words;
  const showSelected = () => {
    const selected = spreadsheet.selectedCell();
    const here = problems.find(
      ({ sheet, row, column }) => sheet === selected?.sheet && row === selected.row && column === selected.column,
    );
    const text = here ? `${cellName(here)}: ${here.message}` : lastSaid(selected?.sheet);
    // Only where it differs: a live region would be read out again.
    if (message.textContent === text) return;
    message.replaceChildren(...(here?.from ? [`${cellName(here)}: `, leading(here.message, here.from)] : [text]));
  };
  const show = () => {
    problems = spreadsheet.problems();
    showSelected();
    const own = problems.filter((problem) => problem.own);
    details.hidden = own.length === 0;
    setText(summary, own.length === 1 ? "1 formula to fix" : `${own.length} formulas to fix`);
    list.replaceChildren(...own.slice(0, LISTED).map(entry));
  };

  /** A button that leads to a cell. */
  const leading = (text: string, { sheet, row, column }: CellPlace) => {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = text;
    button.addEventListener("click", () => spreadsheet.host.select({ sheet, row, column, rows: 1, columns: 1 }));
    return button;
  };
  const entry = (problem: Problem) => {
    const item = document.createElement("li");
    item.append(leading(`${problem.sheet}!${cellName(problem)}: ${problem.message}`, problem));
    return item;
  };

  spreadsheet.onSay((words) => {
    said = { words, sheet: spreadsheet.selectedCell()?.sheet ?? "" };
    showSelected();
  });
  spreadsheet.onSelect(showSelected);
  spreadsheet.host.onChange(show);
  show();
}
