/** Cells of a file as Univer's, and back. */

import type { ICellData } from "@univerjs/core";
import { isPlainText } from "../../../engine/plainText";
import { type FormulaPlace, type PlacedTable, readableFormula } from "../../../engine/references";
import type { BookCell, CellStyle } from "../../../file/book";
import { PLAIN_STYLE } from "../../../file/emptyBook";
import type { CellValue } from "../../../sheet/sheet";
import { VALUE_TYPE } from "./codes";
import { toFile } from "./fileFormula";
import { documentKey, documentRuns, documentText, type PlacedLink, textDocument } from "./richText";
import { type StyleNumbers, styleId } from "./styleData";

/** What of a cell Univer has no place for goes along in it under this key. */
export const ASIDE = "file";

export interface Aside {
  /** The number of a link, where the cell's text cannot carry it. */
  readonly link?: number;
  /** What a formula covers that fills more cells than its own. */
  readonly spill?: NonNullable<BookCell["spill"]>;
  /** A text that the file does not mark as forced to be one, though it would be read as something else if typed. */
  readonly unmarked?: true;
}

export const asideOf = (cell: ICellData): Aside => (cell.custom?.[ASIDE] as Aside | undefined) ?? {};

/** The codes of errors that a cell may show. */
const ERRORS =
  /^#(DIV\/0!|N\/A|NAME\?|NULL!|NUM!|REF!|VALUE!|SPILL!|CALC!|BUSY!|GETTING_DATA|FIELD!|BLOCKED!|CONNECT!|UNKNOWN!|ERROR!|CYCLE!)$/;

export interface CellLink extends PlacedLink {
  readonly number: number;
}

export function cellData(
  cell: BookCell,
  place: FormulaPlace,
  {
    tables,
    styles,
    link,
    isStyled,
  }: {
    readonly tables: readonly PlacedTable[];
    readonly styles: readonly CellStyle[];
    readonly link: CellLink | undefined;
    /** Whether its row or column has a look of its own, which the cell's would else not hide. */
    readonly isStyled: boolean;
  },
): ICellData {
  const data: ICellData = cell.style !== 0 || isStyled ? { s: styleId(cell.style) } : {};
  const aside: { -readonly [K in keyof Aside]: Aside[K] } = {};
  const { value, formula, runs } = cell;
  const isText = typeof value === "string" && formula === undefined && !cell.spilled;
  if (isText) {
    const isForced = cell.quoted || !isPlainText(value);
    if (isForced && !cell.quoted) aside.unmarked = true;
    Object.assign(data, { v: value, t: isForced ? VALUE_TYPE.forcedText : VALUE_TYPE.text });
    const font = (styles[cell.style] ?? PLAIN_STYLE).font;
    const linked = link?.url ? link : null;
    if (value && (runs || linked)) data.p = textDocument(value, font, runs, linked);
  } else if (!cell.spilled) Object.assign(data, valueData(value));
  if (formula !== undefined) data.f = readableFormula(formula, place, tables);
  if (cell.spill) aside.spill = cell.spill;
  if (link && !(data.p && link.url)) aside.link = link.number;
  if (Object.keys(aside).length > 0) data.custom = { [ASIDE]: aside };
  return data;
}

function valueData(value: CellValue): ICellData {
  if (value === null) return {};
  if (typeof value === "number") return { v: value, t: VALUE_TYPE.number };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: VALUE_TYPE.boolean };
  return { v: typeof value === "string" ? value : value.error, t: VALUE_TYPE.text };
}

/** What a cell's value is, exact. */
export function cellValue({ v, t, p }: ICellData): CellValue {
  if (p?.body) return documentText(p.body);
  if (v === null || v === undefined) return null;
  if (t === VALUE_TYPE.forcedText) return String(v);
  if (t === VALUE_TYPE.boolean || typeof v === "boolean") return v === 1 || v === true || v === "1";
  // The engine may give a zero a sign, which no file knows.
  if (t === VALUE_TYPE.number) return Number(v) + 0;
  if (typeof v === "string" && ERRORS.test(v)) return { error: v };
  return t === VALUE_TYPE.text ? String(v) : v;
}

/** How what stands in cells now was said in the file. */
export class CellMemory {
  readonly #formulas = new Map<string, string>();
  readonly #texts = new Map<string, Pick<BookCell, "value" | "runs">>();

  constructor(private readonly tables: readonly PlacedTable[]) {}

  note(cell: BookCell, data: ICellData): void {
    if (data.f && cell.formula !== undefined && data.f !== cell.formula) this.#formulas.set(data.f, cell.formula);
    if (data.p?.body) {
      this.#texts.set(documentKey(data.p.body), { value: cell.value, ...(cell.runs && { runs: cell.runs }) });
    }
  }

  /** Only while the tables that it names are called as they were. */
  formula(said: string, place: FormulaPlace, tables: readonly PlacedTable[]): string {
    const now = toFile(said, place, tables);
    const before = this.#formulas.get(said);
    return before !== undefined && toFile(said, place, this.tables) === now ? before : now;
  }

  text(data: ICellData): Pick<BookCell, "value" | "runs"> | undefined {
    return data.p?.body && this.#texts.get(documentKey(data.p.body));
  }
}

/** A cell as a file holds it, whatever fills it from elsewhere left out; null for one that says nothing. */
export function cellOf(
  data: ICellData,
  place: FormulaPlace,
  {
    tables,
    styles,
    memory,
    sharedFormula,
    styleBefore,
  }: {
    readonly tables: readonly PlacedTable[];
    readonly styles: StyleNumbers;
    readonly memory: CellMemory;
    /** The formula of a cell that shares it with others. */
    readonly sharedFormula: (data: ICellData) => string | undefined;
    /** What stood here at the opening said of its look. */
    readonly styleBefore: ICellData["s"];
  },
): BookCell | null {
  const style = styles.of(data.s, styleBefore);
  const said = data.f || sharedFormula(data);
  const value = cellValue(data);
  const aside = asideOf(data);
  if (said) {
    const formula = memory.formula(said, place, tables);
    return { column: place.column, value, formula, ...(aside.spill && { spill: aside.spill }), style };
  }
  if (value === null) return style === 0 ? null : { column: place.column, value, style };
  if (data.p?.body) {
    const known = memory.text(data);
    const runs = documentRuns(data.p.body, (styles.styles[style] ?? PLAIN_STYLE).font);
    return { column: place.column, style, ...(known ?? { value, ...(runs && { runs }) }), ...quoted(data, aside) };
  }
  return { column: place.column, value, style, ...quoted(data, aside) };
}

const quoted = ({ t }: ICellData, aside: Aside) =>
  t === VALUE_TYPE.forcedText && !aside.unmarked ? { quoted: true as const } : {};
