import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import type { Host } from "../../src/host/host";
import type { Cell, Sheet } from "../../src/sheet/sheet";
import { launch } from "./launch";
import { TryoutPage } from "./page";
import { serve } from "./serve";

const TEXTS = [
  "=1+1",
  "+SUM(A1)",
  "@x",
  "-2",
  "'quoted",
  "long ".repeat(1000),
  "שלום עולם",
  "<img src=x onerror=alert(1)>",
  "12",
  "6%",
  "2026-11-25",
  "TRUE",
  "#N/A",
  "  spaced ",
  "=POUR.FILLWEIGHT(1)",
];

const PATIENCE = { timeout: 20_000 };

describe("the embedded spreadsheet as the pane's host", () => {
  let browser: Browser;
  let site: Awaited<ReturnType<typeof serve>>;
  let tryout: TryoutPage;

  // One page for all: each test adds sheets of its own.
  beforeAll(async () => {
    [browser, site] = await Promise.all([launch(), serve()]);
    tryout = await TryoutPage.open(browser, site.origin);
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
  });
  afterEach(() => {
    expect(tryout.complaints.splice(0)).toEqual([]);
  });

  /** Calls a method of the host; a rejection comes as its message. */
  function host(method: keyof Host, ...given: unknown[]): Promise<unknown> {
    return tryout.page.evaluate(
      async ([name, args]) => {
        const { host } = (window as unknown as { pourwright: { host: Record<string, (...all: unknown[]) => unknown> } })
          .pourwright;
        try {
          return await host[name]?.(...args);
        } catch (fault) {
          return `rejected: ${(fault as Error).message}`;
        }
      },
      [method as string, given as unknown[]] as const,
    );
  }

  const sheetOf = (cells: Cell[], name: string): Sheet => ({ name, widths: [20], cells });

  it("adds a sheet, shows it, and has its formulas computed when it says so", async () => {
    const cells: Cell[] = [
      { row: 1, column: 0, content: { formula: "=POUR.SCENTSPLIT(12.5,6%)" }, format: "0.00" },
      { row: 2, column: 0, content: { formula: "=SUM(Vessels[Water weight (g)])" } },
    ];
    expect(await host("addSheet", sheetOf(cells, "Formulas"))).toBe("Formulas");
    const [[wax, scent], [sum]] = (await tryout.cells("Formulas", 1, 0, 2, 2)) as [[number, number], [number]];
    // By hand: 12.5 / 1.06 and the rest.
    expect(wax).toBeCloseTo(11.7925, 4);
    expect(wax + scent).toBe(12.5);
    expect(sum).toBeGreaterThan(1000);
    expect(await tryout.page.getByRole("tab", { name: "Formulas", exact: true }).getAttribute("aria-selected")).toBe(
      "true",
    );
  });

  it("never takes a name or a table that is there", async () => {
    const before = (await host("sheetNames")) as string[];
    const name = await host("addSheet", sheetOf([], "vessels"));
    expect(before.map((one) => one.toLowerCase())).not.toContain(String(name).toLowerCase());
    const taken = {
      ...sheetOf([], "Taken"),
      tables: [{ name: "VESSELS", row: 0, column: 0, headings: ["a"], rows: 1 }],
    };
    expect(await host("addSheet", taken)).toMatch(/^rejected: A table "VESSELS"/);
    expect(await host("sheetNames")).toEqual([...before, name]);
  });

  it("leaves no sheet behind when writing fails half-way", async () => {
    const before = (await host("sheetNames")) as string[];
    const messages = await tryout.page.evaluate(async () => {
      const { host } = (window as unknown as { pourwright: { host: Host } }).pourwright;
      let reads = 0;
      /** Adds a sheet with a table whose headings can be read so many times; the last time is after the sheet is there. */
      const add = (name: string, good: number) => {
        reads = 0;
        const table = {
          name,
          row: 0,
          column: 0,
          rows: 1,
          get headings() {
            if (++reads > good) throw new Error("broken");
            return ["a"];
          },
        };
        return host.addSheet({ name, widths: [], cells: [], tables: [table] }).catch((fault: Error) => fault.message);
      };
      const written = await add("Whole", Number.POSITIVE_INFINITY);
      return [written, await add("Half", reads - 1)];
    });
    expect(messages).toEqual(["Whole", "broken"]);
    expect(await host("sheetNames")).toEqual([...before, "Whole"]);
    expect((await tryout.tables()).map(({ name }) => name)).not.toContain("Half");
  });

  it("writes texts as the texts they are, also after somebody has edited their cells", async () => {
    await host(
      "addSheet",
      sheetOf(
        TEXTS.map((text, i) => ({ row: 1 + i, column: 0, content: { text } })),
        "Texts",
      ),
    );
    const expected = TEXTS.map((text) => [text]);
    expect(await tryout.cells("Texts", 1, 0, TEXTS.length)).toEqual(expected);
    for (const text of ["=1+1", "-2", "'quoted", "12", "6%", "#N/A", "=POUR.FILLWEIGHT(1)"]) {
      await tryout.goTo(`A${2 + TEXTS.indexOf(text)}`);
      await tryout.page.keyboard.press("F2");
      await tryout.page.waitForTimeout(50);
      await tryout.page.keyboard.press("Enter");
    }
    expect(await tryout.cells("Texts", 1, 0, TEXTS.length)).toEqual(expected);
  });

  it("writes a thousand rows with formulas in well under ten seconds", async () => {
    const headings = ["Vessel", "Water (g)", "Fill (g)", "Scent (g)"];
    const cells: Cell[] = headings.map((text, column) => ({ row: 0, column, content: { text }, look: "heading" }));
    for (let row = 1; row <= 1000; row++) {
      cells.push({ row, column: 0, content: { text: `Vessel ${row}` }, look: "input" });
      cells.push({ row, column: 1, content: { number: row }, look: "input", format: "0.0" });
      cells.push({ row, column: 2, content: { formula: "=POUR.FILLWEIGHT(Many[[#This Row],[Water (g)]])" } });
      cells.push({ row, column: 3, content: { formula: "=POUR.SCENTPART(Many[[#This Row],[Fill (g)]],6%)" } });
    }
    const start = Date.now();
    await host("addSheet", {
      ...sheetOf(cells, "Many"),
      tables: [{ name: "Many", row: 0, column: 0, headings, rows: 1000 }],
    });
    expect(Date.now() - start).toBeLessThan(10_000);
    const { rows } = await tryout.table("Many");
    expect(rows).toHaveLength(1000);
    expect(rows[999]?.slice(0, 3)).toEqual(["Vessel 1000", 1000, 860]);
  });

  it("gives the selected range by its headings, and asks for one when a single cell is selected", async () => {
    await tryout.openSheet("Vessels");
    await tryout.goTo("A4:C6");
    expect(await host("selection")).toMatchObject({
      name: "",
      place: { sheet: "Vessels", row: 3, column: 0, rows: 3, columns: 3 },
      headings: ["Vessel", "Shape", "Water weight (g)"],
      rows: [
        ["Tea-light cup", expect.any(String), 17.5],
        [expect.any(String), expect.any(String), 68],
      ],
    });
    await tryout.goTo("A4");
    expect(await host("selection")).toMatch(/^rejected: Select the whole table/);
  });

  it("keeps settings in the workbook, through another one and back", async () => {
    const settings = { scale: 0.5, list: [1, { a: "b" }] };
    expect(await host("settings")).toBeNull();
    await host("keepSettings", settings);
    const choice = tryout.page.getByLabel("Sample workbook");
    const titles = await choice.locator("option").allTextContents();
    await choice.selectOption(titles[1] as string);
    expect(await host("settings")).not.toEqual(settings);
    await choice.selectOption(titles[0] as string);
    expect(await host("settings")).toEqual(settings);
  });

  it("calls back after edits and when another workbook is opened, and no more once stopped", async () => {
    const calls = () => tryout.page.evaluate(() => (window as unknown as { calls: number }).calls);
    await tryout.page.evaluate(() => {
      const page = window as unknown as { calls: number; stop: () => void; pourwright: { host: Host } };
      page.calls = 0;
      page.stop = page.pourwright.host.onChange(() => page.calls++);
    });
    await tryout.type("B40", "x");
    await expect.poll(calls, PATIENCE).toBeGreaterThan(0);
    await tryout.tables();
    await tryout.page.waitForTimeout(400);
    const edited = await calls();
    await tryout.page.getByLabel("Sample workbook").selectOption({ index: 1 });
    await expect.poll(calls, PATIENCE).toBeGreaterThan(edited);
    await tryout.tables();
    await tryout.page.waitForTimeout(400);
    const before = await calls();
    await tryout.page.evaluate(() => (window as unknown as { stop: () => void }).stop());
    await tryout.type("B40", "y");
    await tryout.page.waitForTimeout(400);
    expect(await calls()).toBe(before);
    await tryout.page.getByLabel("Sample workbook").selectOption({ index: 0 });
  });

  it("brings a far cell into view when it is selected", async () => {
    await host("select", { sheet: "Batch", row: 300, column: 20, rows: 1, columns: 1 });
    const box = tryout.page.locator("[data-u-comp=defined-name] input");
    await expect.poll(() => box.inputValue(), PATIENCE).toBe("U301");
    await tryout.page.keyboard.type("here", { delay: 5 });
    await tryout.page.keyboard.press("Enter");
    expect(await tryout.cells("Batch", 300, 20)).toEqual([["here"]]);
    expect(await host("select", { sheet: "Gone", row: 0, column: 0, rows: 1, columns: 1 })).toMatch(
      /^rejected: The sheet/,
    );
  });
});
