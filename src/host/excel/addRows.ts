import type { Cell, Content } from "../../sheet/sheet";
import { contentsOf } from "./layOut";
import { closedAt, refuseClosed, sentence } from "./sentences";

/**
 * Adds rows at the end of a table, in two syncs. Each row is added empty, so that Excel gives it the formulas and
 * the formats of its columns, and is filled then: a value sent along, even an empty one, would take the formula's
 * place. What stands below the table Excel moves down, or refuses to.
 * @param rows at least one
 */
export async function addRows(
  context: Excel.RequestContext,
  name: string,
  headings: readonly string[],
  rows: readonly (readonly (Content | null)[])[],
): Promise<void> {
  const table = context.workbook.tables.getItem(name);
  table.load(closedAt("worksheet/"));
  const header = table.getHeaderRowRange().load("values,rowIndex,columnIndex");
  const body = table.rows.load("count");
  await context.sync();

  refuseClosed(table.worksheet);
  const there = (header.values[0] ?? []).map(String);
  const places = headings.map((heading) => there.indexOf(heading));
  const missing = headings[places.indexOf(-1)];
  if (missing !== undefined) {
    throw new Error(`The table ${name} has no column "${missing}". Name the column so again, then try once more.`);
  }
  const before = body.count;
  const place = {
    row: header.rowIndex + 1 + before,
    column: header.columnIndex,
    rows: rows.length,
    columns: there.length,
  };
  const cells = rows.flatMap((row, r) =>
    row.flatMap((content, i): Cell[] =>
      content ? [{ row: place.row + r, column: place.column + (places[i] as number), content }] : [],
    ),
  );
  const { constants, formulas } = contentsOf(cells, place);
  try {
    context.application.suspendApiCalculationUntilNextSync();
    const [first] = rows.map(() => table.rows.add()) as [Excel.TableRow];
    const added = first.getRange().getResizedRange(rows.length - 1, 0);
    if (formulas) added.formulas = formulas;
    added.values = constants;
    // Who suspends the calculation has to ask for it again.
    context.application.calculate("Recalculate");
    await context.sync();
  } catch (error) {
    await takeBack(name, before, constants, sentence(`Excel could not add to the table ${name}`, error));
    throw error;
  }
}

/** Takes rows off the end of a table again, unless somebody else wrote in them at the same moment. */
async function takeBack(
  name: string,
  before: number,
  written: readonly (readonly (string | number | null)[])[],
  because: Error,
): Promise<void> {
  try {
    await Excel.run(async (context) => {
      const { rows } = context.workbook.tables.getItem(name);
      rows.load("items/values");
      await context.sync();
      const added = rows.items.slice(before);
      const areOurs = added.every(({ values: [cells = []] }, r) =>
        written[r]?.every((sent, c) => sent === null || cells[c] === "" || cells[c] === held(sent)),
      );
      if (!areOurs) throw because;
      for (const row of added.reverse()) row.delete();
      await context.sync();
    });
  } catch {
    throw new Error(`${because.message} Unfinished rows may be left at the end of the table; delete them yourself.`, {
      cause: because,
    });
  }
}

/** What a cell holds of what was sent: text came behind an apostrophe. */
const held = (sent: string | number): string | number => (typeof sent === "string" ? sent.slice(1) : sent);
