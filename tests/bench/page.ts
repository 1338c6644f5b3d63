import { readdirSync, statSync } from "node:fs";
import type { Browser } from "playwright-core";
import type { Cell, Sheet } from "../../src/sheet/sheet";
import { launch, serveBuilt } from "../browser/launch";
import { TryoutPage } from "../browser/page";
import { dist } from "../dist";
import { type Figure, median, type Part, short } from "./figures";
import { longestTask, type TaskTime } from "./longestTask";
import { pageEdits } from "./pageEdits";

const LONGEST = 200;

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

/** Of the longest tasks the middle one, by the processor, for a busy machine changes that less; by the clock beside it. */
function taskFigure(what: string, times: readonly TaskTime[]): Figure {
  const processor = median(times.map((time) => time.processor));
  const clock = median(times.map((time) => time.clock));
  return {
    ...{ what, is: `${short(processor)} ms of the processor, ${short(clock)} by the clock` },
    ...{ goal: `at most ${LONGEST} ms`, holds: processor <= LONGEST },
  };
}

/** The longest task while a table is chosen, and while numbers in it are changed. */
async function longestTasks(tryout: TryoutPage, what: string, sheet: Sheet): Promise<Figure[]> {
  const { page } = tryout;
  await tryout.host("addSheet", sheet);
  await tryout.idle();
  /** Does something that the pane plans anew for, and waits until it shows so. */
  const planned = async (work: () => Promise<unknown>): Promise<void> => {
    const before = await page.locator(".totals").textContent();
    await work();
    await page.waitForFunction(
      (before) => document.querySelector(".totals") && document.querySelector(".totals")?.textContent !== before,
      before,
    );
    await tryout.idle();
  };
  const chosen = await longestTask(page, () => planned(() => page.getByLabel("Pour from").selectOption(sheet.name)));
  await tryout.openSheet(sheet.name);
  const typed: TaskTime[] = [];
  for (const number of [77, 78, 79, 80, 81]) {
    typed.push(await longestTask(page, () => planned(() => tryout.type("C2", `${number}`))));
  }
  return [
    taskFigure(`${what}: longest task, chosen and planned`, [chosen]),
    taskFigure(`${what}: longest task, a number typed, planned anew`, typed),
  ];
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
      return [
        ...(await longestTasks(opened, "1000 rows in 8 scents", tableOf("Rows", 1000, 8))),
        ...(await longestTasks(opened, "120 fills in one scent", tableOf("Fills", 120, 1))),
        ...(await edits(browser, site.address)),
        ...bytes(),
      ];
    } finally {
      await browser.close();
      await site.stop();
    }
  },
};
