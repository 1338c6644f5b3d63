import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, it } from "vitest";
import type { Book } from "../../src/file/book";
import { openFile } from "../../src/file/openFile";
import { give } from "./givenFile";
import { OpenedSite } from "./opened";
import type { TryoutPage } from "./page";

/** A maker's workbook, written by another program than ours: a table, looks, a list to choose from, a frozen row. */
async function jars(): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Jars", { views: [{ state: "frozen", ySplit: 1 }] });
  sheet.addTable({
    name: "Jars",
    ref: "A1",
    headerRow: true,
    columns: [{ name: "Vessel" }, { name: "Water (g)" }, { name: "Twice" }],
    rows: [
      ["Amber jar", 250, { formula: "Jars[[#This Row],[Water (g)]]*2", result: 500 }],
      ["Small tin", 100.5, { formula: "Jars[[#This Row],[Water (g)]]*2", result: 201 }],
    ],
  });
  sheet.getColumn(1).width = 24;
  sheet.getRow(2).height = 30;
  sheet.getCell("B2").numFmt = '0.0" g"';
  sheet.getCell("A5").value = { richText: [{ text: "Weigh " }, { text: "twice", font: { bold: true } }] };
  sheet.getCell("A6").value = "007";
  sheet.getCell("B6").value = true;
  sheet.getCell("C6").value = { formula: "SUM(B2:B3)", result: 350.5 };
  sheet.getCell("D2").dataValidation = { type: "list", allowBlank: true, formulae: ['"soy,rape"'] };
  sheet.getCell("D3").fill = { type: "pattern", pattern: "solid", fgColor: { argb: "FFFFF9E3" } };
  book.addWorksheet("Shown first");
  book.views = [{ x: 0, y: 0, width: 20000, height: 15000, firstSheet: 0, activeTab: 1, visibility: "visible" }];
  book.addWorksheet("Papers", { state: "hidden" }).getCell("A1").value = {
    text: "papers",
    hyperlink: "https://example.com/",
  };
  return Buffer.from(await book.xlsx.writeBuffer());
}

/** Saves by the button, as a browser does that cannot choose a place for a file. */
async function save(tryout: TryoutPage): Promise<Buffer> {
  const [download] = await Promise.all([
    tryout.page.waitForEvent("download"),
    tryout.page.getByRole("button", { name: "Save", exact: true }).click(),
  ]);
  return readFileSync(await download.path());
}

const read = (bytes: Buffer, name = "jars.xlsx"): Book => openFile(bytes, name).book;

function cellOf(book: Book, sheet: string, row: number, column: number) {
  const rows = book.sheets.find(({ name }) => name === sheet)?.rows;
  return rows?.find((one) => one.row === row)?.cells.find((one) => one.column === column);
}

describe("a workbook of the maker's own, in a browser", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  let original: Buffer;

  beforeAll(async () => {
    // The pinned browser has dialogs of its own, which no test can press.
    await tryout.page.evaluate("delete window.showSaveFilePicker; void 0");
    original = await jars();
    await give(tryout, "jars.xlsx", original);
    await tryout.page.getByRole("tab", { name: "Jars", exact: true }).waitFor();
  });

  it("shows the sheet that the file shows", async () => {
    expect(await tryout.host("activeSheet")).toBe("Shown first");
    await tryout.openSheet("Jars");
  });

  it("opens with its values, and a formula of ours is worked out in it", async () => {
    expect(await tryout.cells("Jars", 1, 0, 2, 3)).toEqual([
      ["Amber jar", 250, 500],
      ["Small tin", 100.5, 201],
    ]);
    await tryout.type("E2", "=POUR.FILLWEIGHT(B2,0.86)");
    // 250 x 0.86: common practice, no source.
    expect(await tryout.cells("Jars", 1, 4)).toEqual([[215]]);
    await tryout.type("B3", "120");
    expect(await tryout.cells("Jars", 2, 2)).toEqual([[240]]);
  });

  it("is saved with what was typed, and all else as it was", async () => {
    const saved = await save(tryout);
    const [before, now] = [read(original), read(saved)];
    expect(cellOf(now, "Jars", 1, 4)).toMatchObject({ formula: "=POUR.FILLWEIGHT(B2,0.86)", value: 215 });
    expect(cellOf(now, "Jars", 2, 1)).toMatchObject({ value: 120 });
    expect(cellOf(now, "Jars", 2, 2)).toMatchObject({ value: 240 });
    expect(cellOf(now, "Jars", 5, 2)).toMatchObject({ value: 370 });
    const edited = new Set(["1,4", "2,1", "2,2", "5,2"]);
    const others = (book: Book) =>
      book.sheets.map((sheet) => ({
        ...sheet,
        rows: sheet.rows.map((row) => ({
          ...row,
          cells: row.cells.filter(({ column }) => sheet.name !== "Jars" || !edited.has(`${row.row},${column}`)),
        })),
      }));
    expect(others(now)).toEqual(others(before));
    // Another program reads it as it reads the first one.
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(saved.buffer.slice(saved.byteOffset, saved.byteOffset + saved.byteLength) as ArrayBuffer);
    expect(book.getWorksheet("Jars")?.getCell("B3").value).toBe(120);
    expect(book.getWorksheet("Jars")?.getCell("A6").value).toBe("007");
  });

  it("stays as it was when a damaged file, or two at once, are to be opened; a sentence says what to do", async () => {
    await give(tryout, "broken.xlsx", original.subarray(0, original.length / 2));
    const alert = tryout.page.locator("#files").getByRole("alert");
    await alert.waitFor();
    expect(await alert.textContent()).toMatch(/^This file is damaged\..*open that here\.$/s);
    expect(await tryout.cells("Jars", 2, 1)).toEqual([[120]]);
    expect(await tryout.faults("#files")).toEqual([]);
    await tryout.page.evaluate(() => {
      const dropped = new DataTransfer();
      for (const name of ["a.xlsx", "b.xlsx"]) dropped.items.add(new File(["x"], name));
      const drop = (type: string) => new DragEvent(type, { dataTransfer: dropped, bubbles: true, cancelable: true });
      document.querySelector("main")?.dispatchEvent(drop("dragenter"));
    });
    expect(await tryout.page.locator(".files-drop").isVisible()).toBe(true);
    await tryout.page.evaluate(() => {
      const dropped = new DataTransfer();
      for (const name of ["a.xlsx", "b.xlsx"]) dropped.items.add(new File(["x"], name));
      document
        .querySelector("main")
        ?.dispatchEvent(new DragEvent("drop", { dataTransfer: dropped, bubbles: true, cancelable: true }));
    });
    await tryout.page.getByText("Open one file at a time.").waitFor();
    expect(await tryout.page.locator(".files-drop").isVisible()).toBe(false);
    expect(await tryout.sheetNames()).toEqual(["Jars", "Shown first", "Papers"]);
    // What was said of a file goes with the workbook that stood there meanwhile.
    await tryout.openWorkbook("An empty workbook");
    await expect.poll(() => tryout.page.locator(".files-said").textContent()).toBe("");
  });

  it("opens by a drop", async () => {
    await tryout.page.evaluate(
      (bytes) => {
        const dropped = new DataTransfer();
        dropped.items.add(new File([new Uint8Array(bytes)], "dropped.xlsx"));
        document
          .querySelector("main")
          ?.dispatchEvent(new DragEvent("drop", { dataTransfer: dropped, bubbles: true, cancelable: true }));
      },
      [...original],
    );
    await tryout.page.getByText("dropped", { exact: true }).waitFor();
    expect(await tryout.cells("Jars", 2, 1)).toEqual([[100.5]]);
  });
});

describe("a workbook that a file cannot carry whole, in a browser", () => {
  const site = new OpenedSite();
  const tryout = site.page({ width: 320, height: 640 });
  const save = () => tryout.page.getByRole("button", { name: "Save", exact: true });
  const dialog = () => tryout.page.getByRole("dialog");

  beforeAll(async () => {
    await tryout.page.evaluate("delete window.showSaveFilePicker; void 0");
    const book = new ExcelJS.Workbook();
    // A function that asks a server, which no page can.
    book.addWorksheet("Sums").getCell("A1").value = { formula: 'CUBEVALUE("studio","[Pours].[Sum]")', result: 42 };
    await give(tryout, "sums.xlsx", Buffer.from(await book.xlsx.writeBuffer()));
    await tryout.page.getByRole("tab", { name: "Sums", exact: true }).waitFor();
  });

  it("is not saved before that is read: the dialog keeps the focus and Escape leaves it", async () => {
    await save().click();
    await dialog().getByText("Sums: 1 formula that cannot be worked out here.").waitFor();
    expect(await tryout.faults("dialog")).toEqual([]);
    for (let i = 0; i < 4; i++) {
      await tryout.page.keyboard.press("Tab");
      const isOutside = await tryout.page.evaluate(
        () => document.activeElement !== document.body && !document.activeElement?.closest("dialog"),
      );
      expect(isOutside).toBe(false);
    }
    const { width } = (await dialog().boundingBox()) ?? { width: 0 };
    expect(width).toBeLessThanOrEqual(320);
    await tryout.page.keyboard.press("Escape");
    await dialog().waitFor({ state: "detached" });
    expect(await tryout.page.locator("#files").textContent()).not.toContain("Saved");
    expect(await save().evaluate((button) => button === document.activeElement)).toBe(true);
  });

  it("is saved by a press that says so, with the value that the file had", async () => {
    await save().press("Enter");
    await dialog().waitFor();
    const [download] = await Promise.all([
      tryout.page.waitForEvent("download"),
      dialog().getByRole("button", { name: "Save anyway" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("sums.xlsx");
    const book = read(readFileSync(await download.path()));
    expect(cellOf(book, "Sums", 0, 0)).toMatchObject({ value: 42 });
    await tryout.page.getByText("Saved sums.xlsx.").waitFor();
  });
});
