// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import { LOG_COLUMNS } from "../../src/runsheet/tables/runsLog";
import type { CellValue } from "../../src/sheet/sheet";
import { pouredPane } from "./pouredPane";
import { GOOD, type PourHost, plainOf, pouredBook, runSheet, SHEET } from "./pourHost";

describe("after the pour", () => {
  const { show, reopen, changed, press, pick, asked, alert, done, buttons, chosen, see, seeAll, text } = pouredPane();

  describe("the run sheet that the buttons act on", () => {
    it("is named on every button", async () => {
      const host = pouredBook();
      await show(host);
      const own = seeAll("[aria-labelledby=pane-written] .buttons button");
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
      expect(text()).toContain(`Lot 2026-330-01 also stands on ${SHEET}`);
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
      await reopen(host);
      await press("Write run sheet");
      expect(lots(host).at(-1)).toBe(`Run sheet 2026-331-04`);
    });

    it("count in a log that was renamed", async () => {
      const headings = LOG_COLUMNS.map(({ heading }) => heading);
      const row = headings.map((heading) => (heading === "Lot" ? "2026-331-06" : null));
      const host = pouredBook({ Pours: [headings, row] });
      await show(host);
      await press("Write run sheet");
      expect(lots(host)).toEqual([`Run sheet 2026-331-07`]);
    });
  });

  it("offers the loss that the log shows, and keeps it as the setting at a press", async () => {
    const headings = LOG_COLUMNS.map(({ heading }) => heading);
    const row = (lot: string, loss: number) =>
      headings.map(
        (heading) => ({ Lot: lot, Vessel: "Tin", Candles: 6, "Loss shown": loss })[heading as string] ?? null,
      );
    const host = pouredBook({ RunsLog: [headings, row("2026-329-01", 0.02), row("2026-329-02", 0.022)] });
    await show(host);
    expect(text()).toContain("2.1 % ± 1.3 % (95 %), from 2 pours");
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
      expect(see(".factors")?.textContent).toBe(
        "Tin: 0.875, from one pour: how sure is not known, so it is not offered yet; pour once more",
      );
      expect(buttons().filter((words) => words.startsWith("Change"))).toEqual([]);
      host.all.RunsLog = log(105, 105);
      await changed(host);
      const change = "Change Tin from 0.8333 to 0.875";
      expect(buttons()).toContain(change);
      const button = seeAll("button").find(({ textContent }) => textContent === change);
      expect(document.getElementById(button?.getAttribute("aria-describedby") ?? "")?.textContent).toBe(
        // 1.96 / sqrt(12) x sqrt(1 + 0.875 ^ 2) / 120: what a scale to 1 g rounds (GUM F.2.2.1).
        "Tin: 0.875 ± 0.0063 (95 %), from 2 pours",
      );
      host.all.RunsLog = log(102, 108, 123);
      await changed(host);
      expect(see(".factors")?.textContent).toMatch(/^Tin: 0\.875 ± .* not sure enough yet.*left out: 1\.025/);
      expect(buttons().filter((words) => words.startsWith("Change"))).toEqual([]);
    });
  });
});
