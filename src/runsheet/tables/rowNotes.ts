import { Fault } from "../../core/fault";
import { isError, type Problem, type Severity } from "../problem";
import type { Entry } from "./entry";
import type { FieldId, TableTypeId } from "./registry";

/** Gathers what is to say of one row, by field. */
export class RowNotes<F extends string> {
  readonly problems: Problem[] = [];

  constructor(
    private readonly table: TableTypeId,
    readonly row: number,
    private readonly nameOf: (field: F) => string,
  ) {}

  /** Notes an error in a cell. */
  error(field: F, text: string): void {
    this.add(this.problem("error", field, `${this.nameOf(field)}: ${text}`));
  }

  /** Something of this row to look at, to be put beside what it concerns. */
  warning(field: F, text: string): Problem {
    return this.problem("warning", field, text);
  }

  /** Notes what was found elsewhere; one sentence a cell is enough, but a question never hides an error. */
  add(problem: Problem): void {
    const before = this.problems.filter(({ field }) => field === problem.field);
    if (before.length === 0 || (isError(problem) && !before.some(isError))) this.problems.push(problem);
  }

  /** The value of a cell that matters, and with it what is wrong there. */
  take<T>({ value, wrong }: Entry<T>): T | undefined {
    for (const problem of wrong) this.add(problem);
    return value;
  }

  /** What the core makes of a cell; its fault is put under the field. */
  check<T>(field: F, work: () => T): T | undefined {
    try {
      return work();
    } catch (fault) {
      if (!(fault instanceof Fault)) throw fault;
      this.error(field, fault.sentence);
      return undefined;
    }
  }

  private problem(severity: Severity, field: F, text: string): Problem {
    return { table: this.table, row: this.row, field: field as string as FieldId, severity, text };
  }
}
