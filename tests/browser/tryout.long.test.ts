import { describe, expect, it } from "vitest";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

const BAD_LOAD = "load: 6 means 600 %; write 6% or 0.06";

const site = new OpenedSite();

// One page for all: no test leaves anything to fix, or relies on a cell that another one fills.
describe("the page's words about a cell", () => {
  const tryout = site.page();

  it("lets table columns be typed as in Excel", async () => {
    await tryout.openSheet("Vessels");
    await tryout.type("C5", "100");
    await tryout.type("H5", "=vessels[@[Water weight (g)]]*2");
    await tryout.type("H6", "=MAX(Vessels[Water weight (g)])");
    await tryout.type("C18", "2000");
    expect(await tryout.cells("Vessels", 4, 7, 2)).toEqual([[200], [2000]]);
  });

  it("offers the functions with their descriptions while they are typed", async () => {
    await tryout.openSheet("Scents");
    await tryout.goTo("H2");
    await tryout.page.keyboard.type("=POUR.FI", { delay: 20 });
    await tryout.page.getByText("POUR.FILLWEIGHT", { exact: true }).waitFor();
    await tryout.page.getByText("POUR.FILLBYVOLUME", { exact: true }).waitFor();
    await tryout.page.keyboard.type("LLWEIGHT(", { delay: 20 });
    await tryout.page.getByText("POUR.FILLWEIGHT(water,[waxFactor])").waitFor();
    await tryout.page
      .getByText("Optional. Weight of wax for one weight of water, above 0 and at most 2")
      .waitFor({ state: "attached" });
    await tryout.page.keyboard.type("10)", { delay: 20 });
    await tryout.enterFormula();
    expect(await tryout.cells("Scents", 1, 7)).toEqual([[8.6]]);
  });

  it("says which function is misspelt, and not where its error is handed on", async () => {
    await tryout.openSheet("Scents");
    await tryout.type("H2", "=POUR.FILLWEIGTH(3)");
    await tryout.type("H3", "=H2*2");
    const none = "H2: there is no POUR.FILLWEIGTH; type =POUR. to see the functions";
    await expect.poll(() => tryout.problems(), PATIENCE).toEqual([`Scents!${none}`]);
    await tryout.goTo("H2");
    await expect.poll(() => tryout.message(), PATIENCE).toBe(none);
    await tryout.goTo("H3");
    await expect.poll(() => tryout.message(), PATIENCE).toBe(`H3: comes from Scents!${none}`);
    await tryout.page.getByRole("button", { name: `comes from Scents!${none}` }).click();
    await expect.poll(() => tryout.nameBox.inputValue(), PATIENCE).toBe("H2");
    await tryout.type("H2", "=POUR.FILLWEIGHT(3)");
    await expect.poll(() => tryout.problems(), PATIENCE).toEqual([]);
    await tryout.goTo("H3");
    await tryout.page.keyboard.press("Delete");
  });

  it("forgets a message when the cell's next error has another cause", async () => {
    await tryout.openSheet("Scents");
    await tryout.type("H2", "=POUR.SCENTPART(10,6)");
    await expect.poll(() => tryout.problems(), PATIENCE).toEqual([`Scents!H2: ${BAD_LOAD}`]);
    await tryout.type("H2", '=1+"x"');
    await expect.poll(() => tryout.problems(), PATIENCE).toEqual([]);
    await tryout.goTo("H2");
    await expect.poll(() => tryout.message(), PATIENCE).toMatch(/^H2: a cell that this one uses/);
  });

  it("speaks once of an argument that is wrong for every row a formula spills into", async () => {
    await tryout.openSheet("Scents");
    await tryout.type("P2", "=POUR.SCENTSPLIT({10;20;30},6)");
    await expect.poll(() => tryout.problems(), PATIENCE).toEqual([`Scents!P2: ${BAD_LOAD}`]);
    await tryout.goTo("P2");
    await tryout.page.keyboard.press("Delete");
    await expect.poll(() => tryout.problems(), PATIENCE).toEqual([]);
  });

  it("says why results cannot spill", async () => {
    await tryout.openSheet("Scents");
    await tryout.type("I2", "taken");
    await tryout.type("H2", "=POUR.SCENTSPLIT(10,6%)");
    await expect
      .poll(() => tryout.problems(), PATIENCE)
      .toEqual([expect.stringContaining("Scents!H2: the results need")]);
    await tryout.goTo("I2");
    await tryout.page.keyboard.press("Delete");
    await expect.poll(() => tryout.problems(), PATIENCE).toEqual([]);
    const [row] = await tryout.cells("Scents", 1, 7, 1, 2);
    expect((row?.[0] as number) + (row?.[1] as number)).toBeCloseTo(10, 12);
  });

  it("lists formulas that refer to themselves, with a function of ours too", async () => {
    const { page } = tryout;
    const cycle =
      "this formula refers to itself, perhaps through other cells; let it begin from a number that you type";
    await tryout.openSheet("Scents");
    await tryout.type("H2", "=I2");
    await tryout.type("I2", "=POUR.FILLWEIGHT(H2)");
    await expect.poll(() => tryout.problems(), PATIENCE).toEqual([`Scents!H2: ${cycle}`, `Scents!I2: ${cycle}`]);
    expect(await page.locator("#problems summary").textContent()).toBe("2 formulas to fix");
    await tryout.goTo("H2");
    await expect.poll(() => tryout.message(), PATIENCE).toBe(`H2: ${cycle}`);
    await tryout.type("H2", "10");
    await expect.poll(() => tryout.problems(), PATIENCE).toEqual([]);
    for (const cell of ["H2", "I2"]) {
      await tryout.goTo(cell);
      await page.keyboard.press("Delete");
    }
  });
});

it("comes back to the workbook as it was left, a setting too, without asking on leaving", async () => {
  const tryout = await site.open();
  const { page } = tryout;
  const warnings: string[] = [];
  page.on("dialog", (dialog) => {
    warnings.push(dialog.type());
    return dialog.accept();
  });
  await tryout.openSheet("Vessels");
  await tryout.type("C5", "321");
  await tryout.openSettings();
  await page.getByLabel("Extra to melt (loss)").fill("5%");
  await page.getByLabel("Extra to melt (loss)").blur();
  await page.locator("#kept.safe").waitFor();
  await page.reload();
  await page.waitForFunction(() => "pourwright" in window);
  expect(await page.locator("#name").textContent()).toBe("Demo studio");
  expect(await page.getByRole("region", { name: "Ways to begin" }).isVisible()).toBe(false);
  expect(await tryout.cells("Vessels", 4, 2)).toEqual([[321]]);
  await expect.poll(() => page.getByLabel("Extra to melt (loss)").inputValue(), PATIENCE).toBe("5%");
  expect(warnings).toEqual([]);

  // Another workbook is begun; the first one is in the list as it was.
  await tryout.openWorkbook("Starter tables");
  await page.getByRole("button", { name: "My workbooks" }).click();
  expect(await tryout.faults({ exclude: ["#spreadsheet"] })).toEqual([]);
  await page.keyboard.press("Escape");
  await tryout.comeBackTo("Demo studio");
  expect(await tryout.cells("Vessels", 4, 2)).toEqual([[321]]);
  await page.close();
});
