import type { CellValue } from "../../sheet/sheet";
import type { Problem, Severity } from "../problem";
import type { WeightUnit } from "../settings";
import type { SaidBasis } from "./entry";
import type { Field } from "./headings/field";
import { type HeadingUnit, headingUnit, NO_WEIGHT } from "./headings/headingUnit";
import { headingWords } from "./headings/headingWords";
import type { ColumnsOf } from "./headings/matching";
import type { FieldId, TableTypeId } from "./registry";
import { RowReader } from "./rowReader";
import type { TableRows } from "./tableRows";
import { type Wanted, wantedIn } from "./wanted";
import { weightRatio } from "./weightUnits";

/** A table as its type reads it: by field, never by column. */
export class TableReader<F extends string> {
  constructor(
    readonly id: TableTypeId,
    private readonly fields: Readonly<Record<F, Field>>,
    private readonly table: TableRows,
    /** The unit that all weights are wanted in. */
    readonly unit: WeightUnit,
  ) {}

  /** Readers that have noted nothing yet. */
  get rows(): RowReader<F>[] {
    return this.table.rows.map((_, row) => new RowReader(this, row));
  }

  /** Something to say of a column. */
  problem(severity: Severity, field: F, text: string): Problem {
    return { table: this.id, field: field as string as FieldId, severity, text };
  }

  /** What a field is called in front of a person. */
  nameOf(field: F): string {
    return this.fields[field]?.name ?? field;
  }

  has(field: F): boolean {
    return this.columnOf(field) !== undefined;
  }

  /** The heading of a field's column; empty where it has none. */
  heading(field: F): string {
    return this.table.headings[this.columnOf(field) ?? -1] ?? "";
  }

  unitOf(field: F): HeadingUnit | undefined {
    return headingUnit(this.heading(field));
  }

  /** The basis that a heading names, with the words to say so. */
  saidBasis(field: F): SaidBasis | undefined {
    const heading = this.heading(field);
    const { basis } = headingWords(heading);
    if (basis === undefined) return undefined;
    // `Of the whole batch` means of total.
    const verb = basis !== "unclear" && heading.toLowerCase().includes(basis.slice("of ".length)) ? "says" : "means";
    const says = basis === "unclear" ? "does not say whether it is of wax or of total" : `${verb} ${basis}`;
    return { basis, says: `The heading ${heading} ${says}` };
  }

  /**
   * How many of the wanted unit one of a column's unit is, by its heading; undefined where the heading names what no
   * weight has. A problem where its words are not a weight that is known.
   */
  scale(field: F): { readonly ratio: number | undefined; readonly problem?: Problem } {
    const unit = this.unitOf(field);
    const says = `The heading ${this.heading(field)} says`;
    if (unit && "other" in unit) {
      const text = `${says} ${unit.words}, ${NO_WEIGHT[unit.other]}`;
      return { ratio: undefined, problem: this.problem("error", field, text) };
    }
    if (unit && "unknown" in unit) {
      const text = `${says} ${unit.unknown}, which is no unit known here; its numbers are taken as ${this.unit}`;
      return { ratio: 1, problem: this.problem("warning", field, text) };
    }
    return { ratio: weightRatio(unit, this.unit) };
  }

  /** The number that a cell of a field is to hold. */
  wanted(field: F): Wanted {
    return wantedIn(this.fields[field].reads, this.heading(field), this.unit);
  }

  isHidden(row: number): boolean {
    return this.table.hidden?.includes(row) ?? false;
  }

  cell(row: number, field: F): CellValue {
    const column = this.columnOf(field);
    return column === undefined ? null : (this.table.rows[row]?.[column] ?? null);
  }

  private columnOf(field: F): number | undefined {
    return (this.table.columns as ColumnsOf<F>)[field];
  }
}
