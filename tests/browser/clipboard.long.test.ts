import { beforeAll, describe, expect, it } from "vitest";
import { later } from "./later";
import { OpenedSite } from "./opened";

/** Numbers are invented. */
describe("the clipboard, finding and replacing", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  const press = async (keys: string) => {
    await tryout.page.keyboard.press(keys);
    await tryout.idle();
  };
  beforeAll(async () => {
    await tryout.page.context().grantPermissions(["clipboard-read", "clipboard-write"], { origin: site.origin });
    await later(tryout.page, () => window.pourwright.work);
  });

  it("copies a line break inside a cell as one for other programs", async () => {
    const cells = [{ text: "pour\nwait" }, { text: "next" }];
    const content = cells.map((content, row) => ({ row, column: 0, content }));
    await tryout.host("addSheet", { name: "Lines", widths: [], cells: content });
    await tryout.goTo("A1:A2");
    await press("Control+C");
    const copied = await later(tryout.page, async () => {
      const [item] = await navigator.clipboard.read();
      return Promise.all(["text/plain", "text/html"].map(async (kind) => (await item?.getType(kind))?.text() ?? ""));
    });
    expect(copied[0]).toBe('"pour\nwait"\nnext');
    expect(copied[1]).toContain("pour<br>wait</td>");
  });

  describe("the clipboard", () => {
    beforeAll(async () => {
      await tryout.host("addSheet", {
        name: "Copies",
        widths: [],
        cells: [
          { row: 0, column: 0, content: { number: 3 } },
          { row: 0, column: 1, content: { formula: "=A1*2" } },
          { row: 0, column: 2, content: { formula: "=POUR.FILLWEIGHT(A1)" }, format: "0.0" },
          { row: 2, column: 0, content: { number: 10 } },
        ],
      });
    });

    it("carries formulas within the page, and values as shown out of it", async () => {
      await tryout.goTo("B1:C1");
      await press("Control+C");
      await expect.poll(() => later(tryout.page, () => navigator.clipboard.readText())).toBe("6\t2.6");
      await tryout.goTo("B3");
      await press("Control+V");
      // 10 x 2, and 10 x 0.86: common practice, no source.
      await expect.poll(() => tryout.cells("Copies", 2, 1, 1, 2)).toEqual([[20, 8.6]]);
    });

    it("brings texts in their places: numbers, percentages and dates as such, what begins with = as text", async () => {
      await tryout.pasteFrom("A5", "\tTin & lid\t<5 g>\n6%\t1,234.5\t2026-11-25\n=1+1\t12.50 kg\t0.5\n");
      // The day's number: 46351, as DATEVALUE("2026-11-25") gives in LibreOffice 7.4.7.
      await expect
        .poll(() => tryout.cells("Copies", 4, 0, 3, 3))
        .toEqual([
          [null, "Tin & lid", "<5 g>"],
          [0.06, 1234.5, 46351],
          ["=1+1", "12.50 kg", 0.5],
        ]);
      await expect.poll(() => tryout.message()).toMatch(/^1 pasted text begins with = and stayed text/);
    });

    it("brings numbers and dates that may be doubted as they are said to be, and Enter reads them as typed", async () => {
      await tryout.pasteFrom("E1", "3,5\t0,125\t3,5%\n1,234\t12/11/2026\t12.11.2026\n");
      // The days' numbers as DATEVALUE gives them in LibreOffice 7.4.7 for 2026-12-11 and 2026-11-12.
      const dates = [46367, 46338];
      await expect
        .poll(() => tryout.cells("Copies", 0, 4, 2, 3))
        .toEqual([
          ["3,5", "0,125", "3,5%"],
          [1234, ...dates],
        ]);
      await expect
        .poll(() => tryout.message())
        .toBe(
          "E1: 3,5 stayed text, and so did 2 more cells. To make it 3.5, go there and press F2 and Enter; for all of them, take it back with Undo, write them with a decimal point in the other program and paste again. E2: 1,234 was taken as 1234. If you mean 1.234, type 1.234. F2: 12/11/2026 was taken as the date 2026-12-11. If the day stands first, type 2026-11-12.",
        );
      await tryout.goTo("F1");
      await tryout.enterAgain();
      await expect.poll(() => tryout.cells("Copies", 0, 4, 1, 3)).toEqual([["3,5", 0.125, "3,5%"]]);
      await press("Control+Z");
      await press("Control+Z");
      await expect.poll(() => tryout.cells("Copies", 0, 4, 2, 3)).toEqual(Array(2).fill(Array(3).fill(null)));
      await press("Control+Y");
      await expect.poll(() => tryout.cells("Copies", 1, 4, 1, 3)).toEqual([[1234, ...dates]]);
    });

    it("says so of one cell too, and of another program's cells whatever their formats", async () => {
      await tryout.pasteFrom("E4", "3,5");
      await expect.poll(() => tryout.cells("Copies", 3, 4)).toEqual([["3,5"]]);
      await expect.poll(() => tryout.message()).toMatch(/^E4: 3,5 stayed text\./);
      const html = `<html><head><style>.a{mso-number-format:Percent;} .b{mso-number-format:"0\\.000";} .c{mso-number-format:"Short Date";}</style></head>
<body><table><tr><td class=a>3,5%</td><td class=b><b>0,125</b></td><td class=c>12/11/2026</td></tr></table></body></html>`;
      await tryout.pasteFrom("E6", "3,5%\t0,125\t12/11/2026", html);
      await expect.poll(() => tryout.cells("Copies", 5, 4, 1, 3)).toEqual([["3,5%", "0,125", 46367]]);
      await expect
        .poll(() => tryout.message())
        .toMatch(
          /^E6: 3,5% stayed text, and so did 1 more cell\..* G6: 12\/11\/2026 was taken as the date 2026-12-11\./,
        );
    });

    it("takes a formula that comes alone as if it were typed", async () => {
      await tryout.pasteFrom("A9", "=POUR.FILLWEIGHT(100)");
      await expect.poll(() => tryout.cells("Copies", 8, 0)).toEqual([[86]]);
      expect(await tryout.message()).toBe("");
    });

    it("reads another program's cells by their formats, whatever these are called", async () => {
      const html = `<html><head><style>.a{mso-number-format:Percent;} .b{mso-number-format:"Short Date";} .c{mso-number-format:Odd;}</style></head>
<body><table><tr><td>Tin</td><td class=a>6%</td><td class=b>11/25/2026</td><td class=c>7</td></tr></table></body></html>`;
      await tryout.pasteFrom("A11", "Tin\t6%\t11/25/2026\t7", html);
      await expect.poll(() => tryout.cells("Copies", 10, 0, 1, 4)).toEqual([["Tin", 0.06, 46351, 7]]);
    });
  });

  it("finds and replaces by keys alone: texts and numbers, not in formulas, and texts of digits stay texts", async () => {
    const cells = [
      { text: "cedar" },
      { formula: '=A1&" cedar"' },
      { text: "012" },
      { number: 120 },
      { formula: "=A4*12" },
    ];
    await tryout.host("addSheet", {
      name: "Words",
      widths: [],
      cells: cells.map((content, row) => ({ row, column: 0, content })),
    });
    const words = () => tryout.cells("Words", 0, 0, cells.length, 1);
    const focused = () =>
      tryout.page.evaluate(() => {
        const { activeElement } = document;
        return activeElement?.getAttribute("placeholder") ?? activeElement?.textContent ?? "";
      });
    const tabTo = async (name: string) => {
      for (let presses = 0; presses < 20 && (await focused()) !== name; presses++) await press("Tab");
      expect(await focused()).toBe(name);
    };
    const replaceAll = async (text: string, by: string, found: RegExp) => {
      await tryout.goTo("A1");
      await press("Control+H");
      await expect.poll(focused).toBe("What to find");
      await press("Control+A");
      await tryout.page.keyboard.type(text);
      await tabTo("What to put there");
      await press("Control+A");
      await tryout.page.keyboard.type(by);
      await tabTo("Find");
      await press("Enter");
      const dialog = tryout.page.locator("[role=dialog]").filter({ has: tryout.page.getByText(found) });
      await dialog.waitFor();
      expect(await tryout.faults("[role=dialog]")).toEqual([]);
      await tabTo("Replace all");
      await press("Enter");
      await expect.poll(focused).toBe("Cancel");
      await tryout.page
        .getByText(/^Replace in (1 cell\? 1 cell shows it by a formula and stays\.|2 cells\?)$/)
        .waitFor();
      await tabTo("OK");
      await press("Enter");
      await dialog.waitFor({ state: "detached" });
      await press("Escape");
      await tryout.page.locator("[role=dialog]").waitFor({ state: "detached" });
    };
    await replaceAll("cedar", "fig", /^\d\/2$/);
    await expect.poll(words).toEqual([["fig"], ["fig cedar"], ["012"], [120], [1440]]);
    expect(await tryout.undoWords()).toBe("Undo replacing in A1 (Ctrl+Z)");
    await replaceAll("12", "13", /^\d\/2$/);
    // 130 x 12: the formula's own 12 stays.
    await expect.poll(words).toEqual([["fig"], ["fig cedar"], ["013"], [130], [1560]]);
    await press("Control+Z");
    await expect.poll(words).toEqual([["fig"], ["fig cedar"], ["012"], [120], [1440]]);
  });
});
