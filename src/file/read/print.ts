import type { Print } from "../../sheet/sheet";
import { areaOf, ROWS } from "../addresses";
import { children, type Element } from "../xml/tree";
import { isOn } from "./values";

/** Sizes of paper by their number that come nearer to Letter than to A4: Letter, Tabloid, Legal and their like. */
const AMERICAN = [1, 2, 3, 4, 5, 6, 7, 14, 16, 17];

/**
 * @param titles the formula by which a file names the rows and columns that its pages repeat
 * @param breaks rows that begin a page because somebody said so
 */
export function readPrint(
  setup: Element | undefined,
  titles: string | undefined,
  breaks: Element | undefined,
): Print | null {
  const repeatRows = titles === undefined ? undefined : rowsIn(titles);
  const newPages = rowsBelow(breaks);
  if (!setup && !repeatRows && newPages.length === 0) return null;
  const { paperSize = "1", orientation } = setup?.attributes ?? {};
  return {
    paper: setup && AMERICAN.includes(Number(paperSize)) ? "letter" : "a4",
    ...(orientation === "landscape" && { landscape: true }),
    ...(repeatRows && { repeatRows }),
    ...(newPages.length > 0 && { newPages }),
  };
}

/** A break names the row that it stands below, counted from 1. */
function rowsBelow(breaks: Element | undefined): number[] {
  const said = children(breaks, "brk").filter(({ attributes }) => isOn(attributes.man));
  return said.map(({ attributes }) => Number(attributes.id)).filter((row) => row > 0 && row < ROWS);
}

/** The rows in `Sheet!$A:$B,Sheet!$1:$2`. */
function rowsIn(titles: string): readonly [number, number] | undefined {
  const whole = /\$?(\d+):\$?(\d+)(?:,|$)/.exec(titles);
  const area = whole ? areaOf(`${whole[1]}:${whole[2]}`) : undefined;
  return area && area.rows < ROWS ? [area.row, area.row + area.rows - 1] : undefined;
}
