import type { Host, Source, SourceRows } from "../../src/host/host";
import type { Addition } from "../../src/sheet/addition";
import type { Cell, CellValue, Sheet } from "../../src/sheet/sheet";

/** A spreadsheet of tables alone, for the pane: what it was asked to do, and answers that can be held back or refused. */
export class FakeHost implements Host {
  readonly added: Sheet[] = [];
  readonly wrote: { sheet: string; cells: readonly Cell[] }[] = [];
  readonly saved: unknown[] = [];
  kept: unknown = null;
  /** When set, the next call of that name waits for it; a rejection is what the host refuses with. */
  held: Partial<Record<"tables" | "settings" | "addSheet" | "readSheet", Promise<unknown>>> = {};
  /** Of every table: rows that stand below it, and rows that are hidden. */
  below = 0;
  hidden: readonly number[] = [];
  /** The sheet that is shown; the first table's at first. */
  active: string | undefined;
  readonly takenIn: { table: string; rows: number }[] = [];
  readonly #listeners = new Set<() => void>();

  constructor(readonly all: Record<string, CellValue[][]>) {}

  /** Says that something has changed, as a host does after an edit. */
  changed(): void {
    for (const listener of this.#listeners) listener();
  }

  async tables(): Promise<Source[]> {
    await this.held.tables;
    return Object.entries(this.all).map(([name, rows], i) => this.#source(name, rows, i));
  }
  async read(source: Source): Promise<SourceRows> {
    const rows = this.all[source.name] as CellValue[][];
    const { below, hidden } = this;
    return { ...source, rows: rows.slice(1).map((row) => [...row]), below, hidden };
  }
  async selection(): Promise<SourceRows> {
    throw new Error("Select the whole table first.");
  }
  async sheetNames(): Promise<string[]> {
    return [...Object.keys(this.all), ...this.added.map(({ name }) => name)];
  }
  async firstCells(): Promise<{ sheet: string; value: CellValue }[]> {
    const tables = Object.keys(this.all).map((sheet) => ({ sheet, value: null }));
    const titles = this.added.map(({ name, cells }) => {
      const content = cells.find(({ row, column }) => row === 0 && column === 0)?.content;
      return { sheet: name, value: content && "text" in content ? content.text : null };
    });
    return [...tables, ...titles];
  }
  async addSheet(sheet: Sheet): Promise<string> {
    await this.held.addSheet;
    this.added.push(sheet);
    return sheet.name;
  }
  async readSheet(_name: string): Promise<CellValue[][]> {
    await this.held.readSheet;
    return [];
  }
  async isFormula(_sheet: string, _row: number, _column: number): Promise<boolean> {
    return false;
  }
  async write(sheet: string, cells: readonly Cell[]): Promise<void> {
    this.wrote.push({ sheet, cells });
  }
  async append(_additions: readonly Addition[]): Promise<void> {}
  async takeInRows(table: string, rows: number): Promise<void> {
    this.takenIn.push({ table, rows });
    this.below -= rows;
  }
  async activeSheet(): Promise<string> {
    return this.active ?? (await this.sheetNames())[0] ?? "";
  }
  async select(): Promise<void> {}
  async settings(): Promise<unknown> {
    await this.held.settings;
    return this.kept;
  }
  async keepSettings(settings: unknown): Promise<void> {
    this.saved.push(settings);
  }
  onChange(callback: () => void): () => void {
    this.#listeners.add(callback);
    return () => this.#listeners.delete(callback);
  }

  #source(name: string, rows: CellValue[][], i: number): Source {
    const headings = (rows[0] as CellValue[]).map(String);
    const place = { sheet: `Sheet ${name}`, row: 3 + i, column: 0, rows: rows.length, columns: headings.length };
    return { name, place, headings };
  }
}
