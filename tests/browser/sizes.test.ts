import { describe, expect, it } from "vitest";
import { cases } from "../cases";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

const SIZES = [
  { width: 320, height: 700, dark: false },
  { width: 1280, height: 800, dark: false },
  { width: 1280, height: 800, dark: true },
];

describe("the page at any size", () => {
  const tryout = new OpenedSite().page();

  it.each(SIZES.slice(0, cases(1, 3)))(
    "fits, keeps sheet and pane in reach, and can be read by all, at %o",
    async (size) => {
      const { page } = tryout;
      await tryout.resize(size);
      await tryout.tables();
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(size.width);
      const pane = page.getByRole("complementary", { name: "Run sheet" });
      await pane.scrollIntoViewIfNeeded();
      expect((await pane.boundingBox())?.width).toBeGreaterThan(300);
      expect(await page.locator("#spreadsheet canvas").count()).toBeGreaterThan(0);
      await tryout.type("P1", "=POUR.SCENTPART(10,6)");
      await expect.poll(() => tryout.problems(), PATIENCE).toHaveLength(1);
      await tryout.goTo("P1");
      await expect.poll(() => tryout.message(), PATIENCE).toContain("600 %");

      expect(await tryout.faults({ exclude: ["#spreadsheet"] })).toEqual([]);
    },
  );
});
