/** How cells of a file look as Univer's styles, and back. */

import type { IBorderData, IStyleData, Nullable } from "@univerjs/core";
import type { CellStyle, Edge } from "../../../file/book";
import { PLAIN_STYLE } from "../../../file/emptyBook";
import { same } from "../../../file/same";
import { BORDERS, HORIZONTAL, keyOf, NO, VERTICAL, WRAPS, YES } from "./codes";
import { colorOf, fontData, fontOf } from "./fonts";
import { mended } from "./keptAsWas";

/** Pixels that a step of indent takes, and those that Univer leaves beside a text anyway. */
const INDENT = 9;
const PADDING = 2;

const SIDES = { top: "t", bottom: "b", left: "l", right: "r" } as const;

/** Under which name Univer keeps a style of the file. */
export const styleId = (number: number): string => `x${number}`;

/** The number of a file's style by its name in Univer; null for a style that Univer named itself. */
function styleNumber(id: string): number | null {
  const digits = /^x(\d+)$/.exec(id)?.[1];
  return digits === undefined ? null : Number(digits);
}

/** Univer carries what it does not know of a style along when it makes a new one of it. */
type FileStyleData = IStyleData & {
  readonly unlocked?: true;
  readonly control?: number;
  /** Where Univer has no equal for some of it: all of it as the file says it. */
  readonly fileAlign?: CellStyle["align"];
};

export function styleData({ font, fill, border, format, align, unlocked, control }: CellStyle): FileStyleData {
  const aligned = alignData(align);
  const data: FileStyleData = {
    ...fontData(font),
    ...aligned,
    ...(unlocked && { unlocked }),
    ...(control !== undefined && { control }),
    ...(!same(alignOf(aligned), align) && { fileAlign: align }),
  };
  if (fill) data.bg = { rgb: `#${fill}` };
  const borders = borderData(border);
  if (borders) data.bd = borders;
  if (format !== "General") data.n = { pattern: format };
  return data;
}

function alignData({ horizontal, vertical, wrap, indent, rotation }: CellStyle["align"]): IStyleData {
  const data: IStyleData = {};
  // A text over several columns in the middle has no equal: the middle of its own cell comes nearest.
  const across = horizontal === "centerContinuous" ? "center" : horizontal;
  if (across && across !== "fill") data.ht = HORIZONTAL[across];
  if (vertical) data.vt = vertical === "justify" || vertical === "distributed" ? VERTICAL.center : VERTICAL[vertical];
  if (wrap) data.tb = WRAPS;
  if (indent) data.pd = horizontal === "right" ? { r: PADDING + indent * INDENT } : { l: PADDING + indent * INDENT };
  if (rotation === "stacked") data.tr = { a: 0, v: YES };
  else if (rotation) data.tr = { a: -rotation, v: NO };
  return data;
}

/** The look that a style of Univer's makes, in a workbook whose plain cells look so. */
export function styleOf(data: FileStyleData, plain: CellStyle): CellStyle {
  return {
    font: { ...plain.font, ...fontOf(data) },
    fill: colorOf(data.bg?.rgb),
    border: borderOf(data.bd),
    format: data.n?.pattern || "General",
    align: alignNow(data),
    ...(data.unlocked && { unlocked: true }),
    ...(data.control !== undefined && { control: data.control }),
  };
}

/** What was changed of it here as it is here, all else as the file says it. */
const alignNow = (data: FileStyleData): CellStyle["align"] =>
  data.fileAlign ? mended(data.fileAlign, alignOf(alignData(data.fileAlign)), alignOf(data)) : alignOf(data);

function alignOf({ ht, vt, tb, pd, tr }: IStyleData): CellStyle["align"] {
  const horizontal = keyOf(HORIZONTAL, ht);
  const vertical = keyOf(VERTICAL, vt);
  const padding = (horizontal === "right" ? pd?.r : pd?.l) ?? PADDING;
  const indent = Math.max(0, Math.round((padding - PADDING) / INDENT));
  const rotation = tr?.v === YES ? "stacked" : Math.max(-90, Math.min(90, -(tr?.a ?? 0)));
  return {
    ...(horizontal && { horizontal }),
    ...(vertical && { vertical }),
    ...(tb === WRAPS && { wrap: true }),
    ...(indent > 0 && { indent }),
    ...(rotation && { rotation }),
  };
}

function borderData(border: CellStyle["border"]): IBorderData | null {
  const data: IBorderData = {};
  for (const [side, key] of Object.entries(SIDES)) {
    const edge = border[side as keyof typeof SIDES];
    const line = edge && BORDERS[edge.style];
    if (line) data[key] = { s: line, cl: { rgb: `#${edge.color ?? "000000"}` } };
  }
  return Object.keys(data).length > 0 ? data : null;
}

function borderOf(data: Nullable<IBorderData>): CellStyle["border"] {
  const border: Partial<Record<keyof typeof SIDES, Edge>> = {};
  for (const [side, key] of Object.entries(SIDES)) {
    const line = data?.[key];
    const style = line && keyOf(BORDERS, line.s);
    if (style) border[side as keyof typeof SIDES] = { style, color: colorOf(line.cl?.rgb) };
  }
  return border;
}

/** The styles of a workbook by the numbers that its cells carry, those of the file first. */
export class StyleNumbers {
  readonly styles: CellStyle[];
  readonly #file: number;
  readonly #numbers = new Map<string, number>();
  readonly #known = new Map<string, number>();
  readonly #looks = new Map<number, string>();

  constructor(
    file: readonly CellStyle[] | undefined,
    private readonly named: Readonly<Record<string, Nullable<IStyleData>>>,
  ) {
    this.styles = file && file.length > 0 ? [...file] : [PLAIN_STYLE];
    this.#file = file?.length ?? 0;
    // The first of two that look alike: it is as good as the other.
    for (const [i, style] of [...this.styles.entries()].reverse()) this.#numbers.set(styleKey(style), i);
  }

  /**
   * The number of what a cell, a row or a column says of its look. Univer may take one style for another that looks
   * alike: then it is the one that was said before.
   */
  of(said: Nullable<IStyleData | string>, before?: Nullable<IStyleData | string>): number {
    const number = this.#of(said);
    const old = typeof before === "string" ? styleNumber(before) : null;
    if (old === null || old === number || number >= this.#file || old >= this.#file) return number;
    return this.#look(old) === this.#look(number) ? old : number;
  }

  /** What Univer can tell a style of the file by. */
  #look(number: number): string {
    const known = this.#looks.get(number) ?? JSON.stringify(styleData(this.styles[number] as CellStyle));
    this.#looks.set(number, known);
    return known;
  }

  #of(said: Nullable<IStyleData | string>): number {
    if (!said) return 0;
    if (typeof said !== "string") return this.#numbered(said);
    const known = this.#known.get(said);
    if (known !== undefined) return known;
    const number = styleNumber(said);
    const mine = number !== null && number < this.#file ? number : this.#numbered(this.named[said] ?? {});
    this.#known.set(said, mine);
    return mine;
  }

  #numbered(data: IStyleData): number {
    const style = styleOf(data, this.styles[0] as CellStyle);
    const key = styleKey(style);
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    this.#numbers.set(key, this.styles.length);
    return this.styles.push(style) - 1;
  }
}

/** One text for looks that are the same, whatever the order in which they are said. */
function styleKey({ font, fill, border, format, align, unlocked, control }: CellStyle): string {
  const edges = (Object.keys(SIDES) as (keyof typeof SIDES)[]).map((side) => {
    const edge = border[side];
    return edge ? [edge.style, edge.color ?? "000000"] : null;
  });
  return JSON.stringify([
    [font.name, font.size, font.bold, font.italic, font.underline, font.strike, font.color, font.raised ?? null],
    fill,
    edges,
    format,
    [align.horizontal, align.vertical, align.wrap, align.indent, align.rotation, align.shrink].map(
      (one) => one || null,
    ),
    unlocked ?? null,
    control ?? null,
  ]);
}
