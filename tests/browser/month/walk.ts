import type { Locator } from "playwright-core";
import { expect } from "vitest";
import { AT, kindOfKey, lotIn, type RowKind, type SheetColumn } from "../../../src/runsheet/sheet/layout";
import { columnLetters } from "../../../src/sheet/columnLetters";
import type { CellValue } from "../../../src/sheet/sheet";
import { PATIENCE, type TryoutPage } from "../page";
import type { PlainSums } from "../plainSums";
import { monthByHand } from "./byHand";
import { type Line, NO_LOT, type Receipt, type Weighed } from "./month";
import { FIRST, LOOKS, PACKS, SCENTS, SHELF, VESSELS } from "./studio";

/** What is done in the page on the way through the month, and compared with the second calculation. */
export function monthWalk(tryout: TryoutPage) {
  const pane = (): Locator => tryout.page.locator(".pourwright-pane");
  const press = (name: string) => tryout.press(name);
  const says = (text: string | RegExp) => pane().getByText(text).first().waitFor();
  const tab = (name: string) => tryout.page.getByRole("tab", { name, exact: true }).waitFor();
  const setting = async (label: string, text: string) => {
    await tryout.openSettings();
    await pane().locator(".settings").getByLabel(label, { exact: true }).fill(text);
  };
  const choose = async (label: string, value: string) => {
    await tryout.openSettings();
    await pane().locator(".settings").getByLabel(label, { exact: true }).selectOption(value);
  };
  const receiving = (label: string) =>
    pane().getByRole("region", { name: "Receiving" }).getByLabel(label, { exact: true });
  /** What the second calculation knows of so far. */
  const runs: { run: string; date: number }[] = [];
  const lines: Line[] = [];
  const weighed: Weighed[] = [];
  const receipts: Receipt[] = [...FIRST, ...SHELF];
  let hand: PlainSums;

  /** The tables in a new calculation. */
  const calculate = (): void => {
    const [first = NO_LOT, second = NO_LOT] = runs.map(({ run }) => run);
    hand = monthByHand({
      studio: { loss: 0.03, waxFactor: 0.86, labourMinutes: 3, labourRate: 20 },
      ...{ vessels: VESSELS, scents: SCENTS, packs: PACKS, receipts, runs, lines, weighed },
      looks: LOOKS.map((date, i) => ({ date, run: [first, second, second, NO_LOT][i] as string })),
      shopping: 1,
    });
  };

  /** Writes under these headings, from a row of the sheet on, beside what other columns hold. */
  const fillIn = async (table: string, row: number, rows: readonly Readonly<Record<string, string | number>>[]) => {
    await tryout.openSheet(table);
    const { headings } = await tryout.table(table);
    const named = Object.keys(rows[0] ?? {});
    const columnOf = (name: string) => headings.findIndex((heading) => heading.startsWith(name));
    for (const [i, name] of named.entries()) {
      expect(columnOf(name), name).toBeGreaterThanOrEqual(0);
      // Neighbours go together.
      if (i > 0 && columnOf(named[i - 1] as string) === columnOf(name) - 1) continue;
      const group = named.filter((one, o) => o >= i && columnOf(one) - columnOf(name) === o - i);
      await tryout.paste(
        `${columnLetters(columnOf(name))}${row}`,
        rows.map((one) => group.map((key) => one[key] ?? "")),
      );
    }
  };
  const rowsOf = async (table: string, headings: readonly string[]) => {
    const { headings: known, rows } = await tryout.table(table);
    return rows.map((row) => headings.map((heading) => row[known.findIndex((one) => one.startsWith(heading))] ?? null));
  };

  async function receive({ date, item, lot, paid }: Receipt, quantity: string, unit: string): Promise<void> {
    await tryout.openView("Stock");
    await receiving("Item").fill(item);
    await receiving("Lot").fill(lot);
    await receiving("Quantity").fill(quantity);
    await receiving("Unit").selectOption(unit);
    await receiving("Received").fill(new Date((date - 25_569) * 86_400_000).toISOString().slice(0, 10));
    await receiving("Paid for all of it").fill(String(paid));
    await press("Add to moves");
    await says(new RegExp(`^${item}, lot ${lot}: .* is in Moves now`));
  }

  /** The rows of a kind on a run sheet, with the pot that each is of. */
  const keyed = (cells: CellValue[][], kind: RowKind) => {
    let pot = "";
    return cells.flatMap((row, r) => {
      const own = kindOfKey(row[AT.key]);
      if (own === "pot") pot = String(row[AT.name]);
      return own === kind ? [{ pot, row: r + 1, cells: row, at: (column: SheetColumn) => row[AT[column]] }] : [];
    });
  };

  /** Writes the run sheet of a day; what of its candles the plan put into which pot is known then. */
  async function write(date: number): Promise<{ sheet: string; cells: CellValue[][] }> {
    await setting("Date", new Date((date - 25_569) * 86_400_000).toISOString().slice(0, 10));
    await press("Write run sheet");
    await says(/^Run sheet written: Run/);
    const sheet = (await tryout.sheetNames()).filter((name) => name.startsWith("Run 2")).at(-1) as string;
    const cells = await tryout.host("readSheet", sheet);
    const run = lotIn(cells[0]?.[0]) as string;
    runs.push({ run, date });
    for (const { pot, at } of keyed(cells, "vessel")) {
      const scent = SCENTS.find((one) => pot.startsWith(one.scent))?.scent as string;
      const [vessel, count] = [String(at("name")), Number(at("count"))];
      lines.push({ run, pot, scent, vessel, count, good: count });
      if (weighed.some((one) => one.run === run && one.pot === pot)) continue;
      for (const item of ["Wax", scent]) weighed.push({ run, pot, item, lot: NO_LOT, over: 0 });
    }
    calculate();
    return { sheet, cells };
  }

  /** Whether pots, totals and cost on a run sheet are those of the second calculation. */
  function expectSheet(cells: CellValue[][], run: string, look: number): void {
    const pots = new Set(keyed(cells, "pot").map(({ at }) => at("name") as string));
    for (const pot of pots) {
      const planned = (kind: RowKind) =>
        keyed(cells, kind)
          .filter((row) => row.pot === pot)
          .map(({ at }) => at("planned"));
      const of = (heading: string) => [hand.of("Pots", { Run: run, Pot: pot }, heading)];
      expect(planned("wax"), pot).toEqual(of("Wax"));
      expect(planned("scent"), pot).toEqual(of("Oil"));
      expect(planned("melted"), pot).toEqual(of("Total"));
      expect(of("Total")[0], pot).toBeLessThanOrEqual(2500);
    }
    const fills = keyed(cells, "vessel");
    expect(fills.map(({ at }) => at("fill"))).toEqual(hand.all("Lines", { Run: run }, "Fill"));
    const total = keyed(cells, "totals")[0];
    const sumOf = (heading: string) => hand.all("Pots", { Run: run }, heading).reduce((all, one) => all + one, 0);
    expect([total?.at("wax"), total?.at("scent"), total?.at("melted")]).toEqual(["Wax", "Oil", "Total"].map(sumOf));
    const costs = lines.filter((line) => line.run === run);
    for (const { scent, vessel } of costs) {
      const where = { Date: LOOKS[look] as number, Method: "first in", Run: run, Scent: scent, Vessel: vessel };
      const [, , , each, all] = cells.find(([name]) => name === `${vessel}, ${scent}`) ?? [];
      expect(each, `${vessel}, ${scent}`).toBeCloseTo(hand.of("Costs", where, "Each"), 9);
      expect(all, `${vessel}, ${scent}`).toBeCloseTo(hand.of("Costs", where, "All"), 9);
    }
  }

  /** Writes what was weighed and counted on the sheet, as the second calculation has it. */
  async function fillSheet(sheet: string, run: string): Promise<void> {
    await tryout.openSheet(sheet);
    const cells = await tryout.host("readSheet", sheet);
    for (const { pot, row, at } of [...keyed(cells, "wax"), ...keyed(cells, "scent")]) {
      const own = weighed.filter((one) => one.run === run && one.pot === pot);
      const part = own.find(({ item }) => String(at("name")).includes(item)) as Weighed;
      const actual = hand.of("Weighed", { Run: run, Pot: pot, Item: part.item }, "Actual");
      await tryout.paste(`${columnLetters(AT.actual)}${row}`, [[actual, part.lot === NO_LOT ? "" : part.lot]]);
    }
    for (const { pot, row, at } of keyed(cells, "vessel")) {
      const line = lines.find((one) => one.run === run && one.pot === pot && one.vessel === at("name"));
      await tryout.paste(`${columnLetters(AT.good)}${row}`, [[line?.good ?? ""]]);
    }
  }

  /** Logs a pour; the rows of log and moves are those of the second calculation. */
  async function expectLogged(sheet: string, run: string): Promise<void> {
    const before = (await rowsOf("Moves", ["Item"])).length;
    await press(`Log this pour: ${sheet}`);
    await press(`Add these rows: ${sheet}`);
    await says(new RegExp(`^Lot ${run} is in the runs log now`));
    const date = runs.find((one) => one.run === run)?.date as number;
    const moved = (await rowsOf("Moves", ["Date", "Item", "Lot", "Change", "Run"])).slice(before);
    const used = receipts.flatMap(({ item, lot }) => {
      const amount = hand.of("Uses", { Run: run, Item: item, Lot: lot }, "Used");
      return amount === 0 ? [] : [[date, item, lot, -amount, run]];
    });
    expect(new Set(moved.map((row) => JSON.stringify(row)))).toEqual(new Set(used.map((row) => JSON.stringify(row))));
    expect(moved).toHaveLength(used.length);
    const columns = {
      ...{ Candles: "Candles", Good: "Good", Yield: "Yield", WaxPlanned: "Wax planned", WaxActual: "Wax actual" },
      ...{ ScentPlanned: "Scent planned", ScentActual: "Scent actual", LoadAsWeighed: "Load as weighed" },
    };
    const logged = (await rowsOf("RunsLog", ["Lot", "Scent", "Vessel", ...Object.values(columns)])).filter(
      ([lot]) => lot === run,
    );
    expect(logged).toHaveLength(new Set(lines.filter((one) => one.run === run).map((l) => l.scent + l.vessel)).size);
    for (const [, scent, vessel, ...numbers] of logged) {
      const where = { Run: run, Scent: String(scent), Vessel: String(vessel) };
      for (const [i, heading] of Object.keys(columns).entries()) {
        expect(numbers[i], `${scent}, ${vessel}: ${heading}`).toBeCloseTo(hand.of("Log", where, heading), 9);
      }
    }
  }

  /** What is on the shelf in the pane: of each lot what is left of it, of each item what it is worth, and of all. */
  async function expectShelf(look: number, worth: "Worth" | "WorthLast"): Promise<void> {
    await tryout.openView("Stock");
    const date = LOOKS[look] as number;
    const shown = () =>
      pane()
        .locator(".shelf tbody tr")
        .evaluateAll((rows) =>
          rows.map((row) => ({
            item: row.querySelector("th")?.firstChild?.textContent,
            lots: row.querySelector("small")?.textContent,
            worth: row.lastElementChild?.textContent,
          })),
        );
    const wanted = [...new Set(receipts.map(({ item }) => item))].flatMap((item) => {
      const lots = receipts.flatMap((one) => {
        const left = one.item === item ? hand.of("Lots", { Date: date, Item: item, Lot: one.lot }, "Left") : 0;
        return left === 0 ? [] : [`${one.lot}: ${left}`];
      });
      return { item, lots: lots.join(", "), worth: hand.of("Items", { Date: date, Item: item }, worth).toFixed(2) };
    });
    await expect.poll(shown, PATIENCE).toEqual(wanted);
    const all = hand.all("Items", { Date: date }, worth).reduce((sum, one) => sum + one, 0);
    await says(new RegExp(`^Worth ${all.toFixed(2)} in all`));
  }

  return {
    ...{ pane, press, says, tab, setting, choose, fillIn, rowsOf, receive, keyed, write, fillSheet },
    ...{ expectSheet, expectLogged, expectShelf, calculate, runs, lines, weighed, receipts },
    /** The second calculation as it was made last. */
    hand: {
      of: (...asked: Parameters<PlainSums["of"]>) => hand.of(...asked),
      all: (...asked: Parameters<PlainSums["all"]>) => hand.all(...asked),
    },
  };
}
