import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import { fillWeight } from "../../src/core/fill/fillWeight";
import { CAUTIONS } from "../../src/runsheet/cautions";
import { AT } from "../../src/runsheet/sheet/layout";
import { columnLetters } from "../../src/sheet/columnLetters";
import { OpenedSite } from "./opened";

const PANE = ".pourwright-pane";

describe("the whole way in a browser: from a cell to a run sheet", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  const button = (name: string): Locator => tryout.page.getByRole("button", { name });
  const field = (label: string): Locator => tryout.page.locator(PANE).getByLabel(label);
  const total = async (name: string): Promise<string> =>
    (await tryout.page.locator(`.totals dt:text-is("${name}") + dd`).textContent()) ?? "";

  it("finds the table to pour from and shows pots and totals", async () => {
    await button("Write run sheet").waitFor();
    expect(await field("Pour from").inputValue()).toBe("Batch");
    await tryout.page.locator(".totals").waitFor();
    expect(await total("Candles")).toBe("95");
    expect(await tryout.page.locator(".pot svg").count()).toBe(Number(await total("Pots")));
    expect(await tryout.faults(PANE)).toEqual([]);
    // Plans are worked out off the page's own thread: typing does not wait for them.
    expect(tryout.page.workers().map((worker) => worker.url())).toContainEqual(expect.stringContaining("planWorker"));
  });

  it("follows an edited water weight, from the cell to the preview", async () => {
    const before = await total("Wax");
    await tryout.openSheet("Vessels");
    const vessels = await tryout.table("Vessels");
    const [name, water, factor, fill] = ["Vessel", "Water weight (g)", "Wax factor", "Fill weight (g)"].map((heading) =>
      vessels.headings.indexOf(heading),
    ) as [number, number, number, number];
    const row = vessels.rows.findIndex((cells) => cells[name] === "Small tin");
    await tryout.type(`${columnLetters(water)}${vessels.place.row + 2 + row}`, "150");
    const after = await tryout.table("Vessels");
    expect(after.rows[row]?.[water]).toBe(150);
    expect(after.rows[row]?.[fill]).toBe(fillWeight(150, (after.rows[row]?.[factor] as number | null) ?? undefined));
    await tryout.page.waitForFunction((old) => !document.querySelector(".totals")?.textContent?.includes(old), before);
  });

  it("lists what is wrong by row and lets nothing be written until it is fixed", async () => {
    await tryout.openSheet("Batch");
    const batch = await tryout.table("Batch");
    const quantity = `${columnLetters(batch.headings.indexOf("Quantity"))}${batch.place.row + 2}`;
    await tryout.type(quantity, "1.5");
    const problem = button("Fix row");
    await problem.first().waitFor();
    expect(await problem.first().textContent()).toContain("1.5 is not a whole number above 0");
    expect(await button("Write run sheet").isDisabled()).toBe(true);
    expect(await tryout.faults(PANE)).toEqual([]);
    await tryout.type(quantity, "12");
    await problem.first().waitFor({ state: "detached" });
  });

  it("says beside a field what is wrong with it", async () => {
    await tryout.openSettings();
    await field("Default load").fill("6");
    await tryout.page.getByText("6 means 600 %; write 6% or 0.06").waitFor();
    expect(await button("Write run sheet").isDisabled()).toBe(true);
    expect(await tryout.faults(PANE)).toEqual([]);
    await field("Default load").fill("6%");
  });

  it("writes the run sheet on a new sheet, and a second press a second one", async () => {
    await field("Pot holds").fill("2500");
    const pots = Number(await total("Pots"));
    await button("Write run sheet").click();
    await tryout.page.getByText(/Run sheet written: Run \d{4}-\d{3}-01/).waitFor();
    await button("Write run sheet").click();
    await tryout.page.getByText(/Run sheet written: Run \d{4}-\d{3}-02/).waitFor();
    const names = (await tryout.sheetNames()).filter((name) => name.startsWith("Run "));
    expect(names).toHaveLength(2);
    const rows = await tryout.cells(names[0] as string, 0, 0, 300, AT.key + 1);
    expect(rows[0]?.[0]).toMatch(/^Run sheet \d{4}-\d{3}-01$/);
    for (const caution of CAUTIONS) expect(rows.flat()).toContain(caution);
    expect(rows.filter((row) => /: pot \d+ of \d+$/.test(String(row[0])))).toHaveLength(pots);
    const together = rows.find((row) => row[0] === "Total");
    expect(together?.slice(1, 3)).toEqual([95, pots]);
    expect(String(together?.[3])).toBe((await total("Wax")).replace(/ g$/, ""));
    for (const cell of rows.flat()) expect(typeof cell === "object" && cell !== null, JSON.stringify(cell)).toBe(false);
  });

  it("keeps the settings in the workbook, and moves a live sheet when a count changes", async () => {
    const name = (await tryout.sheetNames()).filter((one) => one.startsWith("Run ")).at(-1) as string;
    const rows = await tryout.cells(name, 0, 0, 300, AT.key + 1);
    const at = rows.findIndex((row) => String(row[AT.key]).endsWith(" vessel"));
    const count = rows[at]?.[1] as number;
    await tryout.openSheet(name);
    await tryout.type(`B${at + 1}`, String(count + 1));
    const after = await tryout.cells(name, 0, 0, 300, AT.key + 1);
    expect(after.find((row) => row[0] === "Total")?.[1]).toBe(96);
    const wax = rows.findIndex((row) => row[AT.key] === "1 wax");
    expect(after[wax]?.[3]).toBeGreaterThan(rows[wax]?.[3] as number);
  });

  it("is reached and worked by keyboard alone, also in forced colours", async () => {
    const other = await site.open();
    await other.page.emulateMedia({ forcedColors: "active" });
    const main = other.page.getByRole("button", { name: "Write run sheet" });
    await main.waitFor();
    await other.goTo("B2");
    await other.page.keyboard.press("F6");
    const focused = () => other.page.evaluate(() => document.activeElement?.textContent ?? "");
    for (let i = 0; i < 60 && (await focused()) !== "Write run sheet"; i++) await other.page.keyboard.press("Tab");
    expect(await focused()).toBe("Write run sheet");
    await other.page.keyboard.press("Enter");
    await other.page.getByText(/Run sheet written/).waitFor();
    expect(await other.faults(PANE)).toEqual([]);
    await other.page.keyboard.press("F6");
    await other.close();
  });
});
