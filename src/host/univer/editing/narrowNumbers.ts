/** Numbers too wide for their column, a correction of the renderer, version 0.25.1: cut, 1250 would read as 125. */

import { getDisplayValueFromCell, type ICellData } from "@univerjs/core";
import { Font, FontCache } from "@univerjs/preset-sheets-core";
import { numberThatFits, shownNumber } from "../numberThatFits";

interface Drawn {
  readonly fontCache?: {
    readonly cellData?: ICellData;
    readonly fontString?: string;
    readonly style?: { readonly pd?: { readonly l?: number; readonly r?: number } };
  };
  readonly startX: number;
  readonly endX: number;
}

/** What the renderer leaves free beside a text that has no padding of its own, in pixels. */
const PADDING = 2;

/** What it cuts off at the other side of a cell: no padding is needed there. */
const EDGE = 1;

const renderer = Font.prototype as unknown as {
  _renderText(context: unknown, row: number, column: number, drawn: Drawn, more: unknown): void;
};
const draw = renderer._renderText;
renderer._renderText = function (context, row, column, drawn, more) {
  const text = textOf(drawn);
  const { fontCache } = drawn;
  const cellData = { ...fontCache?.cellData, v: text };
  draw.call(
    this,
    context,
    row,
    column,
    text === null ? drawn : { ...drawn, fontCache: { ...fontCache, cellData } },
    more,
  );
};

/** What is drawn in place of a number; null for all else. */
function textOf({ fontCache, startX, endX }: Drawn): string | null {
  const number = shownNumber(fontCache?.cellData);
  if (!fontCache || !number) return null;
  const { cellData, fontString = "", style } = fontCache;
  const room = endX - startX - Math.max(style?.pd?.l ?? PADDING, style?.pd?.r ?? PADDING) - EDGE;
  const widthOf = (text: string) => FontCache.getMeasureText(text, fontString).width;
  return numberThatFits(getDisplayValueFromCell(cellData), number === "plain", room, widthOf);
}
