import { describe, expect, it } from "vitest";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

describe("while a function is typed", () => {
  const tryout = new OpenedSite().page();

  it("the list of functions begins with those of a pour day", async () => {
    await tryout.openSheet("Scents");
    await tryout.goTo("P2");
    await tryout.page.keyboard.type("=POUR.", { delay: 20 });
    const names = tryout.page.locator("ul[data-u-comp=sheets-formula-editor] li > span:first-child");
    await expect
      .poll(() => names.allTextContents(), PATIENCE)
      .toEqual(
        "FILLWEIGHT SCENTSPLIT WAXPART SCENTPART WEIGHOUT POTPLAN POTCOUNT LOADCHECK CANDLECOST ASKPRICE"
          .split(" ")
          .map((id) => `POUR.${id}`),
      );
  });

  it("F1 opens the help page of the function that is typed, and says so before", async () => {
    const { page } = tryout;
    const opensByF1 = async () => {
      const popup = page.waitForEvent("popup");
      await page.keyboard.press("F1");
      const help = await popup;
      const url = help.url();
      await help.close();
      return url.slice(url.indexOf("/help/"));
    };
    const hint = page.locator("#function-help");
    await page.keyboard.type("FI", { delay: 20 });
    await page.getByText("F1: help on POUR.FILLWEIGHT").waitFor();
    await page.keyboard.type("LLWEIGHT(POUR.WAXPART(318,", { delay: 20 });
    await page.getByText("F1: help on POUR.WAXPART").waitFor();
    expect(await tryout.faults("#function-help")).toEqual([]);
    expect(await opensByF1()).toBe("/help/WAXPART.html");
    await page.keyboard.type("6%))", { delay: 20 });
    await tryout.enterFormula();
    await expect.poll(() => hint.isVisible(), PATIENCE).toBe(false);
    // 318 at 6 % of wax is 300 of wax, by hand; 300 x 0.86 = 258.
    expect(await tryout.cells("Scents", 1, 15)).toEqual([[258]]);
    await tryout.goTo("P2");
    expect(await opensByF1()).toBe("/help/FILLWEIGHT.html");
    await tryout.goTo("A1");
    expect(await opensByF1()).toBe("/help/index.html");
  });
});
