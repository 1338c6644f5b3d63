import { describe, expect, it } from "vitest";
import { parseReceipt, type TypedReceipt } from "../../src/pane/receiving/parseReceipt";

const typed = (more: Partial<TypedReceipt> = {}): TypedReceipt => ({
  ...{ date: "2026-11-26", item: "Soy wax", lot: "L-12", quantity: "5", unit: "kg" },
  ...{ paid: "40", bestBefore: "2027-11-01", note: "" },
  ...more,
});
const wrong = (more: Partial<TypedReceipt>) => parseReceipt(typed(more)).wrong;

describe("a receipt as it is typed", () => {
  it("is read with the spaces taken off and its days as spreadsheets count them", () => {
    // 2026-11-26 is 46352, 2027-11-01 is 46692: from 1899-12-30 on, by hand.
    expect(parseReceipt(typed({ item: " Soy  wax ", lot: " L-12 " })).receipt).toEqual({
      ...{ date: 46_352, item: "Soy wax", lot: "L-12", quantity: 5, unit: "kg" },
      ...{ paid: 40, bestBefore: 46_692, note: "" },
    });
    expect(parseReceipt(typed({ paid: "", bestBefore: "" })).receipt).toMatchObject({
      paid: undefined,
      bestBefore: undefined,
    });
  });

  it("takes packs as they are counted, and money as it is printed", () => {
    const read = (more: Partial<TypedReceipt>) => parseReceipt(typed(more)).receipt;
    expect(read({ quantity: "2 x 5" })?.quantity).toBe(10);
    expect(read({ quantity: "3x0,1" })?.quantity).toBe(0.3);
    expect(read({ paid: "€ 40,50" })?.paid).toBe(40.5);
    expect(read({ paid: "$0.00" })?.paid).toBe(0);
  });

  it.each([
    [{ quantity: "five" }, { quantity: '"five" is not a number' }],
    [{ quantity: "-5" }, { quantity: "give a number above 0" }],
    [{ quantity: "1,500" }, { quantity: "write 1500 or 1.500" }],
    [{ quantity: "5%" }, { quantity: '"5?" is not a number' }],
    [{ quantity: "2.5", unit: "pieces" as const }, { quantity: "2.5 is no whole number: pieces are counted" }],
    [{ paid: "forty" }, { paid: '"forty" is no sum of money; write a plain number' }],
    [{ paid: "-3" }, { paid: '"-3" is no sum of money; write a plain number' }],
    [{ date: "" }, { date: "choose a day" }],
  ])("says beside its field what is wrong: %j", (more, says) => {
    expect(Object.keys(wrong(more))).toEqual(Object.keys(says));
    expect(parseReceipt(typed(more)).receipt).toBeUndefined();
  });

  it("tells what is blank and needed apart from what is wrong", () => {
    expect(parseReceipt(typed({ item: " ", quantity: "" }))).toMatchObject({
      receipt: undefined,
      wrong: {},
      blank: { item: "write what came in", quantity: "write how much came in" },
    });
  });
});
