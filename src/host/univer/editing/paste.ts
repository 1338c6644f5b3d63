/** Pasting from other programs: cells as they were there, and no text that becomes a formula unseen. */

import { type Injector, IUniverInstanceService, type Workbook, type Worksheet } from "@univerjs/core";
import { ISheetClipboardService, PREDEFINED_HOOK_NAME_PASTE } from "@univerjs/preset-sheets-core";
import { type Consequence, type Edit, joined, sheetsOf } from "./edits";
import { markedCells, markedText, type PercentAt, readPasted } from "./pastedNumbers";
import { percentFormat } from "./percent";
import { pastedWords } from "./typedReadings";

const ALL = PREDEFINED_HOOK_NAME_PASTE.DEFAULT_PASTE;
const VALUES = PREDEFINED_HOOK_NAME_PASTE.SPECIAL_PASTE_VALUE;

/** What Univer writes into the HTML that it copies, and knows its own cells by. */
const OWN = /data-copy-id="([^\s"]+)"/;

/** HTML that says more than its text does. */
const CELLS_OR_LINKS = /<(table|a)\b/i;

/** Watches what is pasted. */
export class Pasting {
  /** Where cells are being pasted that come from outside of the page: of each its number format that shows percent. */
  #target: PercentAt | null = null;
  #fromOutside = false;

  constructor(
    private readonly injector: Injector,
    private readonly say: (words: string) => void,
  ) {
    const clipboard = injector.get(ISheetClipboardService);
    const [byKey, byMenu] = [clipboard.legacyPaste.bind(clipboard), clipboard.paste.bind(clipboard)];
    // From Excel by the menu Univer would say that keys paste better.
    const asHtml = (html: string, type: string) => (type === ALL ? byKey(html, "") : byMenu(itemOf(html), type));
    const fromElsewhere = async (html: string, text: string, type: string): Promise<boolean> => {
      // The looks of the cells stay where what comes has none of its own, or none is wanted.
      if (CELLS_OR_LINKS.test(html) && type !== VALUES) return asHtml(markedCells(withFormats(html), false), type);
      const table = await tableOf(text);
      return table ? asHtml(markedCells(table, true), VALUES) : byKey("", markedText(text));
    };
    clipboard.legacyPaste = (html, text, files) =>
      this.#paste(this.#isOwn(html ?? ""), () => {
        const isOther = files || this.#isOwn(html ?? "") || (!html && !text);
        return isOther ? byKey(html, text, files) : fromElsewhere(html ?? "", text ?? "", ALL);
      });
    clipboard.paste = async (item, type = ALL) => {
      const [html = "", text = ""] = await Promise.all(["text/html", "text/plain"].map((kind) => textOf(item, kind)));
      const isOwn = this.#isOwn(html);
      return this.#paste(isOwn, () =>
        isOwn || (!html && !text) ? byMenu(item, type) : fromElsewhere(html, text, type),
      );
    };
    // The button beside what was pasted pastes it anew, in another way.
    const again = clipboard.rePasteWithPasteType.bind(clipboard);
    clipboard.rePasteWithPasteType = (type) => {
      this.#begin(Boolean(clipboard.getPasteOptionsCache()?.source));
      try {
        return again(type);
      } finally {
        this.#end();
      }
    };
    clipboard.addClipboardHook({
      id: "pourwright.percent-cells",
      onBeforePaste: (to) => {
        this.#target = this.#fromOutside ? percentTarget(injector, to) : null;
        return true;
      },
    });
  }

  #isOwn(html: string): boolean {
    const id = OWN.exec(html)?.[1];
    return id !== undefined && this.injector.get(ISheetClipboardService).copyContentCache().get(id) !== undefined;
  }

  async #paste(isOwn: boolean, paste: () => Promise<boolean>): Promise<boolean> {
    this.#begin(isOwn);
    try {
      return await paste();
    } finally {
      this.#end();
    }
  }

  #begin(isOwn: boolean): void {
    this.say("");
    this.#fromOutside = !isOwn;
  }

  #end(): void {
    this.#fromOutside = false;
    this.#target = null;
  }

  /** Reads what was pasted, and says how it was taken. */
  read(edit: Edit): Consequence | null {
    const target = this.#target;
    if (!target) return null;
    const workbook = this.injector.get(IUniverInstanceService).getUnit<Workbook>(edit.unitID);
    const words: string[] = [];
    const all = sheetsOf(edit).flatMap((id) => {
      const sheet = workbook?.getSheetBySheetId(id);
      if (!sheet) return [];
      const { done, doubts, formulas } = readPasted(this.injector, edit, sheet, target);
      words.push(pastedWords(doubts), formulaWords(formulas));
      return [done];
    });
    const said = words.filter(Boolean).join(" ");
    if (said) this.say(said);
    return joined(...all);
  }
}

/** Before the cells are changed: HTML takes their looks away. */
function percentTarget(
  injector: Injector,
  {
    unitId,
    subUnitId,
    range: { rows, cols },
  }: { unitId: string; subUnitId: string; range: { rows: number[]; cols: number[] } },
): PercentAt {
  const sheet = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId)?.getSheetBySheetId(subUnitId);
  const formats = new Map<string, string>();
  for (const row of sheet ? rows : []) {
    for (const column of cols) {
      const format = percentFormat(injector, sheet as Worksheet, row, column, rows[0]);
      if (format) formats.set(`${row},${column}`, format);
    }
  }
  return (row, column) => formats.get(`${row},${column}`) ?? null;
}

function formulaWords(count: number): string {
  if (count === 0) return "";
  const texts = count === 1 ? "1 pasted text begins" : `${count} pasted texts begin`;
  return `${texts} with = and stayed text. To compute one, open its cell with F2, take the ' away where there is one, and press Enter.`;
}

/** All that Univer reads of what is on the clipboard. */
const itemOf = (html: string) =>
  ({ types: ["text/html"], getType: async () => new Blob([html], { type: "text/html" }) }) as unknown as ClipboardItem;

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
