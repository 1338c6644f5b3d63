import { fromFileFormula } from "../formula/fromFile";
import { formulaMover } from "../formula/move";
import { looksElsewhere } from "../formula/tokens";
import { damaged, tooLarge } from "../refused";
import type { Attributes } from "../xml/translator";

/** Longer than any that a spreadsheet program keeps. */
const LONGEST = 32_768;
/** What the formulas of a workbook may come to when each is written out. */
const MOST_LETTERS = 200_000_000;

interface Shared {
  readonly row: number;
  readonly column: number;
  readonly move: (rows: number, columns: number) => string;
}

/** Counts what all sheets' formulas come to: a short file can share a long formula among very many cells. */
export class FormulaBudget {
  #letters = 0;

  spend(formula: string): string {
    this.#letters += formula.length;
    if (this.#letters > MOST_LETTERS) throw tooLarge("Its formulas are more text than the page can hold.");
    return formula;
  }
}

/** The formulas of one sheet, those that it shares moved to each cell. */
export class Formulas {
  readonly #shared = new Map<string, Shared>();
  readonly #budget: FormulaBudget;
  /** Formulas that look into other workbooks: they cannot be worked out here, and their last values stand for them. */
  elsewhere = 0;

  constructor(budget: FormulaBudget) {
    this.#budget = budget;
  }

  /** The formula that a cell's element means; undefined where none can be told. */
  read({ t, si = "" }: Attributes, text: string, row: number, column: number): string | undefined {
    if (text.length > LONGEST) throw damaged("It has a formula that is longer than any can be.");
    if (t === "dataTable") return undefined;
    const shared = t === "shared" ? this.#shared.get(si) : undefined;
    if (shared) return this.#budget.spend(shared.move(row - shared.row, column - shared.column));
    if (text.trim() === "") return undefined;
    if (looksElsewhere(text)) {
      this.elsewhere++;
      return undefined;
    }
    const formula = this.#budget.spend(fromFileFormula(text));
    if (t === "shared") this.#shared.set(si, { row, column, move: formulaMover(formula) });
    return formula;
  }
}
