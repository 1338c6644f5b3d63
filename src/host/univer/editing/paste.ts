/** Pasting from other programs: cells as they were there, and no text that becomes a formula unseen. */

import {
  CellValueType,
  type ICellData,
  type Injector,
  IUniverInstanceService,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import { ISheetClipboardService } from "@univerjs/preset-sheets-core";
import { type Consequence, cellsOf, type Edit, isFilled, joined, sheetsOf } from "./edits";
import { written } from "./newRows";
import { markedCells, markedText, readMarked } from "./pastedNumbers";
import { pastedWords } from "./readings";

/** What Univer writes into the HTML that it copies, and knows its own cells by. */
const OWN = /data-copy-id="([^\s"]+)"/;

/** Watches what is pasted. */
export class Pasting {
  /** Whether cells are being pasted that come from outside of the page. */
  #fromOutside = false;

  constructor(
    private readonly injector: Injector,
    private readonly say: (words: string) => void,
  ) {
    const clipboard = injector.get(ISheetClipboardService);
    const [byKey, byMenu] = [clipboard.legacyPaste.bind(clipboard), clipboard.paste.bind(clipboard)];
    clipboard.legacyPaste = async (html, text, files) =>
      this.#paste(html ?? "", async (isOwn) => {
        if (isOwn || files || (!html && !text)) return byKey(withFormats(html ?? ""), text, files);
        return this.#fromElsewhere(html ?? "", text ?? "", byKey);
      });
    clipboard.paste = async (item, type) => {
      const [html, text] = await Promise.all(["text/html", "text/plain"].map((kind) => textOf(item, kind)));
      return this.#paste(html ?? "", async (isOwn) => {
        if (isOwn && html) return byKey(withFormats(html), text);
        return html || text ? this.#fromElsewhere(html ?? "", text ?? "", byKey) : byMenu(item, type);
      });
    };
  }

  async #fromElsewhere(html: string, text: string, paste: ISheetClipboardService["legacyPaste"]): Promise<boolean> {
    const cells = html ? withFormats(html) : await tableOf(text);
    return cells ? paste(markedCells(cells), text) : paste("", markedText(text));
  }

  async #paste(html: string, paste: (isOwn: boolean) => Promise<boolean>): Promise<boolean> {
    this.say("");
    const id = OWN.exec(html)?.[1];
    const isOwn =
      id !== undefined && this.injector.get(ISheetClipboardService).copyContentCache().get(id) !== undefined;
    this.#fromOutside = !isOwn;
    try {
      return await paste(isOwn);
    } finally {
      this.#fromOutside = false;
    }
  }

  /** Reads what was pasted, and says how it was taken. */
  read(edit: Edit): Consequence | null {
    const workbook = this.injector.get(IUniverInstanceService).getUnit<Workbook>(edit.unitID);
    const words: string[] = [];
    const all = sheetsOf(edit).flatMap((id) => {
      const sheet = workbook?.getSheetBySheetId(id);
      if (!sheet) return [];
      const { done, doubts } = readMarked(this.injector, edit, sheet);
      words.push(pastedWords(doubts));
      const kept = this.#fromOutside ? this.#keepTexts(edit, sheet) : null;
      if (kept) words.push(kept.words);
      return [done, kept?.done ?? null];
    });
    const said = words.filter(Boolean).join(" ");
    if (said) this.say(said);
    return joined(...all);
  }

  /**
   * Keeps as texts what begins with `=` among several cells from outside: data of another program. Alone it is a
   * formula, as if it were typed, such as an example from the help.
   */
  #keepTexts(edit: Edit, sheet: Worksheet): { readonly done: Consequence; readonly words: string } | null {
    const cells = [...cellsOf(edit.redoMutations, sheet.getSheetId())].flatMap(([row, line]) =>
      [...line].filter(([, cell]) => isFilled(cell)).map(([column, { f }]) => ({ row, column, f })),
    );
    const formulas = cells.filter(({ f }) => f);
    if (cells.length < 2 || formulas.length === 0) return null;
    const value: Record<number, Record<number, ICellData>> = {};
    for (const { row, column, f } of formulas) {
      const text = { f: null, si: null, v: f ?? "", t: CellValueType.FORCE_STRING };
      value[row] = { ...value[row], [column]: text };
    }
    const count = formulas.length;
    const words = `${count === 1 ? "1 pasted text begins" : `${count} pasted texts begin`} with = and stayed text. To compute one, open its cell with F2, take the ' away where there is one, and press Enter.`;
    return { done: written(this.injector, sheet, value), words };
  }
}

async function textOf(item: ClipboardItem, kind: string): Promise<string> {
  return item.types.includes(kind) ? (await item.getType(kind)).text() : "";
}

/** Several cells as text, put as a table that Univer reads; nothing for a single one. Its own way loses blanks and signs. */
async function tableOf(text: string): Promise<string> {
  const whole = text.replace(/\r?\n$/, "");
  if (!/[\t\n]/.test(whole)) return "";
  const { default: papa } = await import(/* webpackChunkName: "delimited" */ "papaparse");
  return htmlOf(papa.parse<string[]>(whole, { delimiter: "\t" }).data);
}

/** Number formats that Excel calls by a name in what it copies, and what they stand for. From memory. */
const FORMATS: Readonly<Record<string, string>> = {
  Percent: "0.00%",
  Fixed: "0.00",
  Standard: "#,##0.00",
  Scientific: "0.00E+00",
  "Short Date": "m/d/yyyy",
  "Medium Date": "d-mmm-yy",
  "Long Date": "dddd, mmmm d, yyyy",
  "Short Time": "h:mm",
  "Medium Time": "h:mm AM/PM",
  "Long Time": "h:mm:ss AM/PM",
};

/** Cells of another program with such names written out, those that are not known left out: Univer stops at a name. */
export const withFormats = (html: string): string =>
  html.replace(
    /mso-number-format:\s*(["']?)([A-Za-z][A-Za-z /]*)\1\s*(?=[;}"'])/g,
    (_, quote: string, name: string) => {
      const format = FORMATS[name.trim()];
      // Each sign of a format is escaped there.
      return format ? `mso-number-format:${quote || '"'}${format.replace(/[^A-Za-z0-9]/g, "\\$&")}${quote || '"'}` : "";
    },
  );

const SIGNS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", "\n": "<br>" };

/** A text of a cell as HTML writes it. */
export const htmlText = (text: string): string =>
  text.replace(/\r/g, "").replace(/[&<>\n]/g, (sign) => SIGNS[sign] as string);

export const htmlOf = (rows: readonly (readonly string[])[]): string =>
  `<table>${rows.map((cells) => `<tr>${cells.map((text) => `<td>${htmlText(text)}</td>`).join("")}</tr>`).join("")}</table>`;
