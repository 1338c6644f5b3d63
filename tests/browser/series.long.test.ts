import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import { cardSheet } from "../../src/runsheet/series/cardSheet";
import { planSeries } from "../../src/runsheet/series/planSeries";
import { OpenedSite } from "./opened";
import { NAMES, pdfOf, printable, printPreview } from "./printed";

/** A burn-test series from an empty workbook to its printed cards; all names and numbers are invented. */
describe("a burn-test series", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  const pane = (): Locator => tryout.page.locator(".pourwright-pane");
  const field = (label: string) =>
    pane().getByRole("region", { name: "Plan a series" }).getByLabel(label, { exact: true });
  const says = (text: string | RegExp) => pane().getByText(text).first().waitFor();

  it("is planned in an empty workbook: tests, readings and cards, by one press that undo takes back", async () => {
    await tryout.openWorkbook("An empty workbook");
    await tryout.openView("Tests");
    await field("Vessel").fill("Bowl");
    await field("Inside width").fill("72.5");
    await field("Scent (blank: none)").fill("Rain");
    await field("Wicks to try, one a line or parted by commas").fill("Size 4\nSize 6\nSize 8\nSize 10");
    await field("Poured on").fill("2026-11-26");
    await tryout.press("Write the series");
    await says("write a number");
    expect(await tryout.sheetNames()).toHaveLength(1);
    await field("Cure days").fill("14");
    await says("12 candles, 3 of each of 4 wicks: S1-01 to S1-12");
    await says(
      "Wax and scent: not known, for Bowl has no water weight in the table of vessels; the load is 6 % of wax",
    );
    await says("Poured on 2026-11-26, first burn on 2026-12-10, last on 2026-12-18");
    for (const size of [{ width: 320, height: 640, dark: true }, {}]) {
      await tryout.resize(size);
      expect(await tryout.faults(".pourwright-pane")).toEqual([]);
    }
    // Nothing is known of the scent: its limits are asked about.
    expect(await pane().getByRole("status").filter({ hasText: "Check these first" }).textContent()).toMatch(/Rain/);
    await tryout.press("Write anyway");
    await says(
      "Series S1 is written: 12 rows in BurnTests, 360 rows in Readings, and 12 cards to print on the sheet Cards S1.",
    );
    const tests = await tryout.table("BurnTests");
    expect(tests.rows.map(([test]) => test)).toEqual(
      Array.from({ length: 12 }, (_, i) => `S1-${String(i + 1).padStart(2, "0")}`),
    );
    expect((await tryout.table("Readings")).rows).toHaveLength(360);
    expect(await tryout.sheetNames()).toEqual([expect.any(String), "Burn tests", "Readings", "Cards S1"]);
    await tryout.page.locator("[data-u-command='univer.command.undo']").first().click();
    await expect.poll(() => tryout.sheetNames()).toHaveLength(1);
    await tryout.page.locator("[data-u-command='univer.command.redo']").first().click();
    await expect.poll(() => tryout.sheetNames()).toHaveLength(4);
  });

  const pagesOf = async (html: string) => {
    const page = await printPreview(site.browser, html);
    const pdf = (await pdfOf(page)).toString("latin1");
    await page.close();
    return pdf.match(/\/Type\s*\/Page\b/g)?.length;
  };

  it("is printed a card a page", async () => {
    expect(await pagesOf(await tryout.host("printable", "Cards S1"))).toBe(12);
  });

  it.each(["letter", "a4"] as const)(
    "has its cards whole on %s, also with long names, and two pages for ten cycles",
    async (paper) => {
      const [vessel] = NAMES;
      const common = { vessel, width: 72.5, wax: "Soft container wax", scent: NAMES[4], load: 0.06, cureDays: 14 };
      for (const [cycles, pages] of [
        [6, 2],
        [10, 4],
      ] as const) {
        const code = `${paper} ${cycles}`;
        const order = { code, vessel, wicks: ["Size 4", "2 x Size 6"], candles: 1, cycles, atOnce: 4 };
        const series = planSeries({ ...order, pouredOn: 46352, cureDays: 14 });
        const sheet = cardSheet(series, { ...common, product: "tea light" }, { code, paper, unit: "g" });
        expect(await pagesOf(await printable(tryout, sheet)), code).toBe(pages);
      }
    },
  );
});
