import { CellValueType, type ICellData, type Nullable } from "@univerjs/core";

/** What stands for a number that does not fit. */
const HIDDEN = "#";

/**
 * A number as it shows in so much room: whole, with fewer decimals where it has no format of its own, or as a row of
 * signs that nobody takes for a number. Never cut.
 */
export function numberThatFits(
  text: string,
  isPlain: boolean,
  room: number,
  widthOf: (text: string) => number,
): string {
  if (widthOf(text) <= room) return text;
  const number = Number(text);
  const decimals = isPlain && /^-?\d+\.\d+$/.test(text) ? text.length - text.indexOf(".") - 1 : 0;
  for (let left = decimals - 1; left >= 0; left--) {
    const rounded = number.toFixed(left);
    // A little of something is not nothing.
    if (Number(rounded) !== 0 && widthOf(rounded) <= room) return rounded;
  }
  return HIDDEN.repeat(Math.max(1, Math.floor(room / widthOf(HIDDEN))));
}

/** Whether what fits says only that a number is there. */
export const isHidden = (text: string): boolean => text.startsWith(HIDDEN);

/** Whether a cell as it shows is a number, and one with a format of its own: Univer shows such a one as a text. */
export function shownNumber(cell: Nullable<ICellData>): "formatted" | "plain" | undefined {
  if (typeof cell?.v === "number" && (cell.t === undefined || cell.t === CellValueType.NUMBER)) return "plain";
  return cell?.t === CellValueType.NUMBER ? "formatted" : undefined;
}
