import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { Content } from "../../src/sheet/sheet";
import { tableSheet } from "../../src/sheet/tableSheet";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";
import { pdfOf, printPreview } from "./printed";

const PICTURES = fileURLToPath(new URL("../../.cache/screenshots", import.meta.url));

const columnsOf = (headings: readonly string[]) => headings.map((heading) => ({ heading }));
const TESTS = ["Test", "Vessel", "Inside width (mm)", "Wick", "Wax", "Scent", "Load (% of wax)", "Cure days"];
const LOOKS = [
  ...["Test", "Cycle", "Minutes", "Weight (g)", "Flame (mm)", "Pool (mm)", "Wax left (mm)", "Soot"],
  "Glass temperature (C)",
];
/** Wicks with the weight that their candles lose an hour, and their flame; all invented. */
const WICKS = [
  ["Size 4", [3.1, 3.4, 3.3], 18],
  ["Size 6", [5, 5.4, 4.9], 31],
  ["Size 8", [5.6, 6.3, 6.1], 44],
  ["Size 10", [8.6, 9.2, 9.5], 79],
] as const;

function rows() {
  const content = (value: string | number | null): Content | null =>
    value === null ? null : typeof value === "number" ? { number: value } : { text: value };
  const tests: (string | number)[][] = [];
  const looks: (string | number | null)[][] = [];
  for (const [w, [wick, rates, flame]] of WICKS.entries()) {
    for (const [c, rate] of rates.entries()) {
      const test = `S1-${w * 3 + c + 1}`;
      tests.push([test, "Straight tumbler", 70, wick, "Soft wax", "Smoked cedar", 0.08, 14]);
      for (const cycle of [1, 2, 3, 4]) {
        for (const minutes of [0, 60, 120, 180, 240]) {
          const ends = minutes === 240;
          const hours = (cycle - 1) * 4 + minutes / 60;
          const pool = Math.min(70, ([0, 22, 47, 66, 70][minutes / 60] as number) + w);
          const weight = minutes % 240 === 0 ? Number((420 - rate * hours).toFixed(1)) : null;
          const seen = minutes > 0 ? [flame + c, pool] : [null, null];
          const end = ends ? [[58, 40, 24, w === 0 ? 12 : 9][cycle - 1] as number, "none", 45] : [null, null, null];
          looks.push([test, cycle, minutes, weight, ...seen, ...end]);
        }
      }
    }
  }
  return { tests: tests.map((row) => row.map(content)), looks: looks.map((row) => row.map(content)) };
}

/** A burn-test series from its readings to the printed sheet; all names and numbers are invented. */
describe("a burn-test series that is read", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  const part = (): Locator => tryout.page.locator(".pourwright-pane").getByRole("region", { name: "Read a series" });

  it("shows by wick what was seen, fits any size, and axe finds nothing", async () => {
    await tryout.openWorkbook("An empty workbook");
    const { tests, looks } = rows();
    await tryout.host("append", [
      tableSheet({ name: "Burn tests", table: "BurnTests", columns: columnsOf(TESTS) }, tests),
      tableSheet({ name: "Readings", table: "Readings", columns: columnsOf(LOOKS) }, looks),
    ]);
    await tryout.openView("Tests");
    await part().getByText("Straight tumbler, Soft wax, Smoked cedar 8 % of wax, cured 14 days").waitFor();
    await part().getByText("nothing beyond the limits seen in 3 of 3").first().waitFor();
    mkdirSync(PICTURES, { recursive: true });
    for (const size of [{ width: 320 }, { width: 320, dark: true }, {}]) {
      await tryout.resize(size);
      const scroll = await tryout.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(scroll).toBeLessThanOrEqual(0);
      expect(await tryout.faults(".pourwright-pane")).toEqual([]);
      if (size.width) {
        await part().screenshot({ path: join(PICTURES, `series-320-${size.dark ? "dark" : "light"}.png`) });
      }
    }
  });

  it("is written on a sheet that follows a changed reading", async () => {
    await part().getByRole("button", { name: "Write on a sheet" }).click();
    await tryout.page.getByText("Written: Series Straight tumbler. It follows the readings.").waitFor(PATIENCE);
    const row = async (wick: string) => {
      const cells = await tryout.host("readSheet", "Series Straight tumbler");
      const at = cells.findIndex(([first]) => first === "By wick");
      return cells
        .slice(at)
        .find(([first]) => first === wick)
        ?.slice(0, 7);
    };
    await expect
      .poll(() => row("Size 6"), PATIENCE)
      .toEqual([
        ...["Size 6", "3 of 3", 0.36, expect.closeTo(5.1, 6)],
        ...[expect.closeTo(4.4428, 3), expect.closeTo(5.7572, 3), 33],
      ]);
    // The flame of S1-4, the first candle of size 6, an hour into its first cycle.
    await tryout.openSheet("Readings");
    await tryout.type("E63", "80");
    await expect
      .poll(async () => (await row("Size 6"))?.slice(1), PATIENCE)
      .toMatchObject(["2 of 3", {}, {}, {}, {}, 80]);
    // A reading that is typed below the last one.
    const { place } = await tryout.table("Readings");
    await tryout.paste(`A${place.row + place.rows + 1}`, [["S1-4", 5, 60, "", 90]]);
    await expect
      .poll(async () => (await row("Size 6"))?.slice(1), PATIENCE)
      .toMatchObject(["2 of 3", {}, {}, {}, {}, 90]);
  });

  it("gives no verdict once a heading names another unit, until it is called as before", async () => {
    const said = async () => {
      const cells = await tryout.host("readSheet", "Series Straight tumbler");
      return cells.filter(([first]) => String(first).includes("called otherwise")).map(([first]) => first);
    };
    const { place, headings } = await tryout.table("Readings");
    const heading = `${"ABCDEFGHIJ"[place.column + headings.indexOf("Flame (mm)")]}${place.row + 1}`;
    await tryout.openSheet("Readings");
    await tryout.type(heading, "Flame (cm)");
    await expect
      .poll(said, PATIENCE)
      .toEqual(["Flame (mm) in Readings is called otherwise now: write this sheet anew in the pane."]);
    await tryout.type(heading, "Flame (mm)");
    await expect.poll(said, PATIENCE).toEqual([]);
  });

  it.each(["letter", "a4"] as const)("is printed on %s", async (paper) => {
    if (paper === "a4") {
      await tryout.openSettings();
      await tryout.page.getByLabel("Paper").selectOption("a4");
      await tryout.openView("Tests");
      await part().getByRole("button", { name: "Write on a sheet" }).click();
      await tryout.page.getByText("Written: Series Straight tumbler (2).").waitFor(PATIENCE);
      await tryout.host("readSheet", "Series Straight tumbler (2)");
    }
    const sheet = paper === "a4" ? "Series Straight tumbler (2)" : "Series Straight tumbler";
    const page = await printPreview(site.browser, await tryout.host("printable", sheet));
    const pdf = await pdfOf(page);
    await page.close();
    writeFileSync(join(PICTURES, `series-${paper}.pdf`), pdf);
    expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length).toBe(2);
  });
});
