import { describe, expect, it } from "vitest";
import { later } from "./later";
import { OpenedSite } from "./opened";

describe("a note on a narrow page", () => {
  const site = new OpenedSite();
  const tryout = site.page({ width: 320, height: 700, dark: true });
  const popUp = () => tryout.page.locator("[data-u-comp=rect-popup]");

  it("is whole on the screen beside a cell that is wider than the screen", async () => {
    await later(tryout.page, () => window.pourwright.work);
    await tryout.openSheet("Read me");
    await tryout.goTo("A2");
    await tryout.page.keyboard.press("Shift+F2");
    await popUp().getByPlaceholder("A note for this cell").waitFor();
    const box = async () => {
      const { x = -1, width = 0, y = -1, height = 0 } = (await popUp().boundingBox()) ?? {};
      return x >= 0 && x + width <= 320 && y >= 0 && y + height <= 700 && width > 100;
    };
    await expect.poll(box).toBe(true);
    expect(await tryout.faults("[data-u-comp=rect-popup]")).toEqual([]);
    // It stays: it takes what is written, and goes with the cell.
    await tryout.page.keyboard.type("Ask Wren");
    expect(await popUp().getByRole("textbox").inputValue()).toBe("Ask Wren");
    await tryout.goTo("A30");
    await popUp().waitFor({ state: "detached" });
  });
});

describe("a page that becomes narrow", () => {
  const site = new OpenedSite();
  const tryout = site.page();

  it("gives the tabs of the sheets the room", async () => {
    await tryout.resize({ width: 320, height: 640 });
    const tabs = tryout.page.getByRole("tablist", { name: "Sheet tabs" });
    const tab = tabs.getByRole("tab", { name: "Read me", exact: true });
    const isWhole = async () => {
      const [around, inside] = [await tabs.boundingBox(), await tab.boundingBox()];
      return around && inside ? inside.x >= around.x && inside.x + inside.width <= around.x + around.width : false;
    };
    await expect.poll(isWhole).toBe(true);
  });
});
