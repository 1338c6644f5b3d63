import type { CellValue } from "../../sheet/sheet";
import { areaAddress } from "../addresses";
import type { BookCell } from "../book";
import { isDynamic } from "../formula/isDynamic";
import { toFileFormula } from "../formula/toFile";
import { same } from "../same";
import { fontXml } from "./fontXml";
import { LONGEST_TEXT, permittedValue } from "./limits";
import { attributesOf, cut, element, escapeText, openingTag, withAttributes } from "./rawXml";
import type { WantedStyle } from "./styles";

/** What a cell needs of the workbook around it. */
export interface CellContext {
  styleOf(wanted: WantedStyle): number;
  /** The number of the mark by which a cell's formula is a dynamic array. */
  dynamicMark(): number;
}

const styleOf = ({ value, formula, style, quoted }: BookCell, context: CellContext): number =>
  context.styleOf(typeof value === "string" && formula === undefined ? { style, quoted: Boolean(quoted) } : { style });

/** A new cell. */
export function cellXml(cell: BookCell, row: number, context: CellContext): string {
  const { formula, runs, spilled } = cell;
  const value = permittedValue(cell.value);
  const place = { row, column: cell.column, rows: 1, columns: 1 };
  const s = styleOf(cell, context) || null;
  const r = areaAddress(place);
  if (formula !== undefined) {
    const dynamic = cell.spill?.dynamic ?? isDynamic(formula);
    const isArray = dynamic || cell.spill !== undefined;
    const ref = areaAddress({ ...place, ...cell.spill });
    const written = element("f", isArray ? { t: "array", ref } : {}, escapeText(toFileFormula(formula)));
    return element("c", { r, s, ...type(value), cm: dynamic ? context.dynamicMark() : null }, written, valueXml(value));
  }
  if (typeof value === "string" && !spilled) return element("c", { r, s, t: "inlineStr" }, textXml(value, runs));
  return element("c", { r, s, ...type(value) }, valueXml(value));
}

const textXml = (value: string, runs: BookCell["runs"]): string =>
  element(
    "is",
    {},
    runs ? runs.map(({ text, font }) => element("r", {}, fontXml("rPr", font), t(text))).join("") : t(value),
  );

const t = (text: string): string =>
  element("t", { "xml:space": /^\s|\s$|\n/.test(text) ? "preserve" : null }, escapeText(text.slice(0, LONGEST_TEXT)));

/** What the file says of a computed value's type. */
function type(value: CellValue): { t?: string } {
  if (typeof value === "string") return { t: "str" };
  if (typeof value === "boolean") return { t: "b" };
  return typeof value === "object" && value !== null ? { t: "e" } : {};
}

function valueXml(value: CellValue): string {
  if (value === null) return "";
  if (typeof value === "object") return element("v", {}, escapeText(value.error));
  if (typeof value === "string")
    return `<v${/^\s|\s$/.test(value) ? ' xml:space="preserve"' : ""}>${escapeText(value.slice(0, LONGEST_TEXT))}</v>`;
  return element("v", {}, typeof value === "boolean" ? (value ? "1" : "0") : String(value));
}

/** What a cell of the file becomes, whatever does not differ kept as it stands. */
export function changedCell(raw: string, before: BookCell, now: BookCell, row: number, context: CellContext): string {
  const keepsFormula = before.formula === now.formula && sameSpill(before, now);
  const keepsValue = same(before.value, now.value) && same(before.runs, now.runs);
  if (!keepsFormula || (now.formula === undefined && !keepsValue)) {
    return cellXml(now, row, context);
  }
  const keepsLook = before.style === now.style && before.quoted === now.quoted;
  const styled = keepsLook ? raw : withAttributes(raw, { s: styleOf(now, context) });
  if (keepsValue) return styled;
  // The formula stays as it stands, shared or not; only what it came to is another value.
  const value = permittedValue(now.value);
  const { head, pieces, tail } = cut(withAttributes(styled, { t: type(value).t ?? null, vm: null }));
  const kept = pieces.filter(({ name }) => name === "f").map((piece) => piece.raw);
  return head + kept.join("") + valueXml(value) + tail;
}

/** A formula may be a dynamic array in the file also where it fills its own cell alone. */
const sameSpill = (before: BookCell, now: BookCell): boolean => {
  const alone = ({ spill }: BookCell): boolean =>
    spill === undefined || (spill.rows === 1 && spill.columns === 1 && spill.dynamic);
  return same(before.spill, now.spill) || (alone(before) && alone(now));
};

/** Whether a cell is as it was. */
export const sameCell = (before: BookCell, now: BookCell): boolean =>
  same(before.value, now.value) &&
  before.formula === now.formula &&
  before.style === now.style &&
  before.quoted === now.quoted &&
  before.spilled === now.spilled &&
  same(before.runs, now.runs) &&
  sameSpill(before, now);

/** The number of the group that shares this cell's formula. */
export function sharedGroup(raw: string): string | undefined {
  if (!raw.includes("shared")) return undefined;
  const formula = cut(raw).pieces.find(({ name }) => name === "f");
  const attributes = formula && attributesOf(formula.raw);
  return attributes?.get("t") === "shared" ? attributes.get("si") : undefined;
}

/** A cell whose formula no longer comes from a group. */
export function ownFormula(raw: string, formula: string): string {
  const { head, pieces, tail } = cut(raw);
  const own = pieces.map(({ name, raw: piece }) => {
    if (name !== "f") return piece;
    const tag = withAttributes(openingTag(piece).replace(/\s*\/>$/, ">"), { t: null, si: null, ref: null });
    return element(/^<([^\s>]+)/.exec(tag)?.[1] ?? "f", {}, escapeText(toFileFormula(formula)));
  });
  return head + own.join("") + tail;
}
