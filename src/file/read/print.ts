import type { Print } from "../../sheet/sheet";
import { areaOf, ROWS } from "../addresses";
import type { Element } from "../xml/tree";

/** Sizes of paper by their number that come nearer to Letter than to A4: Letter, Tabloid, Legal and their like. */
const AMERICAN = [1, 2, 3, 4, 5, 6, 7, 14, 16, 17];

/** @param titles the formula by which a file names the rows and columns that its pages repeat */
export function readPrint(setup: Element | undefined, titles: string | undefined): Print | null {
  const repeatRows = titles === undefined ? undefined : rowsIn(titles);
  if (!setup && !repeatRows) return null;
  const { paperSize = "1", orientation } = setup?.attributes ?? {};
  return {
    paper: setup && AMERICAN.includes(Number(paperSize)) ? "letter" : "a4",
    ...(orientation === "landscape" && { landscape: true }),
    ...(repeatRows && { repeatRows }),
  };
}

/** The rows in `Sheet!$A:$B,Sheet!$1:$2`. */
function rowsIn(titles: string): readonly [number, number] | undefined {
  const whole = /\$?(\d+):\$?(\d+)(?:,|$)/.exec(titles);
  const area = whole ? areaOf(`${whole[1]}:${whole[2]}`) : undefined;
  return area && area.rows < ROWS ? [area.row, area.row + area.rows - 1] : undefined;
}
