// @vitest-environment happy-dom
import { act } from "react";
import { describe, expect, it } from "vitest";
import type { CellValue } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";
import { openPane } from "./openPane";

const TESTS = ["Test", "Vessel", "Inside width (mm)", "Wick", "Wax", "Scent", "Load (% of wax)", "Cure days"];
const LOOKS = [
  ...["Test", "Cycle", "Minutes", "Weight (g)", "Flame (mm)", "Pool (mm)", "Wax left (mm)", "Soot"],
  "Glass temperature (C)",
];

/** A candle burnt in one cycle to its end, losing so much an hour. All invented. */
function burnt(test: string, rate: number, flame = 30): CellValue[][] {
  return [0, 60, 120, 180, 240].map((minutes, i) => {
    const weight = minutes === 0 || minutes === 240 ? 300 - (rate * minutes) / 60 : null;
    if (i === 0) return [test, 1, 0, weight, null, null, null, null, null];
    const end = i === 4;
    return [test, 1, minutes, weight, flame, [25, 50, 70, 70][i - 1] as number, end ? 10 : null, "none", 45];
  });
}
const candle = (test: string, wick: string, vessel = "Bowl"): CellValue[] => [
  ...[test, vessel, 70, wick, "Soft wax", "Rain", 0.06, 14],
];

function workbook() {
  return new FakeHost({
    BurnTests: [
      TESTS,
      candle("A", "Size 6"),
      candle("B", "Size 6"),
      candle("C", "Size 6"),
      candle("D", "Size 9"),
      candle("E", "Size 4", "Cup"),
    ],
    Readings: [LOOKS, ...burnt("A", 5), ...burnt("B", 5.4), ...burnt("C", 4.9), ...burnt("D", 9, 80)],
  });
}

describe("reading a series in the pane", () => {
  const { show, changed, press, buttons, done, alert, section } = openPane("pane-seen", "tests");
  const figures = (wick: number) =>
    Object.fromEntries(
      [...(section().querySelectorAll(".figures")[wick]?.children ?? [])].map((one) => [
        one.querySelector("dt")?.textContent,
        one.querySelector("dd")?.textContent,
      ]),
    );

  it("says where nothing is there yet", async () => {
    await show(new FakeHost({}));
    expect(section().textContent).toContain("No burn test stands in the tables yet");
  });

  it("shows each series, the last one first, and by wick what was seen in how many candles", async () => {
    await show(workbook());
    expect([...section().querySelectorAll("h3")].map(({ textContent }) => textContent)).toEqual([
      "Cup, Soft wax, Rain 6 % of wax, cured 14 days",
      "Bowl, Soft wax, Rain 6 % of wax, cured 14 days",
    ]);
    expect(section().textContent).toContain("Nothing is read yet: burn a first cycle");
    expect([...section().querySelectorAll("h4")].map(({ textContent }) => textContent)).toEqual(["Size 6", "Size 9"]);
    // Mean of 5, 5.4 and 4.9 is 5.1; Student's half is 4.303 * 0.26458 / sqrt(3) = 0.657.
    expect(figures(0)).toEqual({
      "Burn rate": "5.1 g an hour, 95 % interval 4.44 to 5.76",
      "Highest flame": "30 mm",
      "Melt pool, of the inside width": "1 h 36 %, 2 h 71 %, 3 h 100 %, 4 h 100 %",
      Soot: "none",
      // 0.05 ^ (1 / 3) = 0.368.
      Passed: "3 of 3 judged; 36 % or more of all, at 95 % confidence",
      "Burns down in": "4 h, no interval; by 3 candles burnt until 10 mm of wax were left",
      "To be surer": "3 more candles of Size 6: if none shows a fault, up to 40 % could still have one",
    });
    expect(figures(1)["Burn rate"]).toBe("9 g an hour, no interval: it takes two candles that differ");
    const said = section().textContent ?? "";
    expect(said).toContain(
      "nothing beyond the limits seen in 3 of 3; a fault in up to 64 % of all is still possible (95 % confidence)",
    );
    expect(said).toContain("beyond the limits in 1 of 1: D, cycle 1 at 60 min: flame 80 mm high");
    expect(said).not.toMatch(/\bsafe\b/i);
  });

  const series = () => [...section().querySelectorAll<HTMLDetailsElement>("details.series")];
  const open = () => series().map((one) => one.open);

  it("opens the last series of which anything is read, and leaves what the maker opens or shuts so", async () => {
    const host = workbook();
    await show(host);
    expect(open()).toEqual([false, true]);
    const toggle = async (at: number, to: boolean) => {
      const one = series()[at] as HTMLDetailsElement;
      one.open = to;
      await act(async () => one.dispatchEvent(new Event("toggle")));
    };
    await toggle(1, false);
    await toggle(0, true);
    await press("Plan");
    await press("Tests");
    expect(open()).toEqual([true, false]);
    await changed(host);
    expect(open()).toEqual([true, false]);
  });

  it("shows wicks by name, their numbers by size", async () => {
    const host = workbook();
    for (const [i, wick] of ["Size 10", "Size 9", "Size 10", "Size 6"].entries()) {
      (host.all.BurnTests?.[i + 1] as CellValue[])[3] = wick;
    }
    await show(host);
    const named = ["Size 6", "Size 9", "Size 10"];
    expect([...section().querySelectorAll("h4")].map(({ textContent }) => textContent)).toEqual(named);
    const words = section().querySelector("svg")?.getAttribute("aria-label") ?? "";
    expect(named.map((name) => words.indexOf(`${name}:`)).every((at, i, all) => at > (all[i - 1] ?? 0))).toBe(true);
  });

  it("asks whether wicks are one whose names are nearly alike, and reads each by itself", async () => {
    const host = workbook();
    (host.all.BurnTests?.[2] as CellValue[])[3] = "size-6";
    await show(host);
    expect(section().textContent).toContain(
      "Size 6 and size-6: one wick, or two? Each is read by itself; spell it alike if it is one.",
    );
    expect([...section().querySelectorAll("h4")].map(({ textContent }) => textContent)).toEqual([
      "Size 6",
      "Size 9",
      "size-6",
    ]);
  });

  it("draws a ring for each candle and a bar for each interval, and says the same in words", async () => {
    await show(workbook());
    const [picture] = section().querySelectorAll("svg");
    expect(picture?.querySelectorAll("circle")).toHaveLength(4);
    expect(picture?.querySelectorAll(".interval")).toHaveLength(1);
    expect(picture?.getAttribute("aria-label")).toBe(
      "Burn rate, g an hour. Size 6: 5.1, 95 % interval 4.44 to 5.76; candles 5, 5.4, 4.9. Size 9: 9, no interval; candles 9.",
    );
    // In its order along the axis: B lost the most, C the least of size 6.
    const places = [...(picture?.querySelectorAll("circle") ?? [])].map((ring) => Number(ring.getAttribute("cx")));
    expect([...places].sort((a, b) => a - b)).toEqual([places[2], places[0], places[1], places[3]]);
  });

  it("offers to approve a wick whose candles were within the limits, and no other", async () => {
    const host = workbook();
    host.all.Vessels = [
      ["Vessel", "Water weight (g)", "Wick"],
      ["Bowl", 30, null],
    ];
    host.all.BurnTests = (host.all.BurnTests as CellValue[][]).slice(0, 5);
    await show(host);
    expect(buttons().filter((words) => words.startsWith("Approve"))).toEqual(["Approve Size 6 for Bowl"]);
    await press("Approve Size 6 for Bowl");
    expect(host.wrote.map(({ cells }) => cells)).toEqual([
      [{ row: 4 + Object.keys(host.all).indexOf("Vessels"), column: 2, content: { text: "Size 6" } }],
    ]);
    expect(done()).toContain("Size 6 stands in Vessels as the wick of Bowl, for what was burnt: 3 candles in Soft wax");
    (host.all.Vessels[1] as CellValue[])[2] = "Size 6";
    await changed(host);
    expect(section().textContent).toContain("Size 6 stands in Vessels as the wick of Bowl.");
    expect(buttons().filter((words) => words.startsWith("Approve"))).toEqual([]);
  });

  it("asks first what is doubtful of it, beside the press", async () => {
    const host = workbook();
    host.all.Vessels = [
      ["Vessel", "Water weight (g)", "Wick"],
      ["Bowl", 30, "Size 4"],
    ];
    // What is wrong with the batch keeps no wick from being approved, and nothing from being said of it.
    host.all.Batch = [
      ["Vessel", "Quantity"],
      ["Bowl", "four"],
    ];
    await show(host);
    await press("Approve Size 6 for Bowl");
    expect(host.wrote).toEqual([]);
    expect(section().textContent).toContain(
      "Before Size 6 is approved, check these:Size 4 stands there as the wick of Bowl, and would be replaced",
    );
    await press("Approve Size 6 for Bowl anyway");
    expect(host.wrote).toHaveLength(1);
    expect(done()).toContain("Size 6 stands in Vessels as the wick of Bowl");
  });

  it("says why a wick is not offered that failed under another spelling", async () => {
    const host = workbook();
    const spelt = ["2 x Size 6", "2 x Size 6", "2 x Size 6", "Size 6 (2)"];
    for (const [i, wick] of spelt.entries()) (host.all.BurnTests?.[i + 1] as CellValue[])[3] = wick;
    await show(host);
    expect(buttons().filter((words) => words.startsWith("Approve"))).toEqual([]);
    expect(section().textContent).toContain(
      "2 x Size 6 cannot be approved for Bowl: D, cycle 1 at 60 min: flame 80 mm",
    );
  });

  it("follows a changed reading, and names readings of tests that no row knows", async () => {
    const host = workbook();
    await show(host);
    host.all.Readings = [...(host.all.Readings as CellValue[][]), ...burnt("F", 5)];
    (host.all.Readings?.[2] as CellValue[])[4] = 90;
    await changed(host);
    expect(section().textContent).toContain("F: readings, and no row in BurnTests.");
    expect(section().textContent).toContain("beyond the limits in 1 of 3: A, cycle 1 at 60 min: flame 90 mm high");
  });

  it("writes a series on a sheet of its own by a press, by the tables as they are then", async () => {
    const host = workbook();
    await show(host);
    await press("Write on a sheet");
    const [sheet] = host.added;
    expect(sheet?.name).toBe("Series Cup");
    expect(done()).toBe("Written: Series Cup. It follows the readings.");
    const formulas = sheet?.cells.flatMap(({ content }) => (content && "formula" in content ? content.formula : []));
    for (const name of ["BURNCHECK", "BURNRATE", "WICKCOMPARE", "PASSBOUND"]) {
      expect(formulas?.some((formula) => formula.includes(`POUR.${name}(`))).toBe(true);
    }
    // Excel takes formulas of at most 8,192 characters.
    expect(Math.max(...(formulas ?? []).map(({ length }) => length))).toBeLessThan(8192);
    host.all.BurnTests = [TESTS, candle("A", "Size 6")];
    await press("Write on a sheet");
    expect(alert()).toBe("The tables have changed: this series is not there any more. Look again.");
    expect(host.added).toHaveLength(1);
  });

  it("says what keeps formulas from following, and writes nothing", async () => {
    const host = workbook();
    host.all.Readings?.[0]?.splice(5, 1, "Pool");
    await show(host);
    await press("Write on a sheet");
    expect(alert()).toBe("Pool: the heading names no unit of length; write mm, cm or in there");
    expect(host.added).toEqual([]);
  });

  it("says which column is missing, and that no table of readings is there", async () => {
    const tests = workbook().all.BurnTests as CellValue[][];
    await show(new FakeHost({ BurnTests: tests.map((row) => row.filter((_, i) => i !== 3)) }));
    expect(section().textContent).toContain("BurnTests has no column for Wick.");
    expect(section().textContent).toContain("No table of readings is chosen");
  });
});
