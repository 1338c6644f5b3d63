import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { AT, LIVE_MARK } from "../../src/runsheet/sheet/layout";
import { MARGINS } from "../../src/sheet/paper";
import type { Sheet } from "../../src/sheet/sheet";
import { OpenedSite } from "./opened";
import { fullRun, NAMES, pdfOf, printable, printPreview } from "./printed";

const POINTS = { letter: [612, 792], a4: [595, 842] } as const;
const MILLIMETRE = 96 / 25.4;

/** Width and height of the pages of a PDF, in whole points. */
function pagesOf(pdf: Buffer): number[][] {
  const text = pdf.toString("latin1");
  const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)];
  expect(boxes).toHaveLength(text.match(/\/Type\s*\/Page\b/g)?.length ?? 0);
  return boxes.map(([, width, height]) => [Math.round(Number(width)), Math.round(Number(height))]);
}

/** Where each row comes to stand: the number of its page from 0, one for each part that it is broken into. */
async function pagesOfRows(page: Page): Promise<{ text: string; heading: boolean; block: number; pages: number[] }[]> {
  // The text of a page within its margins as a column: the browser breaks columns by the rules by which it breaks pages.
  const size = await page.evaluate(() => {
    for (const rule of document.styleSheets[0]?.cssRules ?? []) {
      if (rule instanceof CSSPageRule) return rule.style.cssText;
    }
    return "";
  });
  const [, width, height] = (/size: ([\d.]+)mm ([\d.]+)mm/.exec(size) ?? []).map(Number) as [number, number, number];
  const [, top, side, bottom] = (/margin: ([\d.]+)mm ([\d.]+)mm ([\d.]+)mm/.exec(size) ?? []).map(Number) as number[];
  const column = (width - 2 * (side as number)) * MILLIMETRE;
  await page.addStyleTag({
    content: `body { margin: 0 !important; columns: ${column}px auto; column-gap: 100px; column-fill: auto;
      height: ${(height - (top as number) - (bottom as number)) * MILLIMETRE}px; width: ${column}px }
      table { margin: 0 1px }`,
  });
  return page.evaluate((step) => {
    const blocks = [...document.querySelectorAll("tbody")];
    return [...document.querySelectorAll("tbody tr")].map((row) => ({
      text: row.textContent ?? "",
      heading: row.className === "heading",
      block: blocks.indexOf(row.parentElement as HTMLTableSectionElement),
      pages: [...new Set([...row.getClientRects()].map(({ left }) => Math.floor(left / step)))],
    }));
  }, column + 100);
}

describe("printing from the embedded sheet", () => {
  const site = new OpenedSite();
  const tryout = site.page();

  beforeAll(async () => {
    await tryout.tables();
  });

  describe.each(["letter", "a4"] as const)("a run sheet with three pots for each scent on %s", (paper) => {
    let sheet: Sheet;
    let html: string;
    let page: Page;
    beforeAll(async () => {
      sheet = fullRun(paper);
      html = await printable(tryout, sheet);
      page = await printPreview(site.browser, html);
    });
    afterAll(() => page?.close());

    it("says what the sheet shows, texts as they are, without the hidden column", async () => {
      const texts = await page.locator("td").allTextContents();
      for (const name of NAMES) expect(texts).toContain(name);
      expect(await page.evaluate(() => document.images.length)).toBe(0);
      // Values in their formats: a date, rates, weights that a formula spilled, a label that another one made.
      for (const text of ["2026-11-26", "8.0%", "180.0", "Net Wt 6.34 oz (180 g)"]) expect(texts).toContain(text);
      expect(texts.filter((text) => /pot \d of 3$/.test(text))).toHaveLength(6);
      const keys = sheet.cells.filter(({ column }) => column === AT.key).map(({ content }) => content);
      expect(keys).toContainEqual({ text: "1 wax" });
      expect(texts).not.toContain("1 wax");
    });

    it("is that paper, upright, and nothing on it is wider", async () => {
      const pages = pagesOf(await pdfOf(page));
      expect(pages.length).toBeGreaterThanOrEqual(3);
      expect(pages.length).toBeLessThanOrEqual(5);
      for (const one of pages) expect(one).toEqual(POINTS[paper]);
      const room = Math.floor(((paper === "a4" ? 210 : 215.9) - 2 * MARGINS.side) * MILLIMETRE);
      await page.setViewportSize({ width: room, height: 1000 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(room);
      const wider = await page
        .locator("td")
        .evaluateAll((cells) => cells.filter((cell) => cell.scrollWidth > cell.clientWidth + 1).map(String));
      expect(wider).toEqual([]);
      const sizes = await page
        .locator("td")
        .evaluateAll((cells) => cells.map((cell) => Number.parseFloat(getComputedStyle(cell).fontSize) * 0.75));
      // What is read at the bench has at least ten points on paper, and more where Letter is wider.
      expect(Math.min(...sizes)).toBeGreaterThanOrEqual(10);
    });

    it("breaks no row, no pot, and leaves no heading alone at the foot of a page", async () => {
      const rows = await pagesOfRows(await printPreview(site.browser, html));
      for (const [i, { text, heading, block, pages }] of rows.entries()) {
        expect(pages, text).toHaveLength(1);
        const next = rows[i + 1];
        if (heading || next?.block === block) expect(next?.pages, text).toEqual(pages);
      }
      expect(rows.filter(({ heading }) => heading).length).toBeGreaterThan(12);
      expect(new Set(rows.map(({ block }) => block)).size).toBeGreaterThan(7);
      // The columns that were measured are the pages that are printed.
      expect(Math.max(...rows.flatMap(({ pages }) => pages)) + 1).toBe(pagesOf(await pdfOf(page)).length);
    });

    it("has its title on each page, and its name and the pages' number at the foot", async () => {
      expect(await page.locator("thead").allTextContents()).toEqual([`Run sheet 2026-330-01${LIVE_MARK}`]);
      // A browser that cannot draw margin boxes drops them as it reads the page.
      const boxes = await page.evaluate(() =>
        [...(document.styleSheets[0]?.cssRules ?? [])]
          .filter((rule) => rule instanceof CSSPageRule)
          .flatMap((rule) => [...(rule as unknown as CSSGroupingRule).cssRules].map(({ cssText }) => cssText)),
      );
      expect(boxes).toEqual([
        expect.stringMatching(/^@bottom-left \{ content: "Run 2026-330-01( \(\d\))?"/),
        expect.stringContaining('@bottom-right { content: "Page " counter(page) " of " counter(pages)'),
      ]);
    });
  });

  it("keeps a heading with the row below it in a list that is longer than a page", async () => {
    const cells = Array.from({ length: 300 }, (_, row) => ({
      row,
      column: 0,
      content: { text: `Row ${row}` },
      look: row % 7 === 0 ? ("heading" as const) : ("body" as const),
    }));
    const page = await printPreview(site.browser, await printable(tryout, { name: "Headings", widths: [20], cells }));
    const rows = await pagesOfRows(page);
    const headings = rows.flatMap(({ heading }, i) => (heading ? [i] : []));
    expect(headings).toHaveLength(43);
    for (const at of headings) expect(rows[at + 1]?.pages, `row ${at}`).toEqual(rows[at]?.pages);
    await page.close();
  });

  it("prints a thousand rows and a name of 5,000 characters whole", async () => {
    const name = "Kerzenglas".repeat(500);
    const html = await printable(tryout, {
      name: "Long",
      widths: [20, 10, 10],
      cells: Array.from({ length: 1000 }, (_, row) => [
        { row, column: 0, content: { text: row === 500 ? name : `Vessel ${row}` }, look: "input" as const },
        { row, column: 1, content: { number: row / 7 }, format: "0.00" },
      ]).flat(),
      print: { paper: "letter" },
    });
    const page = await printPreview(site.browser, html);
    const rows = await pagesOfRows(page);
    expect(rows).toHaveLength(1000);
    expect(rows[500]?.text).toBe(`${name}71.43`);
    expect(rows[500]?.pages.length).toBeGreaterThan(1);
    for (const [i, { pages }] of rows.entries()) if (i !== 500) expect(pages).toHaveLength(1);
    await page.close();
  });

  it("shows values in their formats, and merged cells without the hidden column that they cross", async () => {
    const html = await printable(tryout, {
      name: "Merged",
      widths: [10, 0, 10],
      cells: [
        { row: 0, column: 0, content: { text: "over all three" }, look: "caution", across: 3 },
        { row: 1, column: 0, content: { number: 0.125 }, format: "0.0%" },
        { row: 1, column: 1, content: { text: "hidden" } },
        { row: 1, column: 2, content: { formula: "=1<2" } },
        { row: 2, column: 0, content: { formula: "=1/0" } },
        { row: 2, column: 2, look: "blank" },
      ],
    });
    const page = await printPreview(site.browser, html);
    const rows = await page
      .locator("tr")
      .evaluateAll((all) =>
        all.map((row) => [...(row as HTMLTableRowElement).cells].map((cell) => [cell.textContent, cell.colSpan])),
      );
    expect(rows).toEqual([
      [["over all three", 2]],
      [
        ["12.5%", 1],
        ["TRUE", 1],
      ],
      [
        ["#DIV/0!", 1],
        ["", 1],
      ],
    ]);
    const box = await page
      .locator("td")
      .last()
      .evaluate((cell) => getComputedStyle(cell).borderStyle);
    expect(box).toBe("solid");
    await page.close();
  });

  it("prints the sheet through a frame that it takes away again, and offers its name for the file", async () => {
    const { page } = tryout;
    const title = await page.title();
    const said: string[] = [];
    await page.exposeFunction("note", (what: string) => said.push(what));
    // Every frame that is made from now on notes what it would print.
    await page.addInitScript(() => {
      const { note } = window.top as unknown as { note: (what: string) => void };
      window.print = () => {
        note(`${window.top?.document.title}: ${document.querySelector("td")?.textContent}`);
        setTimeout(() => window.dispatchEvent(new Event("afterprint")), 100);
      };
    });
    await tryout.host("print", "Vessels");
    await expect.poll(() => page.locator("iframe").count()).toBe(0);
    expect(said).toEqual(["Vessels: Vessels"]);
    expect(await page.title()).toBe(title);
  });

  it("keeps the paper of a sheet when another workbook was opened meanwhile", async () => {
    await tryout.openWorkbook("Demo burn tests");
    await tryout.comeBackTo("Demo studio");
    await tryout.tables();
    expect(await tryout.host("printable", "Run 2026-330-01")).toContain("size: 215.9mm 279.4mm");
    expect(await tryout.host("printable", "Run 2026-330-01 (2)")).toContain("size: 210mm 297mm");
  });

  it.each([
    ["en-US", "215.9mm 279.4mm"],
    ["de-DE", "210mm 297mm"],
  ])("prints a sheet made without a paper on the one usual for %s", async (language, size) => {
    await tryout.page.evaluate((value) => {
      Object.defineProperty(navigator, "language", { value, configurable: true });
    }, language);
    const cells = [{ row: 0, column: 0, content: { text: "a" } }];
    expect(await printable(tryout, { name: "Plain", widths: [], cells })).toContain(`size: ${size};`);
  });

  it("says so when there is nothing to print", async () => {
    await expect(printable(tryout, { name: "Bare", widths: [], cells: [] })).rejects.toThrow(
      'The sheet "Bare" is empty: there is nothing to print.',
    );
    await expect(tryout.host("print", "Gone")).rejects.toThrow('The sheet "Gone" is not there any more.');
  });
});
