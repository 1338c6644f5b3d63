import type { Locator } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { AT, kindOfKey, lotIn, type RowKind, type SheetColumn } from "../../src/runsheet/sheet/layout";
import { columnLetters } from "../../src/sheet/columnLetters";
import type { CellValue } from "../../src/sheet/sheet";
import { type Line, METHODS, type Month, monthByHand, NO_LOT, type Receipt, type Weighed } from "./monthByHand";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";
import type { PlainSums } from "./plainSums";

/** The names and numbers of the studio are invented; 25569 is 1970-01-01 as spreadsheets count days. */
const day = (iso: string): number => Date.parse(iso) / 86_400_000 + 25_569;

const VESSELS: Month["vessels"] = [
  { vessel: "Tin", water: 125, wicks: 1 },
  { vessel: "Bowl", water: 250, wicks: 2 },
];
const SCENTS: Month["scents"] = [
  { scent: "Cedar", load: 0.06, basis: "of wax" },
  { scent: "Fig", load: 0.08, basis: "of total" },
];
/** Each by itself the wax is cheaper in the south, and the oil in the north; together, with one delivery, in the north. */
const PACKS: Month["packs"] = [
  { item: "Wax", supplier: "North", size: 1000, price: 13, delivery: 5 },
  { item: "Cedar", supplier: "North", size: 100, price: 4.6, delivery: 5 },
  { item: "Wax", supplier: "South", size: 2500, price: 24, delivery: 6 },
  { item: "Cedar", supplier: "South", size: 250, price: 9.9, delivery: 6 },
];
const FIRST: readonly Receipt[] = [
  { date: day("2025-03-03"), item: "Wax", lot: "W-1", quantity: 2500, paid: 30 },
  { date: day("2025-03-05"), item: "Wax", lot: "W-2", quantity: 2000, paid: 27 },
];
const SHELF: readonly Receipt[] = [
  { date: day("2025-03-05"), item: "Cedar", lot: "C-1", quantity: 250, paid: 10 },
  { date: day("2025-03-05"), item: "Fig", lot: "F-1", quantity: 200, paid: 11 },
  { date: day("2025-03-05"), item: "Tin", lot: "T-1", quantity: 60, paid: 42 },
  { date: day("2025-03-05"), item: "Bowl", lot: "B-1", quantity: 12, paid: 18 },
  { date: day("2025-03-05"), item: "Wick", lot: "K-1", quantity: 100, paid: 12 },
];
/** What was bought after the wax had become dearer, 14.50 a pack; each row carries its half of the delivery. */
const BOUGHT: readonly Receipt[] = [
  { date: day("2025-03-14"), item: "Wax", lot: "W-3", quantity: 2000, paid: 31.5 },
  { date: day("2025-03-14"), item: "Cedar", lot: "C-2", quantity: 100, paid: 7.1 },
];
const POURED = [day("2025-03-10"), day("2025-03-20")] as const;
/** Before the first pour, after it, after the buying, and at the end of the month. */
const LOOKS = [day("2025-03-09"), day("2025-03-12"), day("2025-03-15"), day("2025-03-31")] as const;

/** A month of a studio, by mouse and keyboard; every number beside a second one, from plain spreadsheet formulas. */
describe("a month", () => {
  const tryout = new OpenedSite().page();
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

  beforeAll(async () => {
    await tryout.openWorkbook("An empty workbook");
    await press("Add starter tables");
    await pane().getByLabel("Pour from").waitFor();
    await tab("Batch");
    await fillIn(
      "Vessels",
      5,
      VESSELS.map(({ vessel, water }) => ({ Vessel: vessel, "Water weight": water })),
    );
    await fillIn(
      "Scents",
      5,
      SCENTS.map(({ scent, load, basis }) => ({ Scent: scent, Load: `${load * 100}%`, Basis: basis })),
    );
    await fillIn("Batch", 5, [
      { Vessel: "Tin", Scent: "Cedar", Quantity: 10 },
      { Vessel: "Bowl", Scent: "Cedar", Quantity: 4 },
      { Vessel: "Tin", Scent: "Fig", Quantity: 8 },
    ]);
    await pane()
      .getByText(/^More tables:/)
      .click();
    await press("Add a table called Components");
    await tab("Components");
    await fillIn(
      "Components",
      5,
      VESSELS.map(({ vessel, wicks }) => ({ Vessel: vessel, Item: "Wick", Each: wicks })),
    );
    await press("Add a table called Items");
    await tab("Items");
  });

  it("begins with what comes in: two lots of one wax, and the rest of the shelf", async () => {
    const offers = PACKS.map(({ item, supplier, size, price, delivery }) => ({
      ...{ Item: item, "Pack size": size, "Pack price": price, Supplier: supplier, Delivery: delivery },
    }));
    const known = (await rowsOf("Items", ["Item"])).flat().filter((name) => name !== null);
    expect(known).toEqual(["Wax", "Cedar", "Fig", "Tin", "Bowl", "Wick"]);
    await fillIn("Items", 5, offers.slice(0, 2));
    await fillIn("Items", 5 + known.length, offers.slice(2));
    await receive(FIRST[0] as Receipt, "2500", "g");
    await receive(FIRST[1] as Receipt, "2 x 1", "kg");
    await fillIn(
      "Moves",
      4,
      SHELF.map(({ date, item, lot, quantity, paid }) => ({
        Date: date,
        Item: item,
        Lot: lot,
        Change: quantity,
        Paid: paid,
      })),
    );
    expect(await rowsOf("Moves", ["Date", "Item", "Lot", "Change", "Paid"])).toEqual(
      receipts.map(({ date, item, lot, quantity, paid }) => [date, item, lot, quantity, paid]),
    );
  });

  it("plans a pour, writes its sheet, and says what a candle costs", async () => {
    await setting("Minutes of work on a candle", "3");
    await setting("Labour for one hour", "20");
    await choose("Cost on the sheet", "shown");
    const { cells } = await write(POURED[0]);
    const [{ run } = { run: "" }] = runs;
    expectSheet(cells, run, 0);
    expect(keyed(cells, "lack")).toEqual([]);
  });

  it("logs it with another lot than the oldest, and one candle spoilt", async () => {
    const [{ run } = { run: "" }] = runs;
    const at = (pot: string, item: string) => weighed.findIndex((one) => one.pot.startsWith(pot) && one.item === item);
    weighed[at("Cedar", "Wax")] = { ...(weighed[at("Cedar", "Wax")] as Weighed), lot: "W-2", over: 4 };
    lines[0] = { ...(lines[0] as Line), good: (lines[0] as Line).count - 1 };
    calculate();
    await fillSheet(`Run ${run}`, run);
    await expectLogged(`Run ${run}`, run);
    await expectShelf(1, "Worth");
  });

  it("runs short, and says which packs to buy", async () => {
    await fillIn("Batch", 5, [{ Quantity: 24 }, { Quantity: 2 }]);
    await tryout.goTo("C7");
    await tryout.page.keyboard.press("Delete");
    await expect
      .poll(async () => (await rowsOf("Batch", ["Quantity"])).slice(0, 3), PATIENCE)
      .toEqual([[24], [2], [null]]);
    const { cells } = await write(POURED[1]);
    const run = runs[1]?.run as string;
    expectSheet(cells, run, 1);
    expect(hand.of("Basket", {}, "Ways")).toBe(1);
    const date = LOOKS[1];
    const wanted = ["Wax", "Cedar"].map((item) => {
      const of = (heading: string) => hand.of("Items", { Date: date, Item: item }, heading);
      const packs = PACKS.flatMap((pack, p) => {
        const count = pack.item === item ? hand.of("Basket", {}, `Of${p}`) : 0;
        return count > 0 ? [{ count, ...pack }] : [];
      });
      const cost = packs.reduce((all, { count, price }) => all + count * price, 0);
      const [{ supplier } = { supplier: "" }] = packs;
      const words = `${packs.map(({ count, size }) => `${count} x ${size} g`).join(" + ")} from ${supplier}`;
      return [of("Left"), of("Missing"), words, cost] as const;
    });
    const lacks = keyed(cells, "lack").map(({ cells: row, at }) => [
      ...[at("onHand"), at("missing"), row[AT.missing + 1]],
      row.slice(AT.missing + 2).find((cell) => typeof cell === "number"),
    ]);
    expect(lacks).toEqual(wanted);
    for (const [i, [, missing, packs, cost]] of wanted.entries()) {
      await says(`${["Wax", "Cedar"][i]}: ${missing} g missing, buy ${packs}, ${cost.toFixed(2)}`);
    }
    await says(`Delivery of Wax, Cedar from North costs ${hand.of("Basket", {}, "Delivery").toFixed(2)} on top`);
  });

  it("buys when the wax has become dearer: a candle costs more, by each way to price the stock", async () => {
    const run = runs[1]?.run as string;
    await fillIn("Items", 5, [{ "Pack price": 14.5 }]);
    await receive(BOUGHT[0] as Receipt, "2 x 1000", "g");
    await receive(BOUGHT[1] as Receipt, "100", "g");
    receipts.push(...BOUGHT);
    calculate();
    for (const method of METHODS) {
      await choose("Unit price by the lots in stock", method);
      const where = (look: number) => ({ Date: LOOKS[look] as number, Method: method, Run: run, Scent: "Cedar" });
      const costOf = (vessel: string, heading: string) => hand.of("Costs", { ...where(2), Vessel: vessel }, heading);
      const count = (vessel: string) =>
        lines.filter((one) => one.run === run && one.vessel === vessel).reduce((all, one) => all + one.count, 0);
      const wanted = ["Tin", "Bowl"].map(
        (one) => `${count(one)} x ${one}, Cedar: ${costOf(one, "Each").toFixed(2)} each`,
      );
      const shown = () =>
        pane()
          .getByRole("region", { name: "Preview" })
          .locator("li", { hasText: / [\d.]+ each$/ })
          .allTextContents();
      await expect.poll(shown, PATIENCE).toEqual(wanted);
      expect(costOf("Tin", "Each")).toBeGreaterThan(hand.of("Costs", { ...where(1), Vessel: "Tin" }, "Each"));
      await says(`Cost with labour and rejects: ${(costOf("Tin", "All") + costOf("Bowl", "All")).toFixed(2)}`);
    }
    await choose("Unit price by the lots in stock", "first in");
  });

  it("pours again, and takes the oldest lots one after the other", async () => {
    const run = runs[1]?.run as string;
    const first = weighed.findIndex((one) => one.run === run && one.item === "Wax");
    weighed[first] = { ...(weighed[first] as Weighed), over: 1 };
    calculate();
    await fillSheet(`Run ${run}`, run);
    await expectLogged(`Run ${run}`, run);
    expect(hand.of("Uses", { Run: run, Item: "Wax", Lot: "W-3" }, "Used")).toBeGreaterThan(0);
  });

  it("follows the first lot to its candles, in the pane and on a sheet", async () => {
    await tryout.openView("Trace");
    const tracing = pane().getByRole("region", { name: "Tracing" });
    await tracing.getByLabel("Item", { exact: true }).fill("Wax");
    await tracing.getByLabel("Lot of the item", { exact: true }).fill("w-1");
    await says("Wax, lot W-1, came in on 2025-03-03.");
    const kinds = (run: string) =>
      [...new Set(lines.filter((one) => one.run === run).map(({ vessel, scent }) => `${vessel}, ${scent}`))].map(
        (kind) => {
          const [Vessel = "", Scent = ""] = kind.split(", ");
          return { Run: run, Scent, Vessel };
        },
      );
    const told = runs.map(({ run }) => {
      return `${run} (${kinds(run)
        .map((kind) => `${hand.of("Log", kind, "Candles")} ${kind.Vessel}, ${kind.Scent}`)
        .join("; ")})`;
    });
    await says(`In 2 runs: ${told.join("; ")}.`);
    await says(`Left on the shelf: ${hand.of("Lots", { Date: LOOKS[3], Item: "Wax", Lot: "W-1" }, "Left")} g.`);
    // Cedar of the first pour has none of it; a move says of which run it is, not of which pot.
    await says(/^All candles of these runs are listed/);
    await tracing.getByRole("button", { name: "Write recall list" }).click();
    await says(/^Written: Recall Wax W-1/);
    const rows = await tryout.host("readSheet", "Recall Wax W-1");
    const used = (run: string) => hand.of("Uses", { Run: run, Item: "Wax", Lot: "W-1" }, "Used");
    const listed = rows.filter(([name]) => runs.some(({ run }) => run === name));
    expect(listed.map((row) => [row[0], ...row.slice(1, 7)])).toEqual(
      runs.flatMap(({ run, date }) =>
        kinds(run).map(({ Scent, Vessel }, i) => {
          const of = (heading: string) => hand.of("Log", { Run: run, Scent, Vessel }, heading);
          return [run, date, Scent, Vessel, of("Candles"), of("Good"), i === 0 ? used(run) : null];
        }),
      ),
    );
    const sumOf = (heading: string) => hand.all("Log", {}, heading).reduce((all, one) => all + one, 0);
    const total = rows.find(([name]) => name === "Total");
    expect(total?.slice(4, 7)).toEqual([
      sumOf("Candles"),
      sumOf("Good"),
      used(runs[0]?.run ?? "") + used(runs[1]?.run ?? ""),
    ]);
    expect(rows.filter(([name]) => String(name).startsWith("All candles of these runs are listed"))).toHaveLength(1);
    expect(rows.find(([name]) => name === "Left on the shelf")?.[6]).toBe(0);
  });

  it("ends with what the stock is worth", async () => {
    await expectShelf(3, "Worth");
    await choose("Unit price by the lots in stock", "last paid");
    await expectShelf(3, "WorthLast");
    expect(await tryout.faults(".pourwright-pane")).toEqual([]);
  });
});
