import { beforeAll, describe, expect, it } from "vitest";
import type { Cell, Sheet } from "../../src/sheet/sheet";
import { HOSTILE_NAMES } from "../hostileTexts";
import { OpenedSite } from "./opened";

const ROWS = 1000;

/**
 * A table of a thousand vessels, the first of them with names that must stay the text they are.
 * @param each how many of each vessel; else one to three
 */
function bigSheet(each?: number): Sheet {
  const headings = ["Vessel", "Scent", "Quantity", "Fill weight (g)", "Load"];
  const cells: Cell[] = headings.map((text, column) => ({ row: 0, column, content: { text } }));
  for (let i = 0; i < ROWS; i++) {
    const text = HOSTILE_NAMES[i] ?? `Vessel ${i}`;
    const contents = [
      { text },
      { text: i % 9 === 0 ? "=cmd|' /C calc'!A0" : `Scent ${i % 8}` },
      { number: each ?? 1 + (i % 3) },
      { number: 100 + (i % 150) },
      { number: 0.06 },
    ];
    for (const [column, content] of contents.entries()) cells.push({ row: i + 1, column, content });
  }
  return {
    name: "Big",
    widths: [30, 20, 10, 12, 8],
    cells,
    tables: [{ name: "Big", row: 0, column: 0, headings, rows: ROWS }],
  };
}

describe("a thousand vessels", () => {
  const tryout = new OpenedSite().page();

  beforeAll(async () => {
    await tryout.host("addSheet", bigSheet());
    await tryout.page.getByLabel("Pour from").selectOption("Big");
  });

  it("stopped half-way leaves no sheet behind", async () => {
    const before = await tryout.sheetNames();
    await tryout.page.locator(".totals").waitFor();
    // The press on Stop comes as soon as the button is there.
    await tryout.page.evaluate(() => {
      new MutationObserver((_, observer) => {
        const stop = [...document.querySelectorAll("button")].find((button) => button.textContent === "Stop");
        if (!stop) return;
        observer.disconnect();
        stop.click();
      }).observe(document.body, { childList: true, subtree: true });
    });
    await tryout.page.getByRole("button", { name: "Write run sheet" }).click();
    await tryout.page.getByText("Stopped. Nothing was written.").waitFor();
    expect(await tryout.sheetNames()).toEqual(before);
  });

  it("become a run sheet, every name the text it is", async () => {
    await tryout.page.getByRole("button", { name: "Write run sheet" }).click();
    await tryout.page.getByText(/Run sheet written/).waitFor();
    const name = (await tryout.sheetNames()).at(-1) as string;
    const rows = await tryout.host("readSheet", name);
    const texts = rows.map((row) => row[0]);
    for (const text of HOSTILE_NAMES) expect(texts, text.slice(0, 40)).toContain(text);
    expect(texts.filter((text) => String(text).startsWith("=cmd|' /C calc'!A0: pot")).length).toBeGreaterThan(0);
    const together = rows.find((row) => row[0] === "Total");
    const candles = Array.from({ length: ROWS }, (_, i) => 1 + (i % 3)).reduce((a, b) => a + b);
    expect(together?.[1]).toBe(candles);
    for (const cell of rows.flat()) expect(typeof cell === "object" && cell !== null, JSON.stringify(cell)).toBe(false);
  });

  it("ran no script that stands in a name", async () => {
    expect(await tryout.page.locator("img[src=x]").count()).toBe(0);
  });
});

describe("a thousand rows of thirty-five candles", () => {
  const tryout = new OpenedSite().page();

  it.each(["live formulas", "plain numbers"])("are refused as %s before anything is written", async (weights) => {
    if (!(await tryout.sheetNames()).includes("Big")) await tryout.host("addSheet", bigSheet(35));
    await tryout.page.getByLabel("Pour from").selectOption("Big");
    await tryout.page.locator(".totals").waitFor();
    await tryout.openSettings();
    await tryout.page.getByLabel("Weights on the sheet").selectOption({ label: weights });
    const before = await tryout.sheetNames();
    await tryout.page.getByRole("button", { name: "Write run sheet" }).click();
    const formulas = weights === "live formulas" ? /4\d,\d{3}/ : /2\d,\d{3}/;
    const words = `Nothing was written: the run sheet would have ${formulas.source} formulas, .* Pour in parts, fewer rows`;
    await tryout.page.getByText(new RegExp(words)).waitFor();
    expect(await tryout.sheetNames()).toEqual(before);
  });
});
