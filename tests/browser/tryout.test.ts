import { describe, expect, it } from "vitest";
import { fillWeight } from "../../src/core/fill/fillWeight";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

const BAD_LOAD = "load: 6 means 600 %; write 6% or 0.06";

const site = new OpenedSite();

// One page for all: no test leaves anything to fix, or relies on a cell that another one fills.
describe("the page", () => {
  const tryout = site.page();

  it("opens a sample workbook with its formulas computed", async () => {
    const { headings, rows } = await tryout.table("Vessels");
    const [water, factor, fill] = ["Water weight (g)", "Wax factor", "Fill weight (g)"].map((one) =>
      headings.indexOf(one),
    );
    const weighed = rows.filter((cells) => typeof cells[water as number] === "number");
    expect(weighed.length).toBeGreaterThan(11);
    for (const cells of weighed) {
      const [weight, own, result] = [water, factor, fill].map((column) => cells[column as number]);
      expect(result).toBe(fillWeight(weight as number, (own as number | null) ?? undefined));
    }
    expect(await tryout.problems()).toEqual([]);
  });

  it("computes what is typed into a cell, and what depends on it", async () => {
    await tryout.openSheet("Vessels");
    await tryout.type("H2", "=POUR.FILLWEIGHT(C5)*2");
    await tryout.type("C5", "100");
    expect(await tryout.cells("Vessels", 4, 4)).toEqual([[86]]);
    expect(await tryout.cells("Vessels", 1, 7)).toEqual([[172]]);
    await tryout.page.keyboard.press("Control+z");
    await expect.poll(() => tryout.cells("Vessels", 4, 4), PATIENCE).not.toEqual([[86]]);
  });

  it("says what to fix, and leads to the cell", async () => {
    const { page } = tryout;
    await tryout.openSheet("Scents");
    await tryout.type("B6", "=6");
    await expect.poll(() => tryout.problems(), PATIENCE).toContain(`Scents!F6: ${BAD_LOAD}`);
    expect((await tryout.problems()).some((problem) => problem.startsWith("Batch!"))).toBe(true);

    await tryout.openSheet("Read me");
    await page.getByRole("button", { name: `Scents!F6: ${BAD_LOAD}` }).click();
    await expect.poll(() => tryout.message(), PATIENCE).toBe(`F6: ${BAD_LOAD}`);
    expect(await page.getByRole("tab", { name: "Scents", exact: true }).getAttribute("aria-selected")).toBe("true");

    // The message goes along when its row moves, and away with the fault.
    await tryout.type("H2", "=1/0");
    await tryout.goTo("H2");
    await expect.poll(() => tryout.message(), PATIENCE).toContain("divides by zero");
    await tryout.type("B6", "8%");
    await expect.poll(() => tryout.problems(), PATIENCE).toEqual([]);
    await tryout.goTo("F6");
    await expect.poll(() => tryout.message(), PATIENCE).toBe("");
  });

  it("has a help page behind its link", async () => {
    const opened = tryout.page.waitForEvent("popup");
    await tryout.page.getByRole("link", { name: "Help" }).click();
    const help = await opened;
    await help.waitForURL(/\/help\/index\.html$/);
    expect(await help.locator("body").textContent()).toContain("FILLWEIGHT");
    await help.getByRole("link", { name: "The run sheet and the tables it reads" }).click();
    await help.getByRole("heading", { name: "Recipes" }).waitFor();
    await help.close();
  });
});
