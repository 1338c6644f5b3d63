import { beforeAll, describe, expect, it } from "vitest";
import type { CellValue } from "../../src/host/host";
import { cases } from "../cases";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

/** Working in the sheet as a user does: numbers are invented. */
describe("working in the sheet", () => {
  const site = new OpenedSite();
  const tryout = site.page();
  const press = async (keys: string) => {
    await tryout.page.keyboard.press(keys);
    await tryout.idle();
  };
  const undoWords = () =>
    tryout.page.locator("[data-u-command='univer.command.undo'] [aria-label]").first().getAttribute("aria-label");
  const vessels = async () => (await tryout.table("Batch")).rows.map(([vessel]) => vessel);
  /** Puts something on the clipboard as another program would, and pastes it from a cell on. */
  const paste = async (cell: string, text: string, html = "") => {
    await tryout.page.evaluate(
      ([plain, rich]) => {
        const parts = { "text/plain": plain, ...(rich && { "text/html": rich }) };
        const blobs = Object.entries(parts).map(([type, part]) => [type, new Blob([part], { type })]);
        return window.keep(navigator.clipboard.write([new ClipboardItem(Object.fromEntries(blobs))]));
      },
      [text, html] as const,
    );
    await tryout.goTo(cell);
    await press("Control+V");
  };

  beforeAll(async () => {
    await tryout.page.context().grantPermissions(["clipboard-read", "clipboard-write"], { origin: site.origin });
    await tryout.page.evaluate(() => window.keep(window.pourwright.work));
  });

  describe("a table", () => {
    it("takes in the row typed below it with its formulas, and undo names and takes back both", async () => {
      await tryout.openSheet("Vessels");
      const before = await tryout.table("Vessels");
      const row = before.place.row + before.place.rows + 1;
      await tryout.type(`A${row}`, "Thimble");
      await expect.poll(async () => (await tryout.table("Vessels")).rows.length).toBe(before.rows.length + 1);
      await tryout.type(`C${row}`, "10");
      // The water's weight makes the fill: 10 x 0.86, common practice, no source.
      expect((await tryout.table("Vessels")).rows.at(-1)).toContain(8.6);
      // What reads the whole column in other tables reads the new row too.
      await tryout.openSheet("Batch");
      await tryout.type("A17", "Thimble");
      await expect.poll(async () => (await tryout.table("Batch")).rows[11]?.[3]).toBe(8.6);
      for (let presses = 0; presses < 3; presses++) await press("Control+Z");
      expect((await tryout.table("Vessels")).rows).toEqual(before.rows);
    });

    it("takes in rows that are pasted below it", async () => {
      await tryout.openSheet("Batch");
      const before = (await tryout.table("Batch")).rows.length;
      await paste("A19", "Wide bowl\tPlum thunder\t2\nSmall tin\tAttic cedar\t3\n");
      await expect.poll(async () => (await tryout.table("Batch")).rows.length).toBe(before + 2);
      // The load that Scents gives Plum thunder.
      expect((await tryout.table("Batch")).rows.at(-2)?.slice(0, 5)).toEqual([
        "Wide bowl",
        "Plum thunder",
        2,
        631.442,
        0.07,
      ]);
      expect(await undoWords()).toBe("Undo pasting into A19:C20 (Ctrl+Z)");
      await press("Control+Z");
      expect((await tryout.table("Batch")).rows).toHaveLength(before);
    });

    it("is sorted from its heading by keys alone, each row whole, and back", async () => {
      await tryout.openSheet("Batch");
      const before = await vessels();
      await tryout.goTo("A5");
      await press("Alt+ArrowDown");
      await tryout.page.getByText("Ascending", { exact: true }).click();
      const names = before.filter((name): name is string => typeof name === "string");
      await expect.poll(vessels).toEqual([...names.sort(), null, null]);
      const { rows } = await tryout.table("Batch");
      expect(rows[0]?.slice(0, 4)).toEqual(["Footed bowl", "Plum thunder", 4, 349.92]);
      expect(await undoWords()).toBe("Undo sorting Batch (Ctrl+Z)");
      await tryout.goTo("A1");
      await press("Control+Z");
      expect(await vessels()).toEqual(before);
    });

    it("is filtered by its heading, and the pane counts what is hidden", async () => {
      await tryout.goTo("B5");
      await press("Alt+ArrowDown");
      const panel = tryout.page.locator("[data-u-comp=rect-popup]");
      await panel.getByText("Attic cedar").waitFor();
      expect(await tryout.faults("[data-u-comp=rect-popup]")).toEqual([]);
      await panel.getByText("Attic cedar").click();
      await panel.getByRole("button", { name: "Confirm" }).click();
      await expect.poll(async () => (await tryout.table("Batch")).hidden).toEqual([3, 4, 5]);
      await tryout.goTo("A1");
      await press("Control+Z");
      await expect.poll(async () => (await tryout.table("Batch")).hidden).toEqual([]);
    });
  });

  describe("a cell that names a vessel", () => {
    const list = () => tryout.page.locator("[data-u-comp=sheets-dropdown-list]");

    it("offers those that are known, chosen by keys alone, and nothing is left for axe", async () => {
      await tryout.openSheet("Batch");
      await tryout.goTo("A18");
      await press("Alt+ArrowDown");
      await list().getByText("Hexagon jar").waitFor();
      expect(await tryout.faults("[data-u-comp=sheets-dropdown-list]")).toEqual([]);
      await press("Escape");
      await list().waitFor({ state: "detached" });
      await press("Alt+ArrowDown");
      await list().getByRole("listbox").waitFor();
      // The fifth of the vessels.
      for (let presses = 0; presses < 5; presses++) await press("ArrowDown");
      await press("Enter");
      await expect.poll(() => tryout.cells("Batch", 17, 0)).toEqual([["Hexagon jar"]]);
      await tryout.goTo("A1");
      await press("Control+Z");
      expect(await tryout.cells("Batch", 17, 0)).toEqual([[null]]);
    });

    it("takes any other too", async () => {
      await tryout.type("A18", "Lost jar");
      expect(await tryout.cells("Batch", 17, 0)).toEqual([["Lost jar"]]);
      await press("Control+Z");
    });
  });

  describe("a cell of percentages", () => {
    const TYPED: [string, CellValue, string][] = [
      ["7", 0.07, ""],
      ["0.08", 0.08, "0.08 was taken as 8 %. If you mean 0.08 %, type 0.08%."],
      ["6,5", 0.065, ""],
      ["6%", 0.06, ""],
      ["=6", 6, ""],
      ["1,000", 10, "1,000 was taken as 1000 %. If you mean 1 %, type 1%."],
    ];
    it.each(TYPED.slice(0, cases(2, TYPED.length)))(
      "with %s typed holds %s, and says what may be doubted",
      async (typed, value, said) => {
        await tryout.openSheet("Scents");
        await tryout.type("B6", typed);
        expect(await tryout.cells("Scents", 5, 1)).toEqual([[value]]);
        await tryout.goTo("A1");
        await expect.poll(() => tryout.message()).toBe(said);
        await press("Control+Z");
        expect(await tryout.cells("Scents", 5, 1)).toEqual([[0.08]]);
      },
    );

    it("keeps its share when it is opened and left as it is", async () => {
      await tryout.goTo("B6");
      await tryout.enterAgain();
      expect(await tryout.cells("Scents", 5, 1)).toEqual([[0.08]]);
    });
  });

  const ANYWHERE: [string, CellValue, string][] = [
    ["3,5", 3.5, "3,5 was taken as 3.5. If you mean a text, type ' in front of it."],
    ["7,50 €", 7.5, "7,50 € was taken as 7.50 €."],
    ["'007", "007", ""],
    ["007", 7, "007 was taken as 7. To keep the zeros in front, type ' in front of them."],
  ];
  it.each(ANYWHERE.slice(0, cases(1, ANYWHERE.length)))(
    "takes %s, typed into any cell, as %s and says so",
    async (typed, value, said) => {
      await tryout.openSheet("Vessels");
      await tryout.type("H30", typed);
      await expect.poll(() => tryout.cells("Vessels", 29, 7)).toEqual([[value]]);
      await expect.poll(() => tryout.message()).toBe(said);
      await press("Control+Z");
    },
  );

  it("copies a line break inside a cell as one for other programs", async () => {
    const cells = [{ text: "pour\nwait" }, { text: "next" }];
    const content = cells.map((content, row) => ({ row, column: 0, content }));
    await tryout.host("addSheet", { name: "Lines", widths: [], cells: content });
    await tryout.goTo("A1:A2");
    await press("Control+C");
    const copied = await tryout.page.evaluate(async () => {
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
      await expect.poll(() => tryout.page.evaluate(() => window.keep(navigator.clipboard.readText()))).toBe("6\t2.6");
      await tryout.goTo("B3");
      await press("Control+V");
      // 10 x 2, and 10 x 0.86: common practice, no source.
      await expect.poll(() => tryout.cells("Copies", 2, 1, 1, 2)).toEqual([[20, 8.6]]);
    });

    it("brings texts in their places: numbers, percentages and dates as such, what begins with = as text", async () => {
      await paste("A5", "\tTin & lid\t<5 g>\n6%\t1,234.5\t2026-11-25\n=1+1\t12.50 kg\t0.5\n");
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
      await paste("E1", "3,5\t0,125\t3,5%\n1,234\t12/11/2026\t12.11.2026\n");
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
      await paste("E4", "3,5");
      await expect.poll(() => tryout.cells("Copies", 3, 4)).toEqual([["3,5"]]);
      await expect.poll(() => tryout.message()).toMatch(/^E4: 3,5 stayed text\./);
      const html = `<html><head><style>.a{mso-number-format:Percent;} .b{mso-number-format:"0\\.000";} .c{mso-number-format:"Short Date";}</style></head>
<body><table><tr><td class=a>3,5%</td><td class=b><b>0,125</b></td><td class=c>12/11/2026</td></tr></table></body></html>`;
      await paste("E6", "3,5%\t0,125\t12/11/2026", html);
      await expect.poll(() => tryout.cells("Copies", 5, 4, 1, 3)).toEqual([["3,5%", "0,125", 46367]]);
      await expect
        .poll(() => tryout.message())
        .toMatch(
          /^E6: 3,5% stayed text, and so did 1 more cell\..* G6: 12\/11\/2026 was taken as the date 2026-12-11\./,
        );
    });

    it("takes a formula that comes alone as if it were typed", async () => {
      await paste("A9", "=POUR.FILLWEIGHT(100)");
      await expect.poll(() => tryout.cells("Copies", 8, 0)).toEqual([[86]]);
      expect(await tryout.message()).toBe("");
    });

    it("reads another program's cells by their formats, whatever these are called", async () => {
      const html = `<html><head><style>.a{mso-number-format:Percent;} .b{mso-number-format:"Short Date";} .c{mso-number-format:Odd;}</style></head>
<body><table><tr><td>Tin</td><td class=a>6%</td><td class=b>11/25/2026</td><td class=c>7</td></tr></table></body></html>`;
      await paste("A11", "Tin\t6%\t11/25/2026\t7", html);
      await expect.poll(() => tryout.cells("Copies", 10, 0, 1, 4)).toEqual([["Tin", 0.06, 46351, 7]]);
    });
  });

  it("keys lead through cells and sheets, and write the day", async () => {
    await tryout.openSheet("Batch");
    const places: string[] = [];
    for (const [from, keys] of [
      ["C7", "End"],
      ["C7", "Home"],
      ["C7", "Control+End"],
      ["C7", "Control+Home"],
      ["C7", "PageDown"],
      ["C30", "PageUp"],
      ["A6", "Control+ArrowDown"],
    ] as const) {
      await tryout.goTo(from);
      await press(keys);
      places.push(await tryout.nameBox.inputValue());
    }
    expect(places).toEqual(["J7", "A7", "J18", "A1", "C27", "C10", "A16"]);
    for (const [keys, sheet] of [
      ["Alt+PageDown", "Items"],
      ["Control+PageUp", "Batch"],
    ] as const) {
      await press(keys);
      await expect.poll(() => tryout.host("activeSheet"), PATIENCE).toBe(sheet);
    }
    await tryout.goTo("P3");
    await press("Control+;");
    const days = () => Math.floor(Date.now() / 86_400_000) + 25569;
    const [[day]] = (await tryout.cells("Batch", 2, 15)) as [[number]];
    // 25569 is 1970-01-01; the browser may be in another time zone than this test.
    expect(Math.abs(day - days())).toBeLessThanOrEqual(1);
  });

  it.each(["Shift+F10", "ContextMenu"].slice(0, cases(1, 2)))(
    "%s opens the menu of the cells, and Escape goes back to them",
    async (keys) => {
      const control = () => tryout.page.evaluate(() => document.activeElement?.textContent ?? "");
      const menu = tryout.page.getByRole("group", { name: "Cell menu" });
      await tryout.host("addSheet", {
        name: `Menu ${keys}`,
        widths: [],
        cells: [{ row: 3, column: 2, content: { number: 7 } }],
      });
      await tryout.goTo("C4");
      await press(keys);
      await expect.poll(control).toBe("Copy");
      const box = await menu.boundingBox();
      const canvas = await tryout.page.locator("canvas[id^=univer-sheet-main-canvas]").boundingBox();
      // Below the fourth row at the third column: its left edge is right of two columns of at least 40 pixels.
      expect(box?.x).toBeGreaterThan((canvas?.x ?? 0) + 80);
      expect(box?.x).toBeLessThan((canvas?.x ?? 0) + 300);
      expect(box?.y).toBeGreaterThan((canvas?.y ?? 0) + 80);
      expect(await tryout.faults(".univer-popup")).toEqual([]);
      await press("Escape");
      await menu.waitFor({ state: "hidden" });
      await press("ArrowDown");
      await expect.poll(() => tryout.nameBox.inputValue()).toBe("C5");
    },
  );

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
    expect(await undoWords()).toBe("Undo replacing in A1 (Ctrl+Z)");
    await replaceAll("12", "13", /^\d\/2$/);
    // 130 x 12: the formula's own 12 stays.
    await expect.poll(words).toEqual([["fig"], ["fig cedar"], ["013"], [130], [1560]]);
    await press("Control+Z");
    await expect.poll(words).toEqual([["fig"], ["fig cedar"], ["012"], [120], [1440]]);
  });

  it("the names of undo and redo leave nothing for axe", async () => {
    expect(await tryout.faults("[data-u-command='univer.command.undo']")).toEqual([]);
    expect(await tryout.faults("[data-u-command='univer.command.redo']")).toEqual([]);
  });
});
