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

/** Every look prints readably in black and white: fills are pale and never the only mark. */
export const STYLES: Readonly<Record<Look, Style>> = {
  body: {},
  title: { bold: true, size: 16 },
  heading: { bold: true, fill: "E8E2D6", border: "bottom", wrap: true },
  label: { bold: true },
  input: { fill: "FFF9E3", border: "all" },
  caution: { wrap: true, fill: "FBECE6", border: "all" },
  total: { bold: true, border: "top" },
  note: { italic: true, color: "5A5248", wrap: true },
  blank: { border: "all" },
  alert: { bold: true, color: "8A1C0B", wrap: true },
};
