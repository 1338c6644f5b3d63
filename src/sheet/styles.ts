import type { Look } from "./sheet";

/** How a look is drawn. Colours are six hex digits; sizes are points. What is left out is the host's own default. */
export interface Style {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly size?: number;
  readonly color?: string;
  readonly fill?: string;
  readonly wrap?: boolean;
  /** A thin line on these sides. */
  readonly border?: "all" | "bottom" | "top";
}

/** Colour of the lines around cells. */
export const LINE = "8A8175";

/** Every look prints readably in black and white: fills are pale and never the only mark. */
export const STYLES: Readonly<Record<Look, Style>> = {
  body: {},
  name: { wrap: true },
  title: { bold: true, size: 16 },
  heading: { bold: true, fill: "E8E2D6", border: "bottom", wrap: true },
  label: { bold: true },
  input: { fill: "FFF9E3", border: "all" },
  caution: { wrap: true, fill: "FBECE6", border: "all" },
  total: { bold: true, border: "top" },
  note: { italic: true, color: "5A5248", wrap: true },
  blank: { border: "all" },
  alert: { bold: true, color: "8A1C0B", wrap: true },
  say: { bold: true, color: "8A1C0B", wrap: true, border: "top" },
  mark: { bold: true, fill: "E8E2D6" },
};

/** How a series of a chart is drawn, six hex digits on white and on dark. The mark tells lines apart without colour. */
export interface SeriesStyle {
  readonly color: string;
  readonly onDark: string;
  readonly mark: "circle" | "square" | "triangle" | "diamond" | "x" | "plus" | "star";
}

/** By the order of the series; neighbours differ in black and white too. */
export const SERIES_STYLES: readonly SeriesStyle[] = [
  { color: "7A3E06", onDark: "E59A5C", mark: "circle" },
  { color: "C07F1A", onDark: "FFE0A3", mark: "square" },
  { color: "235E53", onDark: "6FBFAE", mark: "triangle" },
  { color: "8A78C8", onDark: "CFC3FF", mark: "diamond" },
  { color: "9C2F2F", onDark: "F08A84", mark: "x" },
  { color: "4F7A1E", onDark: "B5DB7E", mark: "plus" },
  { color: "1F4E8C", onDark: "8FB8EE", mark: "star" },
];
