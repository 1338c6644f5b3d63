import { afterEach, expect, it, vi } from "vitest";
import { ExcelHost } from "../../../src/host/excel/adapter";
import { laidOut } from "../../../src/host/excel/laidOut";
import { MOST_BYTES, queuedBytes } from "../../../src/host/excel/payload";
import { buildRun } from "../../../src/runsheet/buildRun";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import type { Cell, CellValue, Sheet } from "../../../src/sheet/sheet";
import { cases } from "../../cases";
import { newHost, StandIn } from "./standIn";

// Invented rows. Excel on the web takes requests of 5 MB (Microsoft's page on limits of add-ins, from memory).
const MOST = 5_000_000;
/** A request shorter than this must not be refused. */
const NEVER_REFUSED = 3_500_000;

afterEach(() => vi.unstubAllGlobals());

function runSheet(count: number, live: boolean, name: (i: number) => string): Sheet {
  const rows = Array.from({ length: count }, (_, i): CellValue[] => [name(i), 1 + (i % 3), 100 + (i % 150)]);
  const settings = { ...FIRST_SETTINGS, potCapacity: 20_000, live };
  const pour = { type: "pour", headings: [], rows, columns: { vessel: 0, quantity: 1, fill: 2 } } as const;
  return describeRun(buildRun({ pour }, settings), { lot: "2026-330-01", date: 46_352, settings });
}

const block = (rows: number, columns: number, cell: (row: number, column: number) => Partial<Cell>): Sheet => ({
  name: "Block",
  widths: Array(columns).fill(8),
  cells: Array.from({ length: rows * columns }, (_, i): Cell => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    return { row, column, ...cell(row, column) };
  }),
});

/** Sheets of so many rows, each long in a way of its own, and about how many rows are too many. */
const KINDS: readonly [string, number, (rows: number) => Sheet][] = [
  ["texts of many kinds of letters", 1500, (rows) => block(rows, 20, () => ({ content: { text: LETTERS } }))],
  ["merged cells", 18_000, (rows) => block(rows, 2, merged)],
  ["a live run sheet", 3000, (rows) => runSheet(rows, true, (i) => `Tin ${i}`)],
  ["a plain run sheet", 5000, (rows) => runSheet(rows, false, (i) => `Tin ${i}`)],
  ["a run sheet of long names in other letters", 2000, (rows) => runSheet(rows, true, (i) => `Glas ${LETTERS} ${i}`)],
  ["looks that change from cell to cell", 8500, (rows) => block(rows, 20, changing)],
  ["single digits", 36_000, (rows) => block(rows, 50, () => ({ content: { number: 1 } }))],
];

const LETTERS = 'é🕯️\u0416"\\\n\ud800ش'.repeat(7);

const changing = (row: number, column: number): Partial<Cell> => ({
  content: { number: row },
  look: (row + column) % 2 ? "input" : "total",
});

/** Every other row is merged: no two go together. */
const merged = (row: number, column: number): Partial<Cell> =>
  row % 2 ? { content: { number: column } } : { content: { text: "wide" }, ...(column === 0 && { across: 2 }) };

/** How long all that is written for a sheet is held to be. */
const known = (sheet: Sheet): number =>
  laidOut(sheet).steps.reduce((sum, step) => sum + queuedBytes<Excel.Worksheet>(step), 0);

const isTaken = (sheet: Sheet): boolean => known(sheet) <= MOST_BYTES;

/** The longest request for a sheet that is to go in one. */
async function sent(sheet: Sheet): Promise<number> {
  const standIn = new StandIn().install();
  standIn.sheet("Sheet1");
  await new ExcelHost().append([sheet]);
  return Math.max(...standIn.requests);
}

it.each(KINDS.slice(0, cases(4, KINDS.length)))(
  "the length of a request is known before it is sent: %s",
  async (_, tooMany, of) => {
    const sheet = of(tooMany / 10);
    const length = await sent(sheet);
    const bytes = known(sheet);
    expect(bytes).toBeGreaterThan(length * 0.99);
    expect(bytes).toBeLessThan(length * 1.3);
  },
);

it.each(KINDS.slice(0, cases(1, 5)))(
  "the longest request that is not refused is one that Excel takes, and not much shorter: %s",
  async (_, tooMany, of) => {
    let rows = tooMany;
    while (isTaken(of(rows))) rows = Math.ceil(rows * 1.05);
    while (!isTaken(of(rows))) rows = Math.floor(rows * 0.98);
    const length = await sent(of(rows));
    expect(length).toBeLessThan(MOST);
    expect(length).toBeGreaterThan(NEVER_REFUSED);
  },
);

it("what is added together, or written on a sheet that is there, is refused where all of it is too much", async () => {
  const standIn = new StandIn().install();
  standIn.table("Log", "Log", [["Notes"], ["none"]]);
  const host = newHost();
  const sheet = block(100, 1, () => ({ content: { text: "z".repeat(30_000) } }));
  const rows = sheet.cells.map(({ content = null }) => [content]);
  const tooMuch = /6\.\d MB, more than Excel takes at once/;
  const before = standIn.book.snapshot();
  await expect(host.append([sheet, { ...sheet, name: "Other" }])).rejects.toThrow(tooMuch);
  await expect(host.append([sheet, { table: "Log", headings: ["Notes"], rows }])).rejects.toThrow(tooMuch);
  await expect(
    host.write("Log", [...sheet.cells, ...sheet.cells.map((cell) => ({ ...cell, column: 3 }))]),
  ).rejects.toThrow(tooMuch);
  expect(standIn.book.snapshot()).toEqual(before);
  expect(Math.max(...standIn.requests)).toBeLessThan(5000);
});

it.runIf(cases(0, 1))("a sheet of 170,000 cells fits or is refused in words", () => {
  expect(isTaken(block(17_000, 10, (row) => ({ content: { number: row } })))).toBe(true);
  expect(isTaken(block(17_000, 10, () => ({ content: { text: LETTERS } })))).toBe(false);
});
