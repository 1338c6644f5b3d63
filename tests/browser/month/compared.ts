import { expect } from "vitest";
import type { RowKind } from "../../../src/runsheet/sheet/layout";
import type { CellValue } from "../../../src/sheet/sheet";
import { PATIENCE, type TryoutPage } from "../page";
import type { Hands } from "./hands";
import { keyed } from "./keyed";
import type { Records } from "./records";
import { LOOKS } from "./studio";

/** What the page shows and writes beside the second calculation. */
export function compared(tryout: TryoutPage, { pane, press, says, rowsOf }: Hands, hand: Records) {
  const { runs, lines, receipts } = hand;

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

  return { expectSheet, expectLogged, expectShelf };
}
