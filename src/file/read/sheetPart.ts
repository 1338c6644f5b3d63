import { damaged } from "../refused";
import { scan } from "../xml/scan";
import type { Attributes } from "../xml/translator";
import { type Element, TreeHandler } from "../xml/tree";
import { type CellContext, CellsHandler } from "./cells";

/** A sheet's part: its cells read, what stands beside them as elements. */
export interface SheetPart {
  readonly cells: CellsHandler;
  /** In the order of the part. */
  readonly others: readonly Element[];
}

export function readSheetPart(
  path: string,
  bytes: Uint8Array,
  context: CellContext,
  progress?: (share: number) => void,
): SheetPart {
  const cells = new CellsHandler(context);
  const others: Element[] = [];
  const tree = new TreeHandler((element) => others.push(element));
  let depth = 0;
  /** What stands right under the root is either the cells or one of the others. */
  let inCells = false;
  scan(
    path,
    bytes,
    {
      open(name: string, attributes: Attributes) {
        depth++;
        if (depth === 1 && name !== "worksheet") throw damaged(`The part "${path}" should be a sheet and is none.`);
        if (depth === 2) inCells = name === "sheetData";
        if (depth > 2 && inCells) cells.open(name, attributes);
        else if (depth > 1 && !inCells) tree.open(name, attributes);
      },
      text(text: string) {
        if (inCells) cells.text(text);
        else tree.text(text);
      },
      close(name: string) {
        if (depth > 2 && inCells) cells.close(name);
        else if (depth > 1 && !inCells) tree.close();
        depth--;
        if (depth === 1) inCells = false;
      },
    },
    progress,
  );
  return { cells, others };
}
