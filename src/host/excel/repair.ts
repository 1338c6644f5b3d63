import { closedAt, isFiltered, sentence } from "./sentences";

/** What a repair did. */
export interface Repair {
  /** Formulas entered again. */
  readonly repaired: number;
  /** Protected sheets, which were left alone. */
  readonly protectedSheets: readonly string[];
  /** Sheets on which a filter hides rows, which were left alone too: Excel puts blocks into the wrong rows there. */
  readonly filteredSheets: readonly string[];
}

/**
 * Enters again the formulas that call our functions and are stuck: Excel does not look for a function a second time
 * when a formula was typed or loaded while the add-in was not there. All other cells stay untouched. A formula typed
 * without the add-in inside IFERROR looks like one that works, and is left as well.
 */
export async function repairFormulas(): Promise<Repair> {
  try {
    return await Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load(closedAt("items/"));
      await context.sync();

      const sheets = worksheets.items;
      const locked = sheets.filter(({ protection }) => protection.protected);
      const filtered = sheets.filter((one) => !locked.includes(one) && isFiltered(one));
      const open = sheets.filter((one) => !locked.includes(one) && !filtered.includes(one));
      const formulas = open.map((one) =>
        one.getRange().getSpecialCellsOrNullObject("Formulas").load("areas/items/formulas,areas/items/values"),
      );
      await context.sync();

      let repaired = 0;
      for (const area of formulas.filter(({ isNullObject }) => !isNullObject).flatMap(({ areas }) => areas.items)) {
        // null leaves a cell as it is: nothing that works is entered again.
        const again = area.formulas.map((row, r) =>
          row.map((formula, c) => freed(String(formula), area.values[r]?.[c] === "#NAME?")),
        );
        const count = again.flat().filter((formula) => formula !== null).length;
        if (count > 0) area.formulas = again;
        repaired += count;
      }
      await context.sync();
      const names = (those: readonly Excel.Worksheet[]) => those.map(({ name }) => name);
      return { repaired, protectedSheets: names(locked), filteredSheets: names(filtered) };
    });
  } catch (error) {
    throw sentence("Excel could not fix the formulas", error);
  }
}

/**
 * Calls of our functions in a formula: in the form a file keeps, `_xldudf_POUR_X(`, at times with another workbook
 * before it (`[2]!`, `Book.xla!`), or as typed. Texts and the names of sheets are matched first, to be passed over.
 */
const CALLS =
  /"(?:[^"]|"")*"|(?:(?:'(?:[^']|'')*'|[\p{L}\p{N}_.[\]]+)!)?(?<![\p{L}\p{N}_.])_xldudf_POUR_([A-Z0-9]+)(?=\()|'(?:[^']|'')*'|(?<![\p{L}\p{N}_.])(POUR\.[A-Z0-9]+)(?=\()/giu;

/** A stuck formula as it is to be entered; null when it is not one. A loaded add-in leaves no name in a file's form. */
function freed(formula: string, isNameless: boolean): string | null {
  let isStuck = false;
  const again = formula.replace(CALLS, (found, kept?: string, typed?: string) => {
    isStuck ||= kept !== undefined || (typed !== undefined && isNameless);
    return kept === undefined ? found : `POUR.${kept}`;
  });
  return isStuck ? again : null;
}
