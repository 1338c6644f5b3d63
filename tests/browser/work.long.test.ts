import { beforeAll, describe, expect, it } from "vitest";
import type { CellValue } from "../../src/host/host";
import { later } from "./later";
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
  const vessels = async () => (await tryout.table("Batch")).rows.map(([vessel]) => vessel);
  beforeAll(async () => {
    await tryout.page.context().grantPermissions(["clipboard-read", "clipboard-write"], { origin: site.origin });
    await later(tryout.page, () => window.pourwright.work);
  });

  it("is taken back also from the tab of another sheet, where what was said of it names its own", async () => {
    await tryout.openSheet("Scents");
    const [scents] = (await tryout.table("Scents")).rows;
    const load = (await tryout.table("Scents")).headings.findIndex((heading) => heading.startsWith("Load"));
    const cell = `${"ABCDEFGH"[load]}5`;
    await tryout.paste(cell, [[7]]);
    await expect.poll(() => tryout.message()).toMatch(/^\w+: 7 was taken as 7 %/);
    const said = await tryout.message();
    await tryout.openSheet("Vessels");
    await expect.poll(() => tryout.message()).toBe(`Scents: ${said}`);
    await press("Control+Z");
    expect((await tryout.table("Scents")).rows[0]).toEqual(scents);
  });

  it("shows #REF! for what formulas read of the sheet in sight when that is removed, and has all back by undo", async () => {
    const headings = ["Candle", "Cost"];
    const texts = [...headings, "Jar", "Tin"].map((text, i) => ({
      row: i < 2 ? 0 : i - 1,
      column: i < 2 ? i : 0,
      text,
    }));
    const cells = [
      ...texts.map(({ text, ...place }) => ({ ...place, content: { text } })),
      ...[2, 3].map((number, i) => ({ row: i + 1, column: 1, content: { number } })),
    ];
    const tables = [{ name: "Costs", row: 0, column: 0, headings, rows: 2 }];
    await tryout.host("addSheet", { name: "Costs", widths: [12, 12], cells, tables });
    const formulas = ["=SUM(Costs[Cost])", "=A1*10", "=Costs!B2"];
    const sums = formulas.map((formula, row) => ({ row, column: 0, content: { formula } }));
    await tryout.host("addSheet", { name: "Sums", widths: [12], cells: sums });
    const results = () => tryout.cells("Sums", 0, 0, 3);
    expect(await results()).toEqual([[5], [50], [2]]);
    await tryout.openSheet("Costs");
    await tryout.page.getByText("Costs", { exact: true }).last().click({ button: "right" });
    await tryout.page.getByText("Delete", { exact: true }).first().click();
    await tryout.page.getByRole("button", { name: "OK" }).click();
    await tryout.idle();
    const lost = { error: "#REF!", message: "" };
    expect(await results()).toEqual([[lost], [lost], [lost]]);
    await press("Control+Z");
    expect(await results()).toEqual([[5], [50], [2]]);
    expect(await tryout.host("sheetNames")).toContain("Costs");
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
      await tryout.pasteFrom("A19", "Wide bowl\tPlum thunder\t2\nSmall tin\tAttic cedar\t3\n");
      await expect.poll(async () => (await tryout.table("Batch")).rows.length).toBe(before + 2);
      // The load that Scents gives Plum thunder.
      expect((await tryout.table("Batch")).rows.at(-2)?.slice(0, 5)).toEqual([
        "Wide bowl",
        "Plum thunder",
        2,
        631.442,
        0.07,
      ]);
      expect(await tryout.undoWords()).toBe("Undo pasting into A19:C20 (Ctrl+Z)");
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
      expect(await tryout.undoWords()).toBe("Undo sorting Batch (Ctrl+Z)");
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
    it.each(TYPED)("with %s typed holds %s, and says what may be doubted", async (typed, value, said) => {
      await tryout.openSheet("Scents");
      await tryout.type("B6", typed);
      expect(await tryout.cells("Scents", 5, 1)).toEqual([[value]]);
      await tryout.goTo("A1");
      await expect.poll(() => tryout.message()).toBe(said);
      await press("Control+Z");
      expect(await tryout.cells("Scents", 5, 1)).toEqual([[0.08]]);
    });

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
  it.each(ANYWHERE)("takes %s, typed into any cell, as %s and says so", async (typed, value, said) => {
    await tryout.openSheet("Vessels");
    await tryout.type("H30", typed);
    await expect.poll(() => tryout.cells("Vessels", 29, 7)).toEqual([[value]]);
    await expect.poll(() => tryout.message()).toBe(said);
    await press("Control+Z");
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

  it.each(["Shift+F10", "ContextMenu"])(
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

  it("the names of undo and redo leave nothing for axe", async () => {
    expect(await tryout.faults("[data-u-command='univer.command.undo']")).toEqual([]);
    expect(await tryout.faults("[data-u-command='univer.command.redo']")).toEqual([]);
  });
});
