import { readdirSync, statSync } from "node:fs";
import type { Browser } from "playwright-core";
import type { Cell, Sheet } from "../../src/sheet/sheet";
import { launch, serveBuilt } from "../browser/launch";
import { TryoutPage } from "../browser/page";
import { dist } from "../dist";
import type { Figure, Part } from "./figures";
import { pageEdits } from "./pageEdits";

const LONGEST = 200;

/** Notes how long the page's own thread was kept by one task. */
const WATCH = `
  window.tasks = [];
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) window.tasks.push(duration);
  }).observe({ type: "longtask" });`;

/** A table of rows in so many scents, each of another fill. */
function tableOf(name: string, rows: number, scents: number): Sheet {
  const headings = ["Vessel", "Scent", "Quantity", "Fill weight (g)", "Load"];
  const cells: Cell[] = headings.map((text, column) => ({ row: 0, column, content: { text } }));
  for (let i = 0; i < rows; i++) {
    const contents = [
      { text: `Vessel ${i}` },
      { text: `Scent ${i % scents}` },
      { number: 1 + (i % 29) },
      { number: 60 + ((i * 7.3) % 340) },
      { number: 0.06 },
    ];
    for (const [column, content] of contents.entries()) cells.push({ row: i + 1, column, content });
  }
  return { name, widths: [20, 20, 10, 12, 8], cells, tables: [{ name, row: 0, column: 0, headings, rows }] };
}

/** The longest task while a table is chosen, and while a number in it is changed. */
async function longestTask(tryout: TryoutPage, what: string, sheet: Sheet): Promise<Figure[]> {
  const { page } = tryout;
  const longest = async (): Promise<number> =>
    Math.round(Math.max(0, ...(await page.evaluate<number[]>("window.tasks.splice(0)"))));
  const figure = (when: string, is: number): Figure => ({
    ...{ what: `${what}: longest task, ${when}`, is: `${is} ms`, goal: `at most ${LONGEST} ms`, holds: is <= LONGEST },
  });
  await tryout.host("addSheet", sheet);
  await tryout.idle();
  await longest();
  await page.getByLabel("Pour from").selectOption(sheet.name);
  const totals = page.locator(".totals");
  await totals.waitFor();
  await tryout.idle();
  const chosen = figure("chosen and planned", await longest());
  const before = await totals.textContent();
  await tryout.openSheet(sheet.name);
  await tryout.type("C2", "77");
  await page.waitForFunction(
    (before) => document.querySelector(".totals") && document.querySelector(".totals")?.textContent !== before,
    before,
  );
  return [chosen, figure("a number typed and planned anew", await longest())];
}

/** In a page of its own for each size: what other sheets hold would slow it down. */
async function edits(browser: Browser, address: string): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const rows of [10_000, 20_000]) {
    const tryout = await new TryoutPage().open(browser, address);
    figures.push(...(await pageEdits(tryout, rows)));
    await tryout.close();
  }
  return figures;
}

function bytes(): Figure[] {
  const compressed = readdirSync(dist).filter((name) => name.endsWith(".js.br"));
  const sizes = compressed.map((name) => ({ name: name.slice(0, -3), size: statSync(new URL(name, dist)).size }));
  sizes.sort((a, b) => b.size - a.size);
  return sizes
    .slice(0, 8)
    .map(({ name, size }) => ({ what: `${name}, compressed`, is: `${(size / 1000).toFixed(0)} kB` }));
}

export const page: Part = {
  title: "The page in a browser (how soon its first sheet is seen: npm run speed)",
  measure: async () => {
    const [browser, site] = await Promise.all([launch(), serveBuilt()]);
    try {
      const tryout = new TryoutPage();
      const opened = await tryout.open(browser, site.address);
      await opened.page.evaluate(WATCH);
      return [
        ...(await longestTask(opened, "1000 rows in 8 scents", tableOf("Rows", 1000, 8))),
        ...(await longestTask(opened, "120 fills in one scent", tableOf("Fills", 120, 1))),
        ...(await edits(browser, site.address)),
        ...bytes(),
      ];
    } finally {
      await browser.close();
      await site.stop();
    }
  },
};
