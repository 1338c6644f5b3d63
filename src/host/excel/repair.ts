import { sentence } from "./sentences";

/** What a repair did. */
export interface Repair {
  /** Formulas entered again. */
  readonly mended: number;
  /** Protected sheets, which were left alone. */
  readonly skipped: readonly string[];
}

/**
 * Enters again the formulas that call our functions and show #NAME?: Excel does not look for a function a second
 * time when a formula was typed while the add-in was not there. All other cells stay untouched.
 */
export async function repairFormulas(): Promise<Repair> {
  try {
    return await Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load("items/name,items/protection/protected");
      await context.sync();

      const open = worksheets.items.filter(({ protection }) => !protection.protected);
      const wrong = open.map((worksheet) =>
        worksheet
          .getRange()
          .getSpecialCellsOrNullObject("Formulas", "Errors")
          .load("areas/items/formulas,areas/items/values"),
      );
      await context.sync();

      let mended = 0;
      for (const area of wrong.filter(({ isNullObject }) => !isNullObject).flatMap(({ areas }) => areas.items)) {
        // null leaves a cell as it is: a text behind an apostrophe would become a formula if it were written back.
        const again = area.formulas.map((row, r) =>
          row.map((formula, c) => (area.values[r]?.[c] === "#NAME?" && callsUs(formula) ? String(formula) : null)),
        );
        const count = again.flat().filter((formula) => formula !== null).length;
        if (count > 0) area.formulas = again;
        mended += count;
      }
      await context.sync();
      return { mended, skipped: worksheets.items.filter((one) => !open.includes(one)).map(({ name }) => name) };
    });
  } catch (error) {
    throw sentence("Excel could not mend the formulas", error);
  }
}

const callsUs = (formula: unknown): boolean => typeof formula === "string" && /^=.*\bPOUR\./is.test(formula);
