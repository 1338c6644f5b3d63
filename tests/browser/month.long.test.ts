import { beforeAll, describe, expect, it } from "vitest";
import { AT } from "../../src/runsheet/sheet/layout";
import { type Line, METHODS, NO_LOT, type Receipt, type Weighed } from "./month/month";
import { BOUGHT, FIRST, LOOKS, PACKS, POURED, SCENTS, SHELF, VESSELS } from "./month/studio";
import { monthWalk } from "./month/walk";
import { OpenedSite } from "./opened";
import { PATIENCE } from "./page";

/** A month of a studio, by mouse and keyboard; every number beside a second one, from plain spreadsheet formulas. */
describe("a month", () => {
  const tryout = new OpenedSite().page();
  const { pane, press, says, tab, setting, choose, fillIn, rowsOf, receive, keyed, write, fillSheet, ...walk } =
    monthWalk(tryout);
  const { expectSheet, expectLogged, expectShelf, calculate, runs, lines, weighed, receipts, hand } = walk;

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
    // Cedar of the first pour has none of it: another lot was written beside its wax.
    const hasOther = (line: Line) =>
      weighed.some(({ run, pot, item, lot }) => {
        return run === line.run && pot === line.pot && item === "Wax" && ![NO_LOT, "W-1"].includes(lot);
      });
    const kinds = (run: string) => {
      const own = lines.filter((one) => one.run === run && !hasOther(one));
      return [...new Set(own.map(({ vessel, scent }) => `${vessel}, ${scent}`))].map((kind) => {
        const [Vessel = "", Scent = ""] = kind.split(", ");
        return { Run: run, Scent, Vessel };
      });
    };
    expect(kinds(runs[0]?.run ?? "").map(({ Scent }) => Scent)).toEqual(["Fig"]);
    const told = runs.map(({ run }) => {
      return `${run} (${kinds(run)
        .map((kind) => `${hand.of("Log", kind, "Candles")} ${kind.Vessel}, ${kind.Scent}`)
        .join("; ")})`;
    });
    await says(`In 2 runs: ${told.join("; ")}.`);
    await says(`Left on the shelf: ${hand.of("Lots", { Date: LOOKS[3], Item: "Wax", Lot: "W-1" }, "Left")} g.`);
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
    const all = runs.flatMap(({ run }) => kinds(run));
    const sumOf = (heading: string) => all.reduce((total, kind) => total + hand.of("Log", kind, heading), 0);
    const total = rows.find(([name]) => name === "Total");
    expect(total?.slice(4, 7)).toEqual([
      sumOf("Candles"),
      sumOf("Good"),
      used(runs[0]?.run ?? "") + used(runs[1]?.run ?? ""),
    ]);
    // What is listed is known to hold it.
    expect(rows.filter(([name]) => /candles of/.test(String(name)))).toEqual([]);
    expect(rows.find(([name]) => name === "Left on the shelf")?.[6]).toBe(0);
  });

  it("ends with what the stock is worth", async () => {
    await expectShelf(3, "Worth");
    await choose("Unit price by the lots in stock", "last paid");
    await expectShelf(3, "WorthLast");
    expect(await tryout.faults(".pourwright-pane")).toEqual([]);
  });
});
