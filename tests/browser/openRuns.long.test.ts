import type { Locator } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { AT, kindOfKey } from "../../src/runsheet/sheet/layout";
import { columnLetters } from "../../src/sheet/columnLetters";
import { OpenedSite } from "./opened";
import { tableSheet } from "./tableSheet";

/** All names and numbers are invented. */
describe("a run sheet that is written and not logged", () => {
  const tryout = new OpenedSite().page();
  const pane = (): Locator => tryout.page.locator(".pourwright-pane");
  const planned = () => pane().getByRole("region", { name: "Also planned" });
  const missing = () => pane().getByRole("list", { name: "Missing for this run" });

  beforeAll(async () => {
    await tryout.openWorkbook("An empty workbook");
    await tryout.host(
      "addSheet",
      tableSheet("Items", [
        ["Item", "On hand (g)"],
        ["Wax", 1500],
        ["Cedar", 500],
        ["Tin", 100],
      ]),
    );
    await tryout.host(
      "addSheet",
      tableSheet("Batch", [
        ["Vessel", "Quantity", "Fill weight (g)", "Scent"],
        ["Tin", 10, 100, "Cedar"],
      ]),
    );
    await tryout.press("Write run sheet");
    await pane()
      .getByText(/^Run sheet written: Run/)
      .waitFor();
  });

  it("does not count beside its own batch, counts beside another one, and can be left out", async () => {
    await planned().getByText("has the candles of this batch").waitFor();
    expect(await missing().count()).toBe(0);
    await tryout.openSheet("Batch");
    await tryout.type("B2", "8");
    await planned()
      .getByText(/counts: Wax \d+ g, Cedar \d+ g, Tin 10\./)
      .waitFor();
    await missing()
      .getByText(/^Wax: /)
      .waitFor();
    for (const width of [1280, 320]) {
      await tryout.page.setViewportSize({ width, height: 800 });
      expect(await tryout.faults(".pourwright-pane")).toEqual([]);
    }
    await tryout.page.setViewportSize({ width: 1280, height: 800 });
    await planned()
      .getByRole("button", { name: /^Leave .* out$/ })
      .click();
    await planned()
      .getByText(/is left out\.$/)
      .waitFor();
    await missing().waitFor({ state: "detached" });
  });

  it("keeps a lot as it is typed, also one that looks like a day", async () => {
    const sheet = (await tryout.sheetNames()).find((name) => name.startsWith("Run 2")) as string;
    const row = (await tryout.host("readSheet", sheet)).findIndex((cells) => kindOfKey(cells[AT.key]) === "wax");
    await tryout.openSheet(sheet);
    const lots = async (typed: string) => {
      await tryout.type(`${columnLetters(AT.lotUsed)}${row + 1}`, typed);
      return (await tryout.host("readSheet", sheet))[row]?.[AT.lotUsed];
    };
    expect([await lots("11-26"), await lots("1/12")]).toEqual(["11-26", "1/12"]);
  });
});
