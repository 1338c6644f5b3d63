import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import type { CellValue } from "../../src/sheet/sheet";
import { OpenedSite } from "./opened";

/** From an empty workbook to a run sheet with a tested wick; all names and numbers are invented. */
describe("a wick", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  const pane = (): Locator => tryout.page.locator(".pourwright-pane");
  const field = (label: string) =>
    pane().getByRole("region", { name: "Plan a series" }).getByLabel(label, { exact: true });
  const seen = (): Locator => pane().getByRole("region", { name: "Read a series" });
  const says = (text: string | RegExp) => pane().getByText(text).first().waitFor();

  it("is read from the readings of its series, each candle burnt in two cycles down to 10 mm", async () => {
    await tryout.openWorkbook("An empty workbook");
    await tryout.openView("Tests");
    await field("Vessel").fill("Bowl");
    await field("Inside width").fill("70");
    await field("Wax (blank: the usual)").fill("Soft wax");
    await field("Scent (blank: none)").fill("Rain");
    await field("Wicks to try, one a line or parted by commas").fill("Size 4\nSize 6\nSize 9");
    await field("Cure days").fill("14");
    await field("Cycles to begin with").fill("2");
    await says("9 candles, 3 of each of 3 wicks: S1-1 to S1-9");
    await tryout.press("Write anyway");
    await says(/^Series S1 is written: 9 rows in BurnTests, 90 rows in Readings/);
    const tests = await tryout.table("BurnTests");
    const wickOf = new Map(tests.rows.map((row) => [row[0], row[tests.headings.indexOf("Wick")]]));
    const { rows, headings, place } = await tryout.table("Readings");
    expect(headings.slice(0, 4)).toEqual(["Test", "Cycle", "Minutes", "Weight (g)"]);
    // Size 6 is within all limits; size 9 flares; of size 4 nothing was looked at but the first cycle.
    const read = rows.map((row): CellValue[] => {
      const [test, cycle, minutes] = row as [string, number, number];
      const wick = wickOf.get(test);
      if (wick === "Size 4" && cycle === 2) return headings.slice(3).map(() => "");
      const ends = minutes === 0 || minutes === 240;
      const said: Record<string, CellValue> = {
        ...(ends && { "Weight (g)": 400 - (20 + 0.1 * Number(test.slice(-1))) * (4 * (cycle - 1) + minutes / 60) }),
        ...(minutes > 0 && {
          "Flame (mm)": wick === "Size 9" ? 82 : 30,
          "Pool (mm)": [25, 50, 70, 70][minutes / 60 - 1] ?? "",
          Soot: "none",
        }),
        ...(minutes === 240 && { "Wax left (mm)": cycle === 2 ? 10 : 40, "Glass temperature (C)": 45 }),
      };
      return headings.slice(3).map((heading) => said[heading] ?? "");
    });
    await tryout.openSheet(place.sheet);
    await tryout.paste(`D${place.row + 2}`, read as (string | number)[][]);
    await tryout.openView("Tests");
    const text = () => seen().textContent();
    await expect
      .poll(text)
      .toContain(
        "nothing beyond the limits seen in 3 of 3; a fault in up to 64 % of all is still possible (95 % confidence)",
      );
    expect(await text()).toMatch(/beyond the limits in 3 of 3: S1-\d, cycle 1 at 60 min: flame 82 mm high/);
    expect(await text()).toMatch(/nothing can be said yet: S1-\d, 40 mm of wax left/);
  });

  it("is approved by a press, once the table of vessels names its vessel, and undo takes it back", async () => {
    const approve = seen().getByRole("button", { name: /^Approve/ });
    expect(await approve.allTextContents()).toEqual(["Approve Size 6 for Bowl"]);
    await approve.click();
    await says("There is no table of vessels to approve a wick in.");
    await tryout.openView("Plan");
    await tryout.press("Add starter tables");
    await tryout.openSheet("Vessels");
    await tryout.type("A5", "Bowl");
    await tryout.type("B5", "240");
    await tryout.openView("Tests");
    for (const size of [{ width: 320, height: 640, dark: true }, {}]) {
      await tryout.resize(size);
      expect(await tryout.faults(".pourwright-pane")).toEqual([]);
    }
    await approve.click();
    await says("Size 6 stands in Vessels as the wick of Bowl, for what was burnt: 3 candles in Soft wax at 6 % of wax");
    const wick = async () => {
      const { rows, headings } = await tryout.table("Vessels");
      return rows[0]?.[headings.indexOf("Wick")];
    };
    expect(await wick()).toBe("Size 6");
    await approve.waitFor({ state: "detached" });
    expect(await tryout.undoWords()).toContain("what the pane wrote");
    await tryout.page.locator("[data-u-command='univer.command.undo']").first().click();
    await expect.poll(wick).toBeNull();
    await tryout.page.locator("[data-u-command='univer.command.redo']").first().click();
    await expect.poll(wick).toBe("Size 6");
  });

  it("stands on the next run sheet and is counted there; another wax is said not to be tested", async () => {
    const { place, headings } = await tryout.table("Batch");
    await tryout.openSheet(place.sheet);
    const first = place.row + 2;
    await tryout.paste(`A${first}`, [["Bowl", "Rain", 4]]);
    const wax = String.fromCharCode(65 + headings.length);
    await tryout.type(`${wax}${first - 1}`, "Wax");
    await tryout.type(`${wax}${first}`, "Soft wax");
    await tryout.openView("Plan");
    await tryout.page.locator("button:enabled", { hasText: /^Write run sheet|^Write anyway/ }).waitFor();
    await expect
      .poll(() =>
        pane()
          .getByText(/not tested/)
          .count(),
      )
      .toBe(0);
    await tryout.press("Write run sheet");
    await says("Run sheet written");
    const run = (await tryout.sheetNames()).at(-1) as string;
    const texts = (await tryout.host("readSheet", run)).map((row) =>
      row.filter((cell) => cell !== null && cell !== ""),
    );
    expect(texts.flat()).toContain("wick Size 6");
    expect(texts.find((row) => row.includes("Wick: Size 6"))).toContain(4);
    await tryout.openSheet(place.sheet);
    await tryout.type(`${wax}${first}`, "Hard wax");
    await says(
      /not tested: Bowl, wick Size 6 in Hard wax at 6 % of wax; nearest test S1-\d: wick Size 6 in Soft wax at 6 % of wax/,
    );
  });
});
