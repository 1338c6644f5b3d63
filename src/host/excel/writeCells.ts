import type { Cell } from "../../sheet/sheet";
import { ask } from "./ask";
import { contentsOf } from "./layOut";
import { isOnePiece, queuedBytes, refuseTooMuch } from "./payload";
import { spanOf } from "./rectangles";
import { closedAt, refuseClosed, sentence } from "./sentences";

/** Puts contents into cells of a sheet, at least one, in two requests. */
export async function writeCells(sheet: string, cells: readonly Cell[]): Promise<void> {
  const { row, column, rows, columns } = spanOf(cells);
  const { constants, formulas } = contentsOf(cells, { row, column, rows, columns });
  // All numbers and texts at once, the cells between left as they are: so Excel replaces a formula that spills together
  // with what it spilled. Formulas, which may be refused, first.
  const put = (range: Excel.Range): void => {
    if (formulas) range.formulas = formulas;
    range.values = constants;
  };
  refuseTooMuch(queuedBytes(put));
  const failed = `Excel could not write on ${sheet}`;
  return ask(failed, async (context) => {
    const worksheet = context.workbook.worksheets.getItem(sheet).load(closedAt());
    await context.sync();
    refuseClosed(worksheet);
    put(worksheet.getRangeByIndexes(row, column, rows, columns));
    try {
      await context.sync();
    } catch (error) {
      // Formulas and values go as two.
      if (!formulas && isOnePiece(rows, columns)) throw error;
      const why = sentence(failed, error).message;
      throw new Error(`${why} Some of the cells may be written already: look at the sheet.`, { cause: error });
    }
  });
}
