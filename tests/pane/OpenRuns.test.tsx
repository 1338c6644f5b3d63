// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import type { Kept } from "../../src/pane/state/kept";
import type { CellValue } from "../../src/sheet/sheet";
import { openPane } from "./openPane";
import { PourHost, runSheet } from "./pourHost";

// 970 of wax and 60 of Cedar go into ten tins, which the sheet melts as 972 and 58.
const ITEMS: CellValue[][] = [
  ["Item", "On hand (g)"],
  ["Wax", 1500],
  ["Cedar", 500],
  ["Tin", 100],
];
const LOT = "2026-330-01";
const NAME = `Run ${LOT}`;

/** A workbook with what is on hand, whose batch is the one of its one run sheet. */
function book(tins = 10) {
  const batch: CellValue[][] = [
    ["Vessel", "Quantity", "Fill weight (g)", "Scent"],
    ["Tin", tins, 100, "Cedar"],
  ];
  const host = new PourHost({ Batch: batch, Items: ITEMS });
  host.sheets.set(NAME, runSheet(LOT));
  return host;
}

/** Counts how often sheets are read. */
class CountingHost extends PourHost {
  reads: string[] = [];
  override async readSheet(name: string) {
    this.reads.push(name);
    return super.readSheet(name);
  }
}

describe("run sheets that are written and not logged", () => {
  const { show, changed, press, see, text } = openPane("pane-open-runs");
  const missing = () => [...(see("[aria-labelledby=pane-preview] ul[aria-labelledby]")?.children ?? [])];
  const said = () => [...(see("[aria-labelledby=pane-open-runs] ul")?.children ?? [])].map((one) => one.textContent);

  it("do not count the sheet of the batch itself, and say so", async () => {
    await show(book());
    expect(missing()).toEqual([]);
    expect(said()).toEqual([
      `Run ${LOT}, 2026-11-26: has the candles of this batch, so it is taken as its sheet and does not count on top.Count ${LOT} on top`,
    ]);
    await press(`Count ${LOT} on top`);
    // 1500 - 972 leaves 528 for 972.
    expect(missing().map(({ textContent }) => textContent)).toEqual(["Wax: 444 g missing, no pack known"]);
    expect(text()).toContain(`Wax: also planned: run ${LOT}, 972 g`);
  });

  it("count once the batch is another one, until they are left out or logged", async () => {
    const host = book(8);
    await show(host);
    expect(said()).toEqual([`Run ${LOT}, 2026-11-26 counts: Wax 972 g, Cedar 58 g, Tin 10.Leave ${LOT} out`]);
    expect(missing()).toHaveLength(1);
    await press(`Leave ${LOT} out`);
    expect(missing()).toEqual([]);
    expect(host.saved.at(-1)).toMatchObject({ counts: { [LOT]: false } });
    await press(`Count ${LOT}`);
    expect(missing()).toHaveLength(1);
    host.all.RunsLog = [
      ["Lot", "Vessel", "Scent", "Candles"],
      [LOT, "Tin", "Cedar", 10],
    ];
    await changed(host);
    expect(missing()).toEqual([]);
    expect(see("[aria-labelledby=pane-open-runs]")).toBeNull();
  });

  it("leave no answer behind once their sheet is gone", async () => {
    const host = book(8);
    const other = "2026-331-01";
    host.sheets.set(`Run ${other}`, runSheet(other));
    await show(host);
    await press(`Leave ${LOT} out`);
    expect(host.saved.at(-1)).toMatchObject({ counts: { [LOT]: false } });
    host.sheets.delete(NAME);
    await changed(host);
    await press(`Leave ${other} out`);
    expect((host.saved.at(-1) as Kept).counts).toEqual({ [other]: false });
  });

  it("stand for themselves when the batch is written anew", async () => {
    const host = book(8);
    await show(host);
    await press(`Rebuild: ${NAME}`);
    expect(host.saved.at(-1)).toMatchObject({ counts: { [LOT]: false } });
  });

  it("are said to count no more when the batch is written anew, unless they are logged: those counted no more before", async () => {
    const says = async (logged: CellValue[][]) => {
      const host = book(8);
      if (logged.length > 0) host.all.RunsLog = [["Lot", "Vessel", "Scent", "Candles", "Pots"], ...logged];
      await show(host);
      await press(`Rebuild: ${NAME}`);
      return text();
    };
    expect(await says([])).toContain(`${NAME} stays as it is and counts as planned no more.`);
    const whole = await says([[LOT, "Tin", "Cedar", 10, null]]);
    expect(whole).toContain(`${NAME} is logged and stays as it is: the new one is one more run.`);
    expect(whole).not.toContain("counts as planned no more");
    expect(await says([[LOT, "Tin", "Cedar", 4, "Fig pot 1 of 1"]])).toContain(
      `${NAME} stays as it is: what is logged of it stays logged, and its other pots count as planned no more.`,
    );
  });

  it("are read when they are new and while they are shown, and not at every change", async () => {
    const host = new CountingHost(book(8).all);
    host.sheets.set("Batch", [["Batch"]]);
    host.sheets.set(NAME, runSheet(LOT));
    await show(host);
    expect(host.reads).toEqual([NAME]);
    await changed(host);
    expect(host.reads).toEqual([NAME]);
    host.active = NAME;
    await changed(host);
    expect(host.reads).toEqual([NAME, NAME]);
  });

  it("are named where they cannot be read, and keep nobody from planning", async () => {
    const host = book(8);
    host.sheets.set("Run 2026-300-01", [["Run sheet 2026-300-01"]]);
    await show(host);
    expect(text()).toContain("Run 2026-300-01: not all of it can be read, so what it takes is counted short.");
    expect(said()).toHaveLength(1);
  });
});
