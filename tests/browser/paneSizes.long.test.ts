import { describe, expect, it } from "vitest";
import { OpenedSite } from "./opened";

const PANE = ".pourwright-pane";

describe("the pane", () => {
  const site = new OpenedSite();

  it("fits any size, and axe finds nothing", async () => {
    const small = await site.open({ width: 320 });
    await small.page.getByRole("button", { name: "Write run sheet" }).waitFor({ state: "attached" });
    for (const size of [{ width: 320 }, { width: 320, dark: true }, { width: 1280, dark: true }]) {
      await small.resize(size);
      const scroll = await small.page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(scroll).toBeLessThanOrEqual(0);
      expect(await small.faults(PANE)).toEqual([]);
    }
    await small.close();
  });
});
