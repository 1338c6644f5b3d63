import { refuseMissing } from "../rowsBelow";
import { askAround, placeOf, WHERE } from "./around";
import { closedAt, refuseClosed, sentence } from "./sentences";

/** What a cell is to hold; null leaves it as it is. */
type Entry = string | number | boolean | null;

/**
 * Lets a table grow over rows that stand right below it, in three requests. With the table's formulas Excel might also
 * overwrite what stands in these columns, or give none to the blank cells: so both are written anew with the growing.
 * @param rows at least one
 */
export async function takeInRows(context: Excel.RequestContext, name: string, rows: number): Promise<void> {
  const table = context.workbook.tables.getItem(name);
  table.load(`showTotals,${closedAt("worksheet/")}`);
  const whole = table.getRange();
  const around = askAround(context, whole);
  const last = whole.getLastRow().load("formulasR1C1");
  await context.sync();

  const { worksheet } = table;
  refuseClosed(worksheet);
  if (table.showTotals) {
    throw new Error(
      `The table ${name} has a total row. Take it off (Table Design tab, Total Row), then try again; it can come back after that.`,
    );
  }
  const place = placeOf(whole);
  const there = worksheet
    .getRangeByIndexes(place.row + place.rows, place.column, rows, place.columns)
    .load("formulasR1C1,values");
  const { below } = await around();
  refuseMissing(name, rows, below);
  await context.sync();

  const formulas = last.formulasR1C1[0] ?? [];
  const stood = there.formulasR1C1.map((row, r) =>
    row.map((content, c): Entry => {
      if (!isFormula(formulas[c])) return null;
      const isText = typeof content === "string" && content !== "" && content === there.values[r]?.[c];
      return isText ? `'${content}` : content;
    }),
  );
  try {
    table.resize(worksheet.getRangeByIndexes(place.row, place.column, place.rows + rows, place.columns));
    there.formulasR1C1 = stood.map((row) => row.map((content, c) => (content === "" ? formulas[c] : content)));
    await context.sync();
  } catch (error) {
    if (isTooOld(error)) {
      throw new Error(
        `This Excel is too old to do it. Drag the lower right corner of the table ${name} down over the rows instead.`,
      );
    }
    await takeBack(name, place.rows, stood, sentence(`Excel could not take the rows into the table ${name}`, error));
    throw error;
  }
}

const isFormula = (content: unknown): boolean => typeof content === "string" && content.startsWith("=");

const isTooOld = (error: unknown): boolean =>
  typeof error === "object" && error !== null && "code" in error && error.code === "ApiNotFound";

/** Lets the table end where it did, with what stood below it. */
async function takeBack(
  name: string,
  rows: number,
  stood: readonly (readonly Entry[])[],
  because: Error,
): Promise<void> {
  try {
    await Excel.run(async (context) => {
      const table = context.workbook.tables.getItem(name);
      const now = table.getRange().load(WHERE);
      await context.sync();
      const place = placeOf(now);
      if (place.rows === rows) return;
      const { worksheet } = table;
      table.resize(worksheet.getRangeByIndexes(place.row, place.column, rows, place.columns));
      worksheet.getRangeByIndexes(place.row + rows, place.column, stood.length, place.columns).formulasR1C1 = stood.map(
        (row) => [...row],
      );
      await context.sync();
    });
  } catch {
    throw new Error(`${because.message} The table may have grown: check its last rows.`, { cause: because });
  }
}
