import type { SourceRows } from "../../src/host/host";
import type { ReadTables } from "../../src/pane/state/useTables";
import type { Addition } from "../../src/sheet/addition";
import type { CellValue, Content } from "../../src/sheet/sheet";

/** A workbook of tables alone, to which additions are made as a spreadsheet makes them. */
export class TablesAlone {
  constructor(public read: ReadTables = {}) {}

  add(additions: readonly Addition[]): void {
    for (const one of additions) {
      const kind = (name: string) => (name === "Moves" ? "moves" : "log");
      if ("table" in one) {
        const known = this.read[kind(one.table)] as SourceRows;
        const added = one.rows.map((row) =>
          known.headings.map((heading) => plainOf(row[one.headings.indexOf(heading)])),
        );
        this.read = { ...this.read, [kind(one.table)]: rowsOf(one.table, [known.headings, ...known.rows, ...added]) };
        continue;
      }
      const [table] = one.tables ?? [];
      const { name = "", headings = [], rows = 0 } = table ?? {};
      const cells = Array.from({ length: rows + 1 }, (): CellValue[] => headings.map(() => null));
      for (const { row, column, content } of one.cells) (cells[row] as CellValue[])[column] = plainOf(content);
      this.read = { ...this.read, [kind(name)]: rowsOf(name, cells) };
    }
  }

  /** The sum of a column over the rows that pass. */
  sum(table: "moves" | "log", column: string, passes: (of: (heading: string) => CellValue) => boolean): number {
    const { headings = [], rows = [] } = this.read[table] ?? {};
    return rows.reduce((total, row) => {
      const of = (heading: string) => row[headings.indexOf(heading)] ?? null;
      return passes(of) ? total + Number(of(column) ?? 0) : total;
    }, 0);
  }
}

/** What a cell holds once a content is written; of a formula nothing, for nobody works it out. */
export const plainOf = (content: Content | null | undefined): CellValue =>
  content ? ("text" in content ? content.text : "number" in content ? content.number : null) : null;

export function rowsOf(name: string, [headings = [], ...rows]: readonly (readonly CellValue[])[]): SourceRows {
  const place = { sheet: name, row: 0, column: 0, rows: rows.length + 1, columns: headings.length };
  return { name, place, headings: headings.map(String), rows };
}
