import { afterEach, describe, expect, it, vi } from "vitest";
import { ExcelHost } from "../../../src/host/excel/adapter";
import { buildRun } from "../../../src/runsheet/buildRun";
import { isError } from "../../../src/runsheet/problem";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { starterSheets } from "../../../src/runsheet/sheet/starterSheets";
import { SAMPLES } from "../../../src/samples";
import type { Cell, CellValue, Sheet } from "../../../src/sheet/sheet";
import { cases } from "../../cases";
import { PLATFORMS, type Platform } from "./client/officeJs";
import { StandIn } from "./standIn";

// Every sheet that we write, through the client of each platform, into the oldest Excel that loads the add-in.

afterEach(() => vi.unstubAllGlobals());

const tablesOf = ({ tables = [] }: Sheet): string[] => tables.map(({ name }) => name);

/** Whether a cell names a table that another sheet brings: its formula cannot be entered before that. */
const isForLater = ({ content }: Cell, sheet: Sheet): boolean =>
  content !== undefined &&
  "formula" in content &&
  [...content.formula.matchAll(/(\w+)\[/g)].some(([, name = ""]) => !tablesOf(sheet).includes(name));

/** What stands in a sheet's cells, by place. */
const contentsOf = ({ cells }: Sheet): Map<string, string | number> =>
  new Map(
    cells.flatMap(({ row, column, content = { text: "" } }) => {
      const typed = "formula" in content ? content.formula : "text" in content ? content.text : content.number;
      return typed === "" ? [] : [[`${row},${column}`, typed]];
    }),
  );

/** Writes a sheet, and looks at what was sent for it; gives its name. */
async function write(standIn: StandIn, sheet: Sheet): Promise<string> {
  const before = standIn.syncs;
  const name = await new ExcelHost().addSheet(sheet);
  const sent = standIn.requests.slice(before);
  expect(sent.length).toBeLessThanOrEqual(4);
  expect(Math.max(...sent)).toBeLessThan(5 * 1024 * 1024);
  return name;
}

/** Looks whether all of a sheet stands in the workbook. */
function check(standIn: StandIn, name: string, sheet: Sheet): void {
  const made = standIn.book.find(name);
  const cells = [...(made?.cells ?? [])].map(([at, { formula, value }]) => [at, formula ?? value] as const);
  expect(new Map(cells)).toEqual(contentsOf(sheet));
  expect(made?.tables.map((table) => table.name)).toEqual(tablesOf(sheet));
}

describe.each((Object.keys(PLATFORMS) as Platform[]).slice(0, cases(1, 3)))("Excel, %s,", (platform) => {
  const excel = (): StandIn => {
    const standIn = new StandIn({ platform }).install();
    standIn.sheet("Sheet1");
    return standIn;
  };

  const workbooks: [string, () => Sheet[]][] = [
    ["the starter tables", () => starterSheets("g")],
    ...SAMPLES.map(({ title, sheets }): [string, () => Sheet[]] => [title, sheets]),
  ];
  it("leaves the starter tables as they are where a formula that is entered fills all of a table's column", async () => {
    const standIn = excel();
    standIn.book.fills = "all";
    for (const sheet of starterSheets("g")) check(standIn, await write(standIn, sheet), sheet);
  });

  it.each(workbooks)("takes all sheets of %s", async (_, sheets) => {
    const standIn = excel();
    for (const sheet of sheets()) {
      expect(await write(standIn, { ...sheet, cells: sheet.cells.filter((cell) => !isForLater(cell, sheet)) })).toBe(
        sheet.name,
      );
    }
    for (const sheet of sheets()) {
      const later = sheet.cells.filter((cell) => isForLater(cell, sheet));
      await new ExcelHost().write(sheet.name, later);
      check(standIn, sheet.name, sheet);
    }
  });

  describe.each([100, 1000, 5000].slice(0, cases(1, 3)))("the run sheet of %i rows", (count) => {
    const rows = Array.from({ length: count }, (_, i): CellValue[] => [
      `Vessel ${i}`,
      1 + (i % 3),
      100 + (i % 150),
      `Scent ${i % 8}`,
      0.06,
    ]);
    const settings = { ...FIRST_SETTINGS, potCapacity: 20_000 };
    const columns = { vessel: 0, quantity: 1, fill: 2, scent: 3, load: 4 };
    it.each([true, false])("is taken in four requests of a size that it takes, live: %s", async (live) => {
      const run = buildRun({ pour: { type: "pour", headings: [], rows, columns } }, settings);
      expect(run.problems.filter(isError)).toEqual([]);
      const sheet = describeRun(run, { lot: "2026-330-01", date: 46_352, settings: { ...settings, live } });
      const standIn = excel();
      standIn.book.fills = "all";
      check(standIn, await write(standIn, sheet), sheet);
    });
  });
});
