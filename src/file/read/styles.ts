import type { CellStyle, Condition, Edge, Font } from "../book";
import { PLAIN_FONT, PLAIN_STYLE } from "../emptyBook";
import { child, children, type Element, within } from "../xml/tree";
import { type Colors, mixed } from "./colors";
import { partialFont } from "./fonts";
import { builtInFormat } from "./numberFormats";
import { isOn, numberIn, said } from "./values";

export interface Styles {
  readonly styles: readonly CellStyle[];
  /** By number of style, whether a text in it is held by an apostrophe. */
  readonly quoted: readonly boolean[];
  /** What conditions lay over, by number. */
  readonly overlays: readonly NonNullable<Condition["look"]>[];
}

/** The looks that a file's cells have, by their number there. Without a part of styles all cells are plain. */
export function readStyles(root: Element | undefined, colors: Colors): Styles {
  if (!root) return { styles: [PLAIN_STYLE], quoted: [false], overlays: [] };
  const list = (name: string, one: string): Element[] => children(child(root, name), one);
  const fonts = list("fonts", "font").map((font): Font => ({ ...PLAIN_FONT, ...partialFont(font, colors) }));
  const fills = list("fills", "fill").map((fill) => fillColor(fill, colors));
  const borders = list("borders", "border").map((border) => edges(border, colors));
  const formats = new Map(
    list("numFmts", "numFmt").map(({ attributes }) => [
      Number(attributes.numFmtId),
      attributes.formatCode ?? "General",
    ]),
  );
  const named = list("cellStyleXfs", "xf");
  const cells = list("cellXfs", "xf");
  const styles = cells.map((xf): CellStyle => {
    // What a cell's look leaves open stands in the named look that it is based on.
    const attributes = { ...named[Number(xf.attributes.xfId ?? 0)]?.attributes, ...xf.attributes };
    const format = Number(attributes.numFmtId ?? 0);
    return {
      font: fonts[Number(attributes.fontId ?? 0)] ?? fonts[0] ?? PLAIN_FONT,
      fill: fills[Number(attributes.fillId ?? 0)] ?? null,
      border: borders[Number(attributes.borderId ?? 0)] ?? {},
      format: formats.get(format) ?? builtInFormat(format),
      align: alignment(child(xf, "alignment")),
      ...(isOn(child(xf, "protection")?.attributes.locked, true) ? {} : { unlocked: true as const }),
      ...control(child(xf, "extLst")),
    };
  });
  return {
    styles: styles.length > 0 ? styles : [PLAIN_STYLE],
    quoted: cells.map(({ attributes }) => isOn(attributes.quotePrefix)),
    overlays: list("dxfs", "dxf").map((one) => overlay(one, colors)),
  };
}

function control(extensions: Element | undefined): Pick<CellStyle, "control"> {
  const [found] = within(extensions, "xfpb:xfComplement");
  const number = numberIn(found?.attributes.i);
  return number === undefined ? {} : { control: number };
}

/** Of a pattern, how much of it is the front colour, as LibreOffice mixes them (from memory). */
const FRONT = new Map([
  ["solid", 1],
  ["darkGray", 0.75],
  ["darkTrellis", 0.75],
  ["mediumGray", 0.5],
  ["darkGrid", 0.5],
  ["darkDown", 0.5],
  ["darkUp", 0.5],
  ["darkHorizontal", 0.5],
  ["darkVertical", 0.5],
  ["lightGrid", 0.4375],
  ["lightTrellis", 0.375],
  ["gray125", 0.125],
  ["gray0625", 0.0625],
]);
/** Of the other patterns. */
const LIGHT = 0.25;

function fillColor(fill: Element, colors: Colors): string | null {
  const pattern = child(fill, "patternFill");
  const kind = pattern?.attributes.patternType ?? "none";
  if (pattern) {
    if (kind === "none") return null;
    const front = colors(child(pattern, "fgColor")) ?? "000000";
    return kind === "solid"
      ? front
      : mixed(front, colors(child(pattern, "bgColor")) ?? "FFFFFF", FRONT.get(kind) ?? LIGHT);
  }
  const stops = children(child(fill, "gradientFill"), "stop").map((stop) => colors(child(stop, "color")) ?? "FFFFFF");
  return stops.length === 0 ? null : mixed(stops[0] as string, stops[stops.length - 1] as string, 0.5);
}

/** The strict form of the standard calls left and right start and end. */
const SIDES = new Map([
  ["left", "left"],
  ["start", "left"],
  ["right", "right"],
  ["end", "right"],
  ["top", "top"],
  ["bottom", "bottom"],
] as const);

function edges(border: Element, colors: Colors): CellStyle["border"] {
  const found: Partial<Record<"top" | "bottom" | "left" | "right", Edge>> = {};
  for (const side of border.children) {
    const { style = "none" } = side.attributes;
    const name = SIDES.get(side.name as "left");
    if (name && style !== "none") found[name] = { style, color: colors(child(side, "color")) };
  }
  return found;
}

const HORIZONTAL = ["left", "center", "right", "fill", "justify", "centerContinuous", "distributed"] as const;
const VERTICAL = ["top", "center", "bottom", "justify", "distributed"] as const;

function alignment(element: Element | undefined): CellStyle["align"] {
  const { horizontal, vertical, wrapText, indent, textRotation, shrinkToFit } = element?.attributes ?? {};
  return said({
    horizontal: HORIZONTAL.find((one) => one === horizontal),
    vertical: VERTICAL.find((one) => one === vertical),
    wrap: isOn(wrapText) || undefined,
    indent: numberIn(indent) || undefined,
    rotation: rotation(numberIn(textRotation) ?? 0),
    shrink: isOn(shrinkToFit) || undefined,
  });
}

/** The file counts what turns with the clock on from 90, and says 255 for letters one below the other. */
function rotation(degrees: number): number | "stacked" | undefined {
  if (degrees === 255) return "stacked";
  if (degrees <= 0 || degrees > 180) return undefined;
  return degrees <= 90 ? degrees : 90 - degrees;
}

/** In an overlay a plain fill is said by the colour that is otherwise at the back. */
export function overlay(element: Element, colors: Colors): NonNullable<Condition["look"]> {
  const font = partialFont(child(element, "font"), colors);
  const pattern = child(child(element, "fill"), "patternFill");
  const fill = colors(child(pattern, "bgColor")) ?? colors(child(pattern, "fgColor"));
  return { ...(Object.keys(font).length > 0 && { font }), ...(pattern && { fill }) };
}
