// @vitest-environment happy-dom
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { Pane } from "../../src/pane/Pane";
import { buildRun } from "../../src/runsheet/buildRun";
import { RUNS_LOG } from "../../src/runsheet/record/runsLog";
import { FIRST_SETTINGS } from "../../src/runsheet/settings";
import { describeRun } from "../../src/runsheet/sheet/describeRun";
import { AT } from "../../src/runsheet/sheet/layout";
import type { Addition } from "../../src/sheet/addition";
import type { CellValue, Content, Sheet } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";

Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });

const ROWS: CellValue[][] = [["Tin", 10, 100, "Cedar"]];
const BATCH: CellValue[][] = [["Vessel", "Quantity", "Fill weight (g)", "Scent"], ...ROWS];
const VESSELS: CellValue[][] = [
  ["Vessel", "Water weight (g)", "Wax factor"],
  ["Tin", 120, 0.8333],
];

const plainOf = (content: Content | null | undefined): CellValue => {
  if (!content) return null;
  return "text" in content ? content.text : "number" in content ? content.number : null;
};

/** A sheet's plain contents as its cells. */
function cellsOf({ cells }: Sheet): CellValue[][] {
  const rows = Array.from({ length: 1 + Math.max(...cells.map(({ row }) => row)) }, () =>
    Array<CellValue>(8).fill(null),
  );
  for (const { row, column, content } of cells) (rows[row] as CellValue[])[column] = plainOf(content);
  return rows;
}

/** The run sheet of a lot, in plain numbers: 10 tins of 100 g, 1030 melted. */
function runSheet(lot: string): CellValue[][] {
  const settings = { ...FIRST_SETTINGS, live: false };
  const pour = {
    type: "pour" as const,
    headings: [],
    rows: ROWS,
    columns: { vessel: 0, quantity: 1, fill: 2, scent: 3 },
  };
  return cellsOf(describeRun(buildRun({ pour }, settings), { lot, date: 46352, settings }));
}

/** A workbook with run sheets and a log, in which tabs are shown, renamed, copied and deleted. */
class PourHost extends FakeHost {
  readonly sheets = new Map<string, CellValue[][]>();
  /** What the next addition to the log meets. */
  onAdding: () => void = () => {};
  isDeaf = false;
  readonly appended: (readonly Addition[])[] = [];

  override async firstCells() {
    return [...this.sheets].map(([sheet, rows]) => ({ sheet, value: rows[0]?.[0] ?? null }));
  }
  override async sheetNames() {
    return [...this.sheets.keys()];
  }
  override async readSheet(name: string) {
    return (this.sheets.get(name) ?? []).map((row) => [...row]);
  }
  override async addSheet(sheet: Sheet) {
    this.sheets.set(sheet.name, cellsOf(sheet));
    return super.addSheet(sheet);
  }
  /** All or nothing: what is refused is refused before anything changes. */
  override async append(additions: readonly Addition[]) {
    this.onAdding();
    if (this.isDeaf) return;
    const after = additions.map((one): [string, CellValue[][]] => {
      if (!("table" in one)) return [one.tables?.[0]?.name ?? "", cellsOf(one)];
      const { table, headings, rows } = one;
      const [known = [], ...old] = this.all[table] ?? [];
      const missing = headings.find((heading) => !known.includes(heading));
      if (missing) throw new Error(`The table ${table} has no column "${missing}".`);
      return [
        table,
        [known, ...old, ...rows.map((row) => known.map((heading) => plainOf(row[headings.indexOf(String(heading))])))],
      ];
    });
    Object.assign(this.all, Object.fromEntries(after));
    this.appended.push(additions);
  }
  /** Types into a cell of a run sheet: the first row of its one vessel, or an ingredient. */
  type(sheet: string, key: "1 vessel" | "1 wax" | "1 scent", column: number, value: CellValue): void {
    const row = this.sheets.get(sheet)?.find((cells) => cells[AT.key] === key);
    if (!row) throw new Error(`no ${key} on ${sheet}`);
    row[column] = value;
  }
  log(table: string = RUNS_LOG.table): Record<string, CellValue>[] {
    const [headings = [], ...rows] = this.all[table] ?? [];
    return rows.map((row) => Object.fromEntries(headings.map((heading, i) => [String(heading), row[i] ?? null])));
  }
}

const [GOOD, ACTUAL, WEIGHED] = [4, 4, 5];
const SHEET = "Run 2026-330-01";

/** A workbook whose one run was poured and written down as planned, but for what the test changes. */
function pouredBook(tables: Record<string, CellValue[][]> = {}): PourHost {
  const host = new PourHost({ Batch: BATCH, Vessels: VESSELS, ...tables });
  host.sheets.set("Batch", [["Batch"]]);
  host.sheets.set(SHEET, runSheet("2026-330-01"));
  host.type(SHEET, "1 wax", ACTUAL, 972);
  host.type(SHEET, "1 scent", ACTUAL, 58);
  host.type(SHEET, "1 vessel", GOOD, 10);
  host.type(SHEET, "1 vessel", WEIGHED, 100);
  return host;
}

describe("after the pour", () => {
  let root: Root;
  let element: HTMLElement;
  beforeEach(() => {
    // Day 331 of 2026, so that no test runs over midnight.
    vi.useFakeTimers({ toFake: ["Date"], now: new Date(2026, 10, 27, 12) });
    element = document.body.appendChild(document.createElement("div"));
    root = createRoot(element);
  });
  afterEach(async () => {
    await act(async () => root.unmount());
    element.remove();
    vi.useRealTimers();
  });

  const wait = (ms = 0) => act(() => new Promise((done) => setTimeout(done, ms)));
  const show = async (host: PourHost) => {
    await act(async () => root.render(<Pane host={host} />));
    await wait();
  };
  /** Waits until the pane has followed a change. */
  const changed = async (host: PourHost) => {
    host.changed();
    await wait(300);
  };
  const buttons = () => [...element.querySelectorAll("button")].map(({ textContent }) => textContent ?? "");
  const press = async (words: string) => {
    const found = [...element.querySelectorAll("button")].find(({ textContent }) => textContent === words);
    if (!found) throw new Error(`no button ${words} among ${buttons().join(", ")}`);
    await act(async () => found.click());
    await wait();
  };
  const asked = () =>
    [...(element.querySelector("[aria-labelledby=pane-written] [role=status]")?.querySelectorAll("p, li") ?? [])].map(
      ({ textContent }) => textContent ?? "",
    );
  /** Logs a pour: what it adds is shown at the first press and added at the second. */
  const logPour = async (sheet = SHEET, anyway = false) => {
    await press(`Log this pour: ${sheet}`);
    await press(`${anyway ? "Log anyway" : "Add these rows"}: ${sheet}`);
  };
  const alert = () => element.querySelector("footer [role=alert]")?.textContent ?? "";
  const done = () => element.querySelector("footer [role=status]")?.textContent ?? "";
  const pick = async (name: string) => {
    const field = chosen() as HTMLSelectElement;
    await act(async () => {
      field.value = name;
      field.dispatchEvent(new Event("change", { bubbles: true }));
    });
  };
  const chosen = () => {
    const label = [...element.querySelectorAll("label")].find(({ textContent }) => textContent === "Run sheet");
    return label ? (document.getElementById(label.htmlFor) as HTMLSelectElement) : undefined;
  };

  describe("logging", () => {
    it("says what became of the wax, and logs a lot once", async () => {
      const host = pouredBook();
      host.type(SHEET, "1 vessel", WEIGHED, 100.4);
      await show(host);
      await logPour();
      expect(done()).toContain("Lot 2026-330-01 is in the runs log now, 1 row.");
      // 1030 melted, 10 x 100.4 poured: 1030 / 1004 - 1 = 2.6 %.
      expect(asked()).toEqual([
        "Lot 2026-330-01, what became of the wax:",
        "Cedar: pot 1 of 1: melted 1030 g, poured 1004 g: loss 2.6 %, planned 3 % (taken: 10 x Tin by the one weighed, 100.4 g each)",
      ]);
      expect(host.log()).toHaveLength(1);
      expect(host.log()[0]?.Remarks).toContain("melted 1030 g, poured 1004 g: loss 2.6 %, planned 3 %");
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toContain("Lot 2026-330-01 is in the runs log already");
      expect(host.log()).toHaveLength(1);
    });

    it("asks once about what is unchanged", async () => {
      const host = pouredBook();
      host.type(SHEET, "1 vessel", WEIGHED, 122);
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(asked()[0]).toBe("Nothing is logged yet. Check these first:");
      expect(asked()[1]).toContain("Was it weighed with its vessel?");
      expect(host.log()).toEqual([]);
      await press(`Log anyway: ${SHEET}`);
      expect(host.log()).toHaveLength(1);
      expect(host.log()[0]).toMatchObject({ "Weighed each": 122, "Wax factor shown": null });
      expect(buttons()).not.toContain(`Log anyway: ${SHEET}`);
    });

    it("asks anew when something else is odd by the time it is pressed for", async () => {
      const host = pouredBook();
      host.type(SHEET, "1 vessel", GOOD, null);
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(asked()[0]).toBe("Nothing is logged yet. Check these first:");
      host.type(SHEET, "1 wax", ACTUAL, 9720);
      await press(`Log anyway: ${SHEET}`);
      expect(host.log()).toEqual([]);
      expect(asked()[0]).toBe("This has changed since it was shown. Nothing is logged yet. Check these first:");
      expect(asked().slice(1).join()).toContain("9720 g and was planned as 972 g");
      host.type(SHEET, "1 wax", ACTUAL, 972);
      host.type(SHEET, "1 vessel", GOOD, 10);
      await press(`Log anyway: ${SHEET}`);
      expect(host.log()).toEqual([]);
      await press(`Add these rows: ${SHEET}`);
      expect(host.log()).toHaveLength(1);
      expect(host.log()[0]).toMatchObject({ Good: 10, "Wax actual": 972 });
    });

    it("compares nothing with a sheet whose weights are not worked out", async () => {
      const host = pouredBook();
      host.type(SHEET, "1 wax", 3, { error: "#VALUE!" });
      await show(host);
      await press(`What has changed since: ${SHEET}`);
      const [says, ...list] = asked();
      expect(says).toBe(`Nothing is compared while ${SHEET} has cells to fix:`);
      expect(list).toEqual([expect.stringMatching(/^Row \d+, to weigh: "#VALUE!" is no number of 0 or more; fix it$/)]);
    });

    it("refuses what cannot be, and says which row", async () => {
      const host = pouredBook();
      host.type(SHEET, "1 vessel", GOOD, 11);
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toMatch(/^Nothing is logged\. Row \d+, good candles: 11 are more than the count of 10;/);
      expect(host.log()).toEqual([]);
    });

    it("says so when the spreadsheet refuses, and can be pressed for again", async () => {
      const host = pouredBook({ [RUNS_LOG.table]: [RUNS_LOG.columns.map(({ heading }) => heading)] });
      host.onAdding = () => {
        throw new Error("Excel is busy; leave the cell, then try again.");
      };
      await show(host);
      await logPour();
      expect(alert()).toBe("Excel is busy; leave the cell, then try again.");
      expect(done()).toBe("");
      host.onAdding = () => {};
      await logPour();
      expect(host.log()).toHaveLength(1);
      expect(alert()).toBe("");
    });

    it("never says logged when the rows do not stand there", async () => {
      const host = pouredBook({ [RUNS_LOG.table]: [RUNS_LOG.columns.map(({ heading }) => heading)] });
      host.isDeaf = true;
      await show(host);
      await logPour();
      expect(alert()).toContain("Lot 2026-330-01 was added to the runs log and does not stand there.");
      expect(done()).toBe("");
      expect(asked()).toEqual([]);
    });

    it("says it is logged also when the log cannot be read again", async () => {
      const host = pouredBook();
      host.onAdding = () => {
        host.held.tables = Promise.reject(new Error("Excel is busy."));
      };
      await show(host);
      await logPour();
      expect(done()).toBe("Lot 2026-330-01 is in the runs log now, 1 row. It could not be read again: Excel is busy.");
    });

    it("goes on with a log that was begun with other words, renamed and sorted", async () => {
      const headings = RUNS_LOG.columns.map(({ heading }) =>
        heading === "Load as weighed (of wax)" ? "Real load of wax" : heading,
      );
      const host = pouredBook({ Pours2026: [["My note", ...headings.reverse()]] });
      await show(host);
      await logPour();
      expect(host.added).toEqual([]);
      expect(host.log("Pours2026")[0]).toMatchObject({ "My note": null, Lot: "2026-330-01", Vessel: "Tin" });
      expect(host.log("Pours2026")[0]?.["Real load of wax"]).toBeCloseTo(58 / 972, 12);
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toContain("is in the runs log already");
    });
  });

  describe("logging beside a table of moves", () => {
    const LOT_USED = 5;
    const MOVES: CellValue[][] = [
      ["Date", "Item", "Lot", "Change (g)", "Run", "Note"],
      [46300, "Wax", "W-1", 5000, null, null],
      [46310, "Wax", "W-2", 5000, null, null],
      [46310, "Cedar", "C-1", 500, null, null],
    ];
    const book = () => pouredBook({ Moves: MOVES.map((row) => [...row]) });
    const moved = (host: PourHost) => (host.all.Moves ?? []).slice(4).map((row) => row.slice(1));

    it("shows rows and lots first, and adds them to both in one step", async () => {
      const host = book();
      host.type(SHEET, "1 wax", LOT_USED, "W-2");
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(host.appended).toEqual([]);
      expect(asked()).toEqual([
        "Runs log, a new table, with 1 row:",
        "Cedar, Tin: 10 candles, 10 good, wax 972 g, scent 58 g",
        "3 rows to add to Moves:",
        "Wax, lot W-2: -972 g",
        "Cedar, lot C-1: -58 g",
        "Tin, no lot: -10",
        "About the lots:",
        "no lot written for Cedar: the oldest, C-1, is taken",
        "Tin: nothing is on hand by the moves, so its row has no lot",
      ]);
      await press(`Add these rows: ${SHEET}`);
      expect(host.appended).toHaveLength(1);
      expect(host.log()).toHaveLength(1);
      expect(moved(host)).toEqual([
        ["Wax", "W-2", -972, "2026-330-01", null],
        ["Cedar", "C-1", -58, "2026-330-01", null],
        ["Tin", null, -10, "2026-330-01", null],
      ]);
      expect(done()).toBe("Lot 2026-330-01 is in the runs log now, 1 row, and in the moves, 3 rows.");
    });

    it("corrects a lot that was not the one in the moves alone", async () => {
      const host = book();
      await show(host);
      await logPour();
      host.type(SHEET, "1 wax", LOT_USED, "W-2");
      await press(`Log this pour: ${SHEET}`);
      expect(asked()[0]).toContain("Its sheet says something else now.");
      await press(`Add this correction: ${SHEET}`);
      expect(host.log()).toHaveLength(1);
      expect(moved(host).slice(3)).toEqual([
        ["Wax", "W-1", 972, "2026-330-01", "correction"],
        ["Wax", "W-2", -972, "2026-330-01", "correction"],
      ]);
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toContain("is in the runs log already");
    });

    it("asks a maker without one nothing, and begins one in the same step where it is wanted", async () => {
      const host = pouredBook();
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(asked().filter((line) => line.includes("lot"))).toEqual([]);
      expect(asked().at(-1)).toBe("No Moves table is here, so no stock is counted down.");
      await press(`Begin a Moves table with it: ${SHEET}`);
      expect(asked()).toContain("Moves, a new table, with 3 rows:");
      expect(host.appended).toEqual([]);
      await press(`Add these rows: ${SHEET}`);
      expect(host.appended).toHaveLength(1);
      expect((host.all.Moves ?? [])[0]).toEqual(expect.arrayContaining(["Date", "Item", "Lot", "Change (g)"]));
    });

    it("refuses moves that it cannot add to, and logs nothing", async () => {
      const host = book();
      host.all.Moves = MOVES.map((row) => row.map((cell) => (cell === "Change (g)" ? "Change (ml)" : cell)));
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toMatch(/^Nothing can be added to Moves: The heading Change \(ml\) says/);
      host.all.Moves = MOVES.map((row) => row.map((cell) => (cell === "Lot" ? "Colour" : cell)));
      await press(`Log this pour: ${SHEET}`);
      expect(alert()).toMatch(/^Moves has no column for Lot\./);
      expect(host.appended).toEqual([]);
    });
  });

  describe("the run sheet that the buttons act on", () => {
    it("is named on every button", async () => {
      const host = pouredBook();
      await show(host);
      const own = [...element.querySelectorAll("[aria-labelledby=pane-written] .buttons button")];
      expect(own.length).toBeGreaterThan(3);
      for (const { textContent } of own) expect(textContent).toMatch(/: Run 2026-330-01$/);
    });

    it("is the newest by its lot, whatever the order of the tabs and their names", async () => {
      const host = pouredBook();
      host.sheets.set("Run 2026-330-09", [["my own notes"]]);
      host.sheets.set("Cedar, sold", runSheet("2026-330-02"));
      host.sheets.set("Run 2026-329-01", runSheet("2026-329-01"));
      await show(host);
      expect([...(chosen()?.options ?? [])].map(({ value }) => value)).toEqual([
        "Run 2026-329-01",
        SHEET,
        "Cedar, sold",
      ]);
      expect(buttons()).toContain("Log this pour: Cedar, sold");
    });

    it("is the one in front, else the one that was in front or picked last", async () => {
      const host = pouredBook();
      host.active = "Batch";
      for (const run of ["02", "03"]) host.sheets.set(`Run 2026-330-${run}`, runSheet(`2026-330-${run}`));
      const shows = async (name: string) => {
        host.active = name;
        await changed(host);
        return chosen()?.value;
      };
      await show(host);
      expect(chosen()?.value).toBe("Run 2026-330-03");
      expect(await shows(SHEET)).toBe(SHEET);
      expect(buttons()).toContain(`Log this pour: ${SHEET}`);
      expect(await shows("Batch")).toBe(SHEET);
      await pick("Run 2026-330-02");
      expect(await shows("Batch")).toBe("Run 2026-330-02");
      expect(await shows(SHEET)).toBe(SHEET);
      await pick("Run 2026-330-02");
      await changed(host);
      expect(chosen()?.value).toBe("Run 2026-330-02");
      // A tab that is renamed while it is in front stays the one.
      host.sheets.set("Sold", host.sheets.get("Run 2026-330-02") as CellValue[][]);
      host.sheets.delete("Run 2026-330-02");
      expect(await shows("Sold")).toBe("Sold");
      await press("Log this pour: Sold");
      expect(alert()).toContain("Nothing is written on Sold yet");
    });

    it("takes the question about another sheet with it", async () => {
      const host = pouredBook();
      host.sheets.set("Run 2026-330-02", runSheet("2026-330-02"));
      host.active = SHEET;
      host.type(SHEET, "1 vessel", GOOD, null);
      await show(host);
      await press(`Log this pour: ${SHEET}`);
      expect(buttons()).toContain(`Log anyway: ${SHEET}`);
      host.active = "Run 2026-330-02";
      await changed(host);
      expect(buttons().filter((words) => words.startsWith("Log anyway"))).toEqual([]);
      expect(asked()).toEqual([]);
    });

    it("is said to have a copy, and asked about before it is logged", async () => {
      const host = pouredBook();
      await show(host);
      const copy = host.sheets.get(SHEET)?.map((row) => [...row]) as CellValue[][];
      host.sheets.set(`${SHEET} (2)`, copy);
      await changed(host);
      expect(element.textContent).toContain(`Lot 2026-330-01 also stands on ${SHEET}`);
      await press(`Log this pour: ${chosen()?.value}`);
      expect(asked()[1]).toContain("carries the same lot, 2026-330-01");
      expect(host.log()).toEqual([]);
      await press(`Log anyway: ${chosen()?.value}`);
      expect(host.log()).toHaveLength(1);
    });
  });

  describe("lots", () => {
    const lots = (host: PourHost) => host.added.map(({ cells }) => plainOf(cells[0]?.content));
    it("are never given twice: of a renamed, a copied or a deleted sheet, nor of the log", async () => {
      const host = pouredBook();
      await show(host);
      await press("Write run sheet");
      const first = host.sheets.get(`Run 2026-331-01`) as CellValue[][];
      host.sheets.delete(`Run 2026-331-01`);
      host.sheets.set("Cedar, sold", first);
      await changed(host);
      await press("Write run sheet");
      host.sheets.delete(`Run 2026-331-02`);
      await changed(host);
      await press("Write run sheet");
      expect(lots(host)).toEqual(["01", "02", "03"].map((run) => `Run sheet 2026-331-${run}`));
      // A workbook that was opened anew still knows what was given last.
      expect(host.saved.at(-1)).toMatchObject({ lots: [`2026-331-03`] });
      host.sheets.delete("Cedar, sold");
      host.sheets.delete(`Run 2026-331-03`);
      host.kept = host.saved.at(-1);
      await act(async () => root.unmount());
      root = createRoot(element);
      await show(host);
      await press("Write run sheet");
      expect(lots(host).at(-1)).toBe(`Run sheet 2026-331-04`);
    });

    it("count in a log that was renamed", async () => {
      const headings = RUNS_LOG.columns.map(({ heading }) => heading);
      const row = headings.map((heading) => (heading === "Lot" ? "2026-331-06" : null));
      const host = pouredBook({ Pours: [headings, row] });
      await show(host);
      await press("Write run sheet");
      expect(lots(host)).toEqual([`Run sheet 2026-331-07`]);
    });
  });

  it("offers the loss that the log shows, and keeps it as the setting at a press", async () => {
    const headings = RUNS_LOG.columns.map(({ heading }) => heading);
    const row = (lot: string, loss: number) =>
      headings.map(
        (heading) => ({ Lot: lot, Vessel: "Tin", Candles: 6, "Loss shown": loss })[heading as string] ?? null,
      );
    const host = pouredBook({ RunsLog: [headings, row("2026-329-01", 0.02), row("2026-329-02", 0.022)] });
    await show(host);
    expect(element.textContent).toContain("2.1 % ± 1.3 % (95 %), from 2 pours");
    await press("Change the loss from 3 % to 2.1 %");
    expect(host.saved.at(-1)).toMatchObject({ typed: { loss: "2.1%" } });
    expect(done()).toContain("is 2.1 % now");
    expect(buttons().filter((words) => words.startsWith("Change the loss"))).toEqual([]);
  });

  describe("the wax factors", () => {
    const log = (...weighed: number[]): CellValue[][] => [
      ["Lot", "Vessel", "Weighed each", "Water weight"],
      ...weighed.map((weight, i): CellValue[] => [`2026-329-0${i + 1}`, "Tin", weight, 120]),
    ];

    it("are offered with a word on how sure they are, and not while they are not", async () => {
      const host = pouredBook({ RunsLog: log(105) });
      await show(host);
      const change = "Change Tin from 0.8333 to 0.875";
      expect(buttons()).toContain(change);
      const button = [...element.querySelectorAll("button")].find(({ textContent }) => textContent === change);
      expect(document.getElementById(button?.getAttribute("aria-describedby") ?? "")?.textContent).toBe(
        "Tin: 0.875, from one pour: how sure is not known; pour once more",
      );
      host.all.RunsLog = log(102, 108, 123);
      await changed(host);
      expect(element.querySelector(".factors")?.textContent).toMatch(
        /^Tin: 0\.875 ± .* not sure enough yet.*left out: 1\.025/,
      );
      expect(buttons().filter((words) => words.startsWith("Change"))).toEqual([]);
    });
  });
});
