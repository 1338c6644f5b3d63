import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import type { BookSheet, Condition } from "../../src/file/book";
import { emptyBook, emptySheet, PLAIN_STYLE } from "../../src/file/emptyBook";
import { openFile } from "../../src/file/openFile";
import { saveBook } from "../../src/file/saveBook";
import { give } from "./givenFile";
import { later } from "./later";
import { OpenedSite } from "./opened";

const condition = (column: number, row: number, of: Partial<Condition> & Pick<Condition, "kind" | "priority">) => ({
  ...{ areas: [{ row, column, rows: 5, columns: 1 }], stops: false, formulas: [] },
  ...of,
});

/**
 * A solid bar with its value hidden, a rule that the sheet has no words for, two of which the first wins, one far below,
 * and one that reads a fixed cell, as a list reads fixed cells.
 */
function ruled(): Uint8Array {
  const above = (formula: string, fill: string) => ({
    ...{ kind: "cellIs", operator: "greaterThan", formulas: [formula], look: { fill } },
  });
  const sheet: BookSheet = {
    ...emptySheet("1", "Ruled"),
    rows: [1, 2, -3, 4, 5].map((value, row) => ({
      row,
      cells: [0, 1, 2].map((column) => ({ column, value, style: 0 })),
    })),
    conditions: [
      condition(0, 0, {
        ...{ kind: "dataBar", priority: 1, bar: { solid: true, negative: "AA0000", hidesValue: true } },
        stopsAt: [
          { kind: "min", color: "638EC6" },
          { kind: "max", color: "638EC6" },
        ],
      }),
      condition(1, 0, {
        ...{ kind: "aboveAverage", priority: 2, look: { fill: "FFEEAA" } },
        average: { above: true, orEqual: false, deviations: 1 },
      }),
      condition(2, 0, { ...above("=1", "AAEEAA"), priority: 3 }),
      condition(2, 0, { ...above("=3", "EEAAAA"), priority: 4 }),
      condition(2, 30_000, { ...above("=3", "EEAAAA"), priority: 5 }),
      condition(3, 0, { kind: "expression", formulas: ["=D1>$A$9"], look: { fill: "AAEEAA" }, priority: 6 }),
    ],
    validations: [
      {
        ...{ areas: [{ row: 0, column: 4, rows: 2, columns: 1 }], kind: "list", formulas: ["=$A$2:$A$9"] },
        ...{ operator: "between", allowsBlank: true, showsList: true, onWrong: "warning" },
      },
    ],
  };
  return saveBook(null, { ...emptyBook(), sheets: [sheet], styles: [PLAIN_STYLE] }).bytes;
}

const site = new OpenedSite();

it("rules of a file move with an inserted row, go into a duplicate, and are all saved", async () => {
  const bytes = ruled();
  const before = openFile(bytes, "ruled.xlsx").book.sheets[0]?.conditions ?? [];
  const tryout = await site.open();
  const { page } = tryout;
  await page.evaluate("delete window.showSaveFilePicker; void 0");
  await give(tryout, "ruled.xlsx", Buffer.from(bytes));
  await page.locator("#name").getByText("ruled", { exact: true }).waitFor();
  await later(page, () => window.pourwright.work);

  // What is said of the file stands above the cells.
  await page.getByRole("button", { name: "Understood" }).click();
  await tryout.goTo("A4");
  // Three rows of 20 pixels below the heads of the columns.
  const cells = page.locator("canvas[id^=univer-sheet-main-canvas]");
  await cells.click({ button: "right", position: { x: 20, y: 20 + 3 * 20 + 10 } });
  // Its middle is the number of rows.
  await page.getByText("rows above").click({ position: { x: 20, y: 10 } });
  await expect.poll(async () => (await tryout.cells("Ruled", 2, 0, 3, 1)).flat()).toEqual([-3, null, 4]);
  await page.getByRole("tab", { name: "Ruled", exact: true }).click({ button: "right" });
  await page.getByText("Copy", { exact: true }).filter({ visible: true }).click();
  await expect.poll(() => tryout.sheetNames()).toHaveLength(2);

  const saving = page.waitForEvent("download");
  await page.locator("#files").getByRole("button", { name: "Save", exact: true }).click();
  const { book } = openFile(readFileSync(await (await saving).path()), "ruled.xlsx");
  const longer = before.map((one) => ({
    ...one,
    formulas: one.formulas.map((formula) => formula.replace("$A$9", "$A$10")),
    areas: one.areas.map((area) =>
      area.row === 0 ? { ...area, rows: area.rows + 1 } : { ...area, row: area.row + 1 },
    ),
  }));
  expect(book.sheets[0]?.conditions).toEqual(longer);
  expect(book.sheets[1]?.conditions).toEqual(longer);
  for (const sheet of book.sheets) expect(sheet.validations[0]?.formulas).toEqual(["=$A$2:$A$10"]);
});
