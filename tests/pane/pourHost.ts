import { buildRun } from "../../src/runsheet/buildRun";
import { FIRST_SETTINGS } from "../../src/runsheet/settings";
import { describeRun } from "../../src/runsheet/sheet/describeRun";
import { AT } from "../../src/runsheet/sheet/layout";
import type { Addition } from "../../src/sheet/addition";
import type { CellValue, Content, Sheet } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";

const ROWS: CellValue[][] = [["Tin", 10, 100, "Cedar"]];
const BATCH: CellValue[][] = [["Vessel", "Quantity", "Fill weight (g)", "Scent"], ...ROWS];
const VESSELS: CellValue[][] = [
  ["Vessel", "Water weight (g)", "Wax factor"],
  ["Tin", 120, 0.8333],
];

export const plainOf = (content: Content | null | undefined): CellValue => {
  if (!content) return null;
  return "text" in content ? content.text : "number" in content ? content.number : null;
};

/** A sheet's plain contents as its cells. */
function cellsOf({ cells }: Sheet): CellValue[][] {
  const rows = Array.from({ length: 1 + Math.max(...cells.map(({ row }) => row)) }, () =>
    Array<CellValue>(8).fill(null),
  );
  for (const { row, column, content } of cells) (rows[row] as CellValue[])[column] = plainOf(content);
  return rows;
}

/** The run sheet of a lot, in plain numbers: 10 tins of 100 g, 1030 melted. */
export function runSheet(lot: string): CellValue[][] {
  const settings = { ...FIRST_SETTINGS, live: false };
  const pour = {
    type: "pour" as const,
    headings: [],
    rows: ROWS,
    columns: { vessel: 0, quantity: 1, fill: 2, scent: 3 },
  };
  return cellsOf(describeRun(buildRun({ pour }, settings), { lot, date: 46352, settings }));
}

/** A workbook with run sheets and a log, in which tabs are shown, renamed, copied and deleted. */
export class PourHost extends FakeHost {
  readonly sheets = new Map<string, CellValue[][]>();
  /** What the next addition to the log meets. */
  onAdding: () => void = () => {};
  isDeaf = false;
  readonly appended: (readonly Addition[])[] = [];

  override async firstCells() {
    return [...this.sheets].map(([sheet, rows]) => ({ sheet, value: rows[0]?.[0] ?? null }));
  }
  override async sheetNames() {
    return [...this.sheets.keys()];
  }
  override async readSheet(name: string) {
    return (this.sheets.get(name) ?? []).map((row) => [...row]);
  }
  override async addSheet(sheet: Sheet) {
    this.sheets.set(sheet.name, cellsOf(sheet));
    return super.addSheet(sheet);
  }
  /** All or nothing: what is refused is refused before anything changes. */
  override async append(additions: readonly Addition[]) {
    this.onAdding();
    if (this.isDeaf) return;
    const after = additions.map((one): [string, CellValue[][]] => {
      if (!("table" in one)) return [one.tables?.[0]?.name ?? "", cellsOf(one)];
      const { table, headings, rows } = one;
      const [known = [], ...old] = this.all[table] ?? [];
      const missing = headings.find((heading) => !known.includes(heading));
      if (missing) throw new Error(`The table ${table} has no column "${missing}".`);
      return [
        table,
        [known, ...old, ...rows.map((row) => known.map((heading) => plainOf(row[headings.indexOf(String(heading))])))],
      ];
    });
    Object.assign(this.all, Object.fromEntries(after));
    this.appended.push(additions);
  }
  /** Types into a cell of a run sheet: the first row of its one vessel, or an ingredient. */
  type(sheet: string, key: "1 vessel" | "1 wax" | "1 scent", column: number, value: CellValue): void {
    const row = this.sheets.get(sheet)?.find((cells) => cells[AT.key] === key);
    if (!row) throw new Error(`no ${key} on ${sheet}`);
    row[column] = value;
  }
  log(table: string = "RunsLog"): Record<string, CellValue>[] {
    const [headings = [], ...rows] = this.all[table] ?? [];
    return rows.map((row) => Object.fromEntries(headings.map((heading, i) => [String(heading), row[i] ?? null])));
  }
}

export const [GOOD, ACTUAL, WEIGHED] = [4, 4, 5];
export const SHEET = "Run 2026-330-01";

/** A workbook whose one run was poured and written down as planned, but for what the test changes. */
export function pouredBook(tables: Record<string, CellValue[][]> = {}): PourHost {
  const host = new PourHost({ Batch: BATCH, Vessels: VESSELS, ...tables });
  host.sheets.set("Batch", [["Batch"]]);
  host.sheets.set(SHEET, runSheet("2026-330-01"));
  host.type(SHEET, "1 wax", ACTUAL, 972);
  host.type(SHEET, "1 scent", ACTUAL, 58);
  host.type(SHEET, "1 vessel", GOOD, 10);
  host.type(SHEET, "1 vessel", WEIGHED, 100);
  return host;
}
