/** What is copied for other programs keeps the line breaks inside its cells. */

import { extractPureTextFromCell, type Injector, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { ISheetClipboardService } from "@univerjs/preset-sheets-core";
import { htmlText } from "./paste";

/** What was typed into a cell with a line break has a return there, what a file brought a line feed. */
const BREAK = /[\r\n]/;
const BREAKS = /\r\n?/g;

/** Univer leaves them out of HTML, and in plain text one would begin another row. */
export function keepLineBreaks(injector: Injector): void {
  const clipboard = injector.get(ISheetClipboardService);
  let sheet: ReturnType<Workbook["getSheetBySheetId"]>;
  clipboard.addClipboardHook({
    id: "pourwright.line-breaks",
    // The first that has something to say of a cell is heard.
    priority: -1,
    onBeforeCopy: (unitId, sheetId) => {
      sheet = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId)?.getSheetBySheetId(sheetId);
    },
    onCopyCellContent: (row, column) => {
      const cell = sheet?.getCell(row, column);
      return !cell?.p && typeof cell?.v === "string" && cell.v.includes("\n") ? htmlText(cell.v) : "";
    },
  });
  const generate = clipboard.generateCopyContent.bind(clipboard);
  clipboard.generateCopyContent = (...asked) => {
    const content = generate(...asked);
    if (!content) return content;
    const texts: string[] = [];
    content.matrixFragment.forValue((_row, _column, cell) => {
      const text = cell?.p || typeof cell?.v !== "string" ? extractPureTextFromCell(cell) : cell.v;
      if (BREAK.test(text)) texts.push(text);
    });
    return { ...content, plain: quoted(content.plain, texts) };
  };
}

/** Plain text of rows in which these texts of several lines, in their order, stand in quotes. */
export function quoted(plain: string, texts: readonly string[]): string {
  let [done, rest] = ["", plain];
  for (const text of texts) {
    const at = rest.indexOf(text);
    if (at < 0) continue;
    done += `${rest.slice(0, at)}"${text.replaceAll('"', '""').replaceAll(BREAKS, "\n")}"`;
    rest = rest.slice(at + text.length);
  }
  return done + rest;
}
