import { beforeAll, describe, expect, it } from "vitest";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

/** From cells of the table of scents to the first line of Check, and on to the sheet. */
describe("limits and flash points, in a browser", () => {
  const tryout = new OpenedSite().page();
  const pane = () => tryout.page.locator(".pourwright-pane");
  const first = async () => (await pane().locator(".problems li").first().textContent()) ?? "";
  const isFirst = (text: string | RegExp) => expect.poll(first, PATIENCE).toMatch(text);

  beforeAll(async () => {
    await tryout.openWorkbook("An empty workbook");
    await pane().getByRole("button", { name: "Add starter tables" }).click();
    await pane().getByLabel("Pour from").waitFor();
    await tryout.openSheet("Batch");
    await tryout.paste("A5", [["Tin", "Cedar", 10, 212]]);
    await tryout.openSheet("Scents");
    await tryout.paste("A5", [["Cedar", "6%", "of wax"]]);
  });

  it("says which limits are not known, before all else", async () => {
    await isFirst(/wax maximum and product limit not known: not checked/);
    await tryout.type("D5", "10%");
    await isFirst(/product limit not known: not checked/);
  });

  it("stops a load over the product limit, on top of the list", async () => {
    // 6 % of wax is 6 / 106 = 5.66 % of total.
    await tryout.type("E5", "5%");
    await isFirst(/Fix row 5 .*over the product limit by 0\.66\d* points/);
    expect(await pane().getByRole("button", { name: "Write run sheet" }).isDisabled()).toBe(true);
    await tryout.type("E5", "8%");
  });

  it("compares the flash point with adding and with pouring, whatever their units", async () => {
    await tryout.type("G5", "85");
    await tryout.type("I5", "65");
    await isFirst(/flash point not known: not compared/);
    // 140 F are 60 C: below both. By definition, C = (F - 32) / 1.8.
    await tryout.type("J5", "140 F");
    await isFirst(/added at 85 C, poured at 65 C, at or above the flash point, 140 F/);
  });

  it("says it on the sheet too", async () => {
    await pane().getByRole("button", { name: "Write run sheet" }).click();
    await pane()
      .getByText(/Run sheet written: Run/)
      .waitFor();
    const name = (await tryout.sheetNames()).at(-1) as string;
    const texts = (await tryout.cells(name, 0, 0, 60, 8)).flat().filter((cell) => typeof cell === "string");
    expect(texts.join("\n")).toContain("at or above the flash point, 140 F");
    expect(await tryout.faults(".pourwright-pane")).toEqual([]);
  });
});
