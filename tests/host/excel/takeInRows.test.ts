import { afterEach, describe, expect, it, vi } from "vitest";
import { everything, knowing, REQUIRED } from "./client/requirementSets";
import { type Failure, newHost, StandIn } from "./standIn";

afterEach(() => vi.unstubAllGlobals());

const host = newHost();

/** A table of one row whose Fill is worked out, and a row pasted below it, with a fill of its own. Invented numbers. */
function withPasted(knows = everything): { standIn: StandIn; table: StandIn["book"]["sheets"][0]["tables"][0] } {
  const standIn = new StandIn({ knows }).install();
  const sheet = standIn.table("Pours", "Batch", [
    ["Vessel", "Fill"],
    ["Tin", "=A2"],
  ]);
  sheet.enter(2, 0, "Jar");
  sheet.enter(2, 1, 90);
  return { standIn, table: sheet.tables[0] as (typeof sheet.tables)[0] };
}

describe("taking rows into a table", () => {
  it("is three calls", async () => {
    const { standIn, table } = withPasted();
    await host.takeInRows("Pours", 1);
    expect(table.area.rows).toBe(3);
    expect(standIn.syncs).toBe(3);
  });

  it.each<[string, (pasted: ReturnType<typeof withPasted>) => unknown, string]>([
    ["a protected sheet", ({ table }) => Object.assign(table.area.sheet, { protected: true }), "Batch is protected"],
    ["a filter", ({ table }) => Object.assign(table, { isFiltered: true }), "A filter hides rows of Batch"],
    [
      "a total row",
      ({ table }) => Object.assign(table, { showTotals: true, area: { ...table.area, rows: 3 } }),
      "The table Pours has a total row. Take it off",
    ],
    [
      "an Excel that says it is too old",
      ({ standIn }) => standIn.book.unknown.add("table.resize"),
      "This Excel is too old",
    ],
    ["a table that is gone", ({ table }) => table.area.sheet.tables.pop(), "it is no longer in the workbook"],
  ])("is refused in words for %s, and changes nothing", async (_, spoil, words) => {
    const pasted = withPasted();
    spoil(pasted);
    const before = pasted.standIn.book.snapshot();
    await expect(host.takeInRows("Pours", 1)).rejects.toThrow(words);
    expect(pasted.standIn.book.snapshot()).toEqual(before);
  });

  it("is refused in words where the client knows that Excel is too old, and changes nothing", async () => {
    const { standIn } = withPasted(knowing(REQUIRED));
    const before = standIn.book.snapshot();
    await expect(host.takeInRows("Pours", 1)).rejects.toThrow("This Excel is too old");
    expect(standIn.book.snapshot()).toEqual(before);
  });

  it.each([1, 2, 3].flatMap((sync) => (["nothing", "half", "all"] as const).map((done): Failure => ({ sync, done }))))(
    "leaves all as it was when call $sync fails with $done of it done",
    async (failure) => {
      const { standIn } = withPasted();
      standIn.book.fills = "all";
      const before = standIn.book.snapshot();
      standIn.failure = { ...failure, code: "GeneralException" };
      await expect(host.takeInRows("Pours", 1)).rejects.toThrow(
        /^Excel could not take the rows into the table Pours: /,
      );
      expect(standIn.book.snapshot()).toEqual(before);
    },
  );
});
