import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { describe, expect, it } from "vitest";
import { openFile } from "../../src/file/openFile";
import { OpenedSite } from "./opened";

/** A maker's workbook, written by another program than ours: her vessels, and what she pours next. */
async function studio(): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  book.addWorksheet("Next").addTable({
    name: "Next",
    ref: "A1",
    headerRow: true,
    columns: [{ name: "Vessel" }, { name: "Scent" }, { name: "Quantity" }, { name: "Load (% of wax)" }],
    rows: [["Amber jar", "Fig", 6, 0.08]],
  });
  book.addWorksheet("Vessels").addTable({
    name: "Vessels",
    ref: "A1",
    headerRow: true,
    columns: [{ name: "Vessel" }, { name: "Water (g)" }],
    rows: [
      ["Amber jar", 250],
      ["Small tin", 100],
    ],
  });
  return Buffer.from(await book.xlsx.writeBuffer());
}

describe("a maker with the keyboard alone, in a browser", () => {
  const site = new OpenedSite();

  it("opens a workbook of her own, types a row, writes a run sheet and saves", async () => {
    const tryout = await site.open({ isNew: true });
    const { page } = tryout;
    await page.evaluate("delete window.showSaveFilePicker; void 0");
    const press = async (keys: string) => {
      await page.keyboard.press(keys);
      await tryout.idle();
    };
    /** What has the keyboard, by its name or its words. */
    const focused = () =>
      page.evaluate(() => {
        const at = document.activeElement;
        return (at?.getAttribute("aria-label") ?? at?.textContent ?? "").trim();
      });
    const tabTo = async (name: string, keys = "Tab") => {
      const passed: string[] = [];
      for (let presses = 0; presses < 80 && (await focused()) !== name; presses++) {
        await press(keys);
        passed.push(await focused());
      }
      expect(await focused(), passed.join(" > ")).toBe(name);
    };

    // Asked for before the press: the browser is told late that a test takes the place of its dialog.
    const choosing = page.waitForEvent("filechooser");
    await press("Shift+F6");
    await tabTo("Open my workbook");
    await press("Enter");
    const chooser = await choosing;
    await chooser.setFiles({ name: "studio.xlsx", mimeType: "", buffer: await studio() });
    await page.locator("#name").getByText("studio", { exact: true }).waitFor();

    const inCells = () => page.waitForFunction(() => document.activeElement?.closest("[data-u-comp=editor]"));
    // The cells have the keyboard at once.
    await inCells();
    for (const key of ["Control+Home", "ArrowDown", "ArrowDown"]) await press(key);
    expect(await tryout.nameBox.inputValue()).toBe("A3");
    for (const text of ["Small tin", "Fig", "12", "8%"]) {
      await page.keyboard.type(text);
      await press("Tab");
    }
    await expect
      .poll(async () => (await tryout.table("Next")).rows)
      .toEqual([
        ["Amber jar", "Fig", 6, 0.08],
        ["Small tin", "Fig", 12, 0.08],
      ]);

    await press("F6");
    await tabTo("Write run sheet");
    await press("Enter");
    const written = page.locator(".pourwright-pane").getByText(/Run sheet written: Run/);
    await written.waitFor();

    await press("F6");
    await tabTo("Save");
    const [download] = await Promise.all([page.waitForEvent("download"), press("Enter")]);
    const { book } = openFile(readFileSync(await download.path()), "studio.xlsx");
    expect(book.sheets.slice(0, 2).map(({ name }) => name)).toEqual(["Next", "Vessels"]);
    expect(book.sheets).toHaveLength(3);
    expect(book.sheets[0]?.tables[0]?.area).toEqual({ row: 0, column: 0, rows: 3, columns: 4 });
    expect(book.sheets[2]?.name).toMatch(/^Run/);
    await page.getByText("Saved studio.xlsx.").waitFor();
    expect(await tryout.faults("#header")).toEqual([]);

    // From the list of workbooks too.
    await tabTo("My workbooks", "Shift+Tab");
    await press("Enter");
    await page.getByRole("dialog").getByRole("button", { name: "studio", exact: true }).waitFor();
    await tabTo("studio");
    await press("Enter");
    await page.getByRole("dialog").waitFor({ state: "hidden" });
    await inCells();
    for (const key of ["Alt+PageUp", "Control+Home", "ArrowRight"]) await press(key);
    expect(await page.evaluate(() => window.pourwright.selectedCell()?.sheet)).toBe("Vessels");
    expect(await tryout.nameBox.inputValue()).toBe("B1");
  });
});
