import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { richWorkbook } from "../file/richWorkbook";
import { OpenedSite } from "./opened";
import type { TryoutPage } from "./page";

const FILE = { name: "rich.xlsx", mimeType: "", buffer: Buffer.from(richWorkbook()) };

/** Saves by the button, whatever is said before. */
async function save(tryout: TryoutPage): Promise<{ parts: Record<string, Uint8Array>; said: string }> {
  const dialog = tryout.page.getByRole("dialog");
  const download = tryout.page.waitForEvent("download");
  await tryout.page.getByRole("button", { name: "Save", exact: true }).click();
  let said = "";
  const asked = dialog.waitFor().then(async () => {
    said = (await dialog.textContent()) ?? "";
    await dialog.getByRole("button", { name: "Save anyway" }).click();
  });
  const file = await Promise.race([download, asked.then(() => download)]);
  asked.catch(() => {});
  return { parts: unzipSync(readFileSync(await file.path())), said };
}

const text = (bytes: Uint8Array | undefined) => Buffer.from(bytes ?? []).toString();

function changed(now: Record<string, Uint8Array>): string[] {
  const before = unzipSync(FILE.buffer);
  const all = new Set([...Object.keys(before), ...Object.keys(now)]);
  return [...all].filter((path) => text(before[path]) !== text(now[path])).sort();
}

describe("a workbook that holds much that the page does not show, in a browser", () => {
  const site = new OpenedSite();
  const tryout = site.page({ width: 320, height: 640 });
  const remarks = () => tryout.page.locator(".files-remarks");

  beforeAll(async () => {
    await tryout.page.evaluate("delete window.showSaveFilePicker; void 0");
    await tryout.page.getByLabel("Workbook file").setInputFiles(FILE);
    await remarks().waitFor();
  });

  it("leaves most of a narrow page to the sheet, the list and its button in reach of the keyboard", async () => {
    const { height } = (await remarks().boundingBox()) ?? { height: 0 };
    expect(height).toBeLessThanOrEqual(640 / 4);
    const button = remarks().getByRole("button", { name: "Understood" });
    const [box, whole] = [await button.boundingBox(), await remarks().boundingBox()];
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual((whole?.y ?? 0) + (whole?.height ?? 0));
    const list = remarks().getByRole("list");
    await list.focus();
    await tryout.page.keyboard.press("End");
    await expect.poll(() => list.evaluate((one) => one.scrollTop)).toBeGreaterThan(0);
    await tryout.page.keyboard.press("Tab");
    expect(await button.evaluate((one) => one === document.activeElement)).toBe(true);
    expect(await tryout.faults("#files")).toEqual([]);
    await tryout.page.keyboard.press("Enter");
    await remarks().waitFor({ state: "detached" });
  });

  it("is saved as it was where nothing was edited", async () => {
    const { parts, said } = await save(tryout);
    // `SUM(E4#)`, which the engine does not follow; the file's value stays.
    expect(said).toContain("Maker's costs: 1 formula that cannot be worked out here.");
    expect(changed(parts)).toEqual([]);
  });

  it("is saved with one edit in the part of that sheet alone", async () => {
    await tryout.type("B5", "12.5");
    const { parts } = await save(tryout);
    expect(changed(parts)).toEqual(["xl/sheets/costs.xml"]);
    expect(text(parts["xl/sheets/costs.xml"])).toContain('<c r="B5" s="3"><v>12.5</v></c>');
  });

  it("has a table whose row of totals is none of its rows, and neither one that stands below it", async () => {
    await tryout.openSheet("Pours");
    expect(await tryout.table("Pours")).toMatchObject({ rows: { length: 3 }, below: 0 });
    await tryout.type("A8", "Fig");
    expect(await tryout.table("Pours")).toMatchObject({ rows: { length: 3 }, below: 1 });
    await expect(tryout.host("takeInRows", "Pours", 1)).rejects.toThrow(/^The table Pours has a row of totals/);
    expect(await tryout.cells("Pours", 6, 0, 1, 2)).toEqual([["Total", 24]]);
    // Its quantities are 24; what stands below the row of totals goes down with it.
    await tryout.host("append", [
      { table: "Pours", headings: ["Scent"], rows: [[{ text: "Fig" }], [{ text: "Plum" }]] },
    ]);
    expect(await tryout.table("Pours")).toMatchObject({ rows: { length: 5 }, below: 1 });
    expect((await tryout.cells("Pours", 6, 0, 4, 1)).flat()).toEqual(["Fig", "Plum", "Total", "Fig"]);
    await expect.poll(() => tryout.cells("Pours", 8, 1)).toEqual([[24]]);
  });
});
