import { AT, lotIn } from "../../../src/runsheet/sheet/layout";
import { columnLetters } from "../../../src/sheet/columnLetters";
import type { CellValue } from "../../../src/sheet/sheet";
import type { TryoutPage } from "../page";
import { compared } from "./compared";
import { hands } from "./hands";
import { keyed } from "./keyed";
import { NO_LOT, type Weighed } from "./month";
import { Records } from "./records";
import { SCENTS } from "./studio";

/** What is done in the page on the way through the month, and compared with the second calculation. */
export function monthWalk(tryout: TryoutPage) {
  const own = hands(tryout);
  const { setting, press, says } = own;
  const hand = new Records();
  const { runs, lines, weighed, receipts } = hand;
  const calculate = () => hand.calculate();

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

  return {
    ...{ ...own, ...compared(tryout, own, hand), keyed, write, fillSheet },
    ...{ calculate, runs, lines, weighed, receipts, hand },
  };
}
