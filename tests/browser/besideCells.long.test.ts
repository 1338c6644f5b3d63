import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, it } from "vitest";
import { openFile } from "../../src/file/openFile";
import { later } from "./later";
import { OpenedSite } from "./opened";

/** A workbook as another program writes it, with what lies beside and over its cells. Its names are invented. */
async function makersFile(): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  const plan = book.addWorksheet("Plan");
  plan.mergeCells("A1:D1");
  plan.getCell("A1").value = "Autumn plan for the tin";
  plan.addRow(["Vessel", "Fill", "Day", "Maker"]);
  plan.addRow(["Small tin", 1250.75, null, { text: "Supplier page", hyperlink: "https://example.com/tins" }]);
  plan.addRow(["Large tin", 990, null, { text: "To stock", hyperlink: "#Stock!A2" }]);
  plan.addRow(["Bowl", 300]);
  plan.getColumn(2).width = 5;
  plan.getCell("B3").numFmt = "#,##0.00";
  plan.getCell("A3").note = "Warm it first.";
  plan.getCell("A4").note = "Check the lid.";
  const red = { type: "pattern", pattern: "solid", bgColor: { argb: "FFFFC7CE" } } as const;
  plan.addConditionalFormatting({
    ref: "B3:B10",
    rules: [
      {
        type: "cellIs",
        operator: "greaterThan",
        formulae: [1000],
        priority: 1,
        style: { fill: red, font: { color: { argb: "FF9C0006" } } },
      },
    ],
  });
  const blue = { type: "pattern", pattern: "solid", bgColor: { argb: "FFBDD7EE" } } as const;
  // It comes without the text, which only the formula holds.
  plan.addConditionalFormatting({
    ref: "A3:A10",
    rules: [
      {
        type: "containsText",
        operator: "containsText",
        text: "tin",
        priority: 2,
        style: { fill: blue, font: { color: { argb: "FF1F3864" } } },
      },
    ],
  });
  book.addWorksheet("Stock").addRows([["Item"], ["Tin"]]);
  return Buffer.from(await book.xlsx.writeBuffer());
}

describe("what lies beside the cells of an opened file, by keys alone", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  const press = async (...all: string[]) => {
    for (const keys of all) {
      await tryout.page.keyboard.press(keys);
      await tryout.idle();
    }
  };
  const write = (text: string) => tryout.page.keyboard.type(text);
  const popUp = () => tryout.page.locator("[data-u-comp=rect-popup]");
  const note = () => popUp().locator("textarea");
  const undoWords = () =>
    tryout.page.locator("[data-u-command='univer.command.undo'] [aria-label]").first().getAttribute("aria-label");
  /** What has the keyboard: its name, and what it says. */
  const focused = () =>
    tryout.page.evaluate(() => {
      const at = document.activeElement;
      return `${at?.getAttribute("aria-label") ?? at?.getAttribute("placeholder") ?? ""} ${at?.textContent ?? ""}`.trim();
    });
  const tabTo = async (name: RegExp, keys = "Tab") => {
    for (let presses = 0; presses < 40 && !name.test(await focused()); presses++) await press(keys);
    expect(await focused()).toMatch(name);
  };
  /** The colour in the upper left corner of a cell that is on the screen. */
  const colorAt = (x: number, y: number) =>
    tryout.page.evaluate(
      ([left, top]) => {
        const canvas = document.querySelector<HTMLCanvasElement>("canvas[id^=univer-sheet-main-canvas]");
        const scale = (canvas?.width ?? 0) / (canvas?.getBoundingClientRect().width ?? 1);
        const data = canvas?.getContext("2d")?.getImageData(left * scale, top * scale, 1, 1).data;
        // Nothing is drawn where nothing is filled.
        return data?.[3] === 0 ? null : [...(data ?? [])].slice(0, 3);
      },
      [x, y] as const,
    );

  beforeAll(async () => {
    await later(tryout.page, () => window.pourwright.work);
    const file = { name: "plan.xlsx", mimeType: "", buffer: await makersFile() };
    await tryout.page.evaluate("delete window.showSaveFilePicker; void 0");
    // What the dialog of finding said of the workbook before holds no more.
    await press("Control+F");
    await tryout.page.locator("[data-u-comp=find-replace-dialog]").waitFor();
    await tryout.page.getByLabel("Workbook file").setInputFiles(file);
    await tryout.page.locator("#name").getByText("plan", { exact: true }).waitFor();
    await tryout.page.locator("[data-u-comp=find-replace-dialog]").waitFor({ state: "detached" });
    await tryout.idle();
  });

  it("finds from a merged cell in the whole sheet, from there on", async () => {
    await tryout.goTo("A1");
    await press("Control+F");
    await write("tin");
    const dialog = tryout.page.locator("[role=dialog]");
    await dialog.getByText("1/3").waitFor();
    await press("Enter");
    await dialog.getByText("2/3").waitFor();
    await tabTo(/Replace and more/);
    await press("Enter");
    await tabTo(/Row by row/);
    await press("Enter");
    await tryout.page.getByRole("menu").waitFor();
    await press("Escape");
    expect(await tryout.faults("[role=dialog]")).toEqual([]);
    await press("Escape");
    await dialog.waitFor({ state: "detached" });
  });

  it("draws a number that is too wide for its column as one that is not shown, never cut", async () => {
    await tryout.page.evaluate(() => {
      const drawn: string[] = [];
      Object.assign(window, { drawn });
      const draw = CanvasRenderingContext2D.prototype.fillText;
      CanvasRenderingContext2D.prototype.fillText = function (text, ...at) {
        drawn.push(text);
        draw.call(this, text, ...at);
      };
    });
    await tryout.type("B8", "2");
    const drawn = () => tryout.page.evaluate(() => (window as unknown as { drawn: string[] }).drawn);
    await expect.poll(drawn).toContain("###");
    expect(await drawn()).not.toContain("1,250.75");
    expect(await drawn()).toContain("300");
  });

  describe("notes", () => {
    it("show where their cell is selected, and no longer", async () => {
      await tryout.goTo("A2");
      await press("ArrowDown");
      await expect.poll(() => note().inputValue()).toBe("Warm it first.");
      expect(await tryout.faults("[data-u-comp=rect-popup]")).toEqual([]);
      await tryout.goTo("F9");
      await popUp().waitFor({ state: "detached" });
    });

    it("are added, changed and removed, and none stays blank", async () => {
      for (const [cell, text] of [
        ["A5", "Ash bowl"],
        ["A3", "Cold now"],
        ["A4", ""],
        ["C3", ""],
      ] as const) {
        await tryout.goTo(cell);
        await press("Shift+F2");
        await expect.poll(focused).toMatch(/^A note for this cell/);
        await press("Control+A", "Delete");
        await write(text);
        await expect.poll(() => note().inputValue()).toBe(text);
        await press("Escape");
        await tryout.goTo("F9");
        await popUp().waitFor({ state: "detached" });
      }
      expect(await undoWords()).toBe("Undo a note (Ctrl+Z)");
    });
  });

  describe("links", () => {
    it("are not put where they would make a number a text", async () => {
      await tryout.goTo("B5");
      await press("Control+K");
      await expect.poll(() => tryout.message()).toMatch(/^No link was put into B5: it holds a number/);
      expect(await popUp().count()).toBe(0);
      expect(await tryout.cells("Plan", 4, 1)).toEqual([[300]]);
    });

    it("are copied only where their address leads somewhere outside of the workbook too", async () => {
      const copy = popUp().getByRole("button", { name: "Copy the link" });
      await tryout.goTo("D4");
      await press("Control+K");
      await popUp().getByRole("button", { name: "Remove the link" }).waitFor();
      expect(await copy.count()).toBe(0);
      await press("Escape");
      await popUp().waitFor({ state: "detached" });
      await tryout.goTo("D3");
      await press("Control+K");
      await popUp().getByRole("button", { name: "Remove the link" }).waitFor();
      expect(await copy.count()).toBe(1);
      await press("Escape");
      await popUp().waitFor({ state: "detached" });
    });

    it("are seen and removed", async () => {
      await tryout.goTo("D3");
      await press("Control+K");
      await expect.poll(focused).toBe("https://example.com/tins");
      expect(await tryout.faults("[data-u-comp=rect-popup]")).toEqual([]);
      await tabTo(/^Remove the link/);
      await press("Enter");
      await popUp().waitFor({ state: "detached" });
      expect(await undoWords()).toBe("Undo a link (Ctrl+Z)");
      expect(await tryout.cells("Plan", 2, 3)).toEqual([["Supplier page"]]);
    });

    it("are added, and the cells have the keyboard again", async () => {
      await tryout.goTo("D5");
      await press("Control+K");
      await expect.poll(focused).toBe("https://...");
      expect(await tryout.faults("[data-u-comp=rect-popup]")).toEqual([]);
      await press("Shift+Tab");
      await expect.poll(focused).toBe("A web address");
      await press("Shift+Tab");
      await expect.poll(focused).toBe("What the cell shows");
      await write("Bowls");
      await tabTo(/^https/);
      await write("https://example.com/bowls");
      await press("Enter");
      await popUp().waitFor({ state: "detached" });
      await expect.poll(() => tryout.cells("Plan", 4, 3)).toEqual([["Bowls"]]);
      await press("ArrowDown");
      await expect.poll(() => tryout.nameBox.inputValue()).toBe("D6");
    });
  });

  describe("conditional formats", () => {
    it("show on their cells, those too whose text only the formula holds", async () => {
      await tryout.goTo("F9");
      const [row, height] = [20, 20];
      // The middle of the columns A and B near the upper edge of the rows, which are of the usual height.
      const at = (x: number, r: number) => colorAt(x, row + (r - 1) * height + 3);
      const columnB = 46 + 64 + 10;
      await expect.poll(() => at(columnB, 3)).toEqual([255, 199, 206]);
      expect(await at(columnB, 4)).toBeNull();
      expect(await at(56, 4)).toEqual([189, 215, 238]);
      expect(await at(56, 5)).toBeNull();
    });
  });

  it("stands in the saved file as another program and ours read it", async () => {
    const download = tryout.page.waitForEvent("download");
    await tryout.page.getByRole("button", { name: "Save", exact: true }).click();
    const bytes = readFileSync(await (await download).path());
    const [plan] = openFile(new Uint8Array(bytes), "plan.xlsx").book.sheets;
    expect(plan?.notes.map(({ row, text }) => [row, text])).toEqual([
      [2, "Cold now"],
      [4, "Ash bowl"],
    ]);
    const other = new ExcelJS.Workbook();
    await other.xlsx.load(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer);
    const sheet = other.getWorksheet("Plan") as ExcelJS.Worksheet & { conditionalFormattings: unknown };
    const notes = ["A3", "A4", "A5", "C3"].map((cell) => JSON.stringify(sheet.getCell(cell).note ?? ""));
    expect(notes.map((text) => /Cold now|Ash bowl/.exec(text)?.[0] ?? "")).toEqual(["Cold now", "", "Ash bowl", ""]);
    expect(["D3", "D4", "D5"].map((cell) => sheet.getCell(cell).hyperlink)).toEqual([
      undefined,
      "#Stock!A2",
      "https://example.com/bowls",
    ]);
    expect(sheet.conditionalFormattings).toMatchObject([
      { ref: "B3:B10", rules: [{ type: "cellIs", operator: "greaterThan", formulae: ["1000"] }] },
      { ref: "A3:A10", rules: [{ type: "containsText", formulae: ['NOT(ISERROR(SEARCH("tin",A3)))'] }] },
    ]);
  });
});
