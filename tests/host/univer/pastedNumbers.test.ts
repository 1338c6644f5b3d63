import { describe, expect, it } from "vitest";
import { pastedReading, pastedWords, percentReading } from "../../../src/host/univer/editing/typedReadings";

/** What is said of pasted cells, one below the other in column B from row 6 on. */
function said(...texts: string[]): string {
  const doubts = texts.flatMap((text, i) => {
    const reading = pastedReading(text, true);
    return reading ? [{ cell: `B${6 + i}`, text, reading }] : [];
  });
  return pastedWords(doubts);
}

describe("what is said of pasted cells", () => {
  it.each([
    ["3,5", "B6: 3,5 stayed text. To make it 3.5, go there and press F2 and Enter."],
    ["1.234,5", "B6: 1.234,5 stayed text. To make it 1234.5, go there and press F2 and Enter."],
    ["1 250", "B6: 1 250 stayed text. To make it 1250, go there and press F2 and Enter."],
    ["0,125", "B6: 0,125 stayed text. To make it 0.125, go there and press F2 and Enter."],
    ["3,5%", "B6: 3,5% stayed text. To make it 3.5 %, go there and press F2 and Enter."],
    ["25/11/2026", "B6: 25/11/2026 stayed text. To make it the date 2026-11-25, go there and press F2 and Enter."],
    ["1,234", "B6: 1,234 was taken as 1234. If you mean 1.234, type 1.234."],
    ["12/11/2026", "B6: 12/11/2026 was taken as the date 2026-12-11. If the day stands first, type 2026-11-12."],
    ["007", "B6: 007 was taken as 7. To keep the zeros in front, type ' in front of them."],
    ["1.234", "B6: 1.234 was taken as 1.234. If you mean 1234, type 1234."],
  ])("%s alone says how it was taken and what to do", (text, words) => {
    expect(said(text)).toBe(words);
  });

  it("names the first cell of each kind, counts the others, and says what to do with all of them", () => {
    expect(said("3,5", "4,25", "Tin", "1,234", "3,500", "1.5", "2.500,75")).toBe(
      "B6: 3,5 stayed text, and so did 2 more cells. To make it 3.5, go there and press F2 and Enter; for all of them, take it back with Undo, write them with a decimal point in the other program and paste again. " +
        "B9: 1,234 was taken as 1234, and 1 more cell in the same way. If you mean something else, take it back with Undo, write them without commas, with a decimal point, in the other program and paste again.",
    );
    expect(said("1 250", "12 500")).toBe(
      "B6: 1 250 stayed text, and so did 1 more cell. To make it 1250, go there and press F2 and Enter; for all of them, take it back with Undo, write them without spaces in the other program and paste again.",
    );
    expect(said("007", "008")).toBe(
      "B6: 007 was taken as 7, and 1 more cell in the same way. If you mean something else, take it back with Undo, give these cells the number format Text and paste again.",
    );
  });

  it.each(["12.11.2026", "1,234.50 €", "3.5", "2026-11-12", "4/4/2026", "Tin, 200", "6%", "\u22125"])(
    "%s is beyond doubt",
    (text) => {
      expect(said(text)).toBe("");
    },
  );
});

it("a point before three digits is doubted among decimal commas only", () => {
  expect(pastedReading("1.234", false)).toBeNull();
  expect(pastedReading("0.125", true)).toBeNull();
});

it("a date with dots has its day first, as where it is typed", () => {
  expect(pastedReading("12.11.2026", false)?.entry).toBe("2026-11-12");
});

describe("what is pasted among percentages", () => {
  it.each([
    ["6", "6%", "B6: 6 was taken as 6 %. If you mean 600 %, type 600%."],
    ["12.5", "12.5%", "B6: 12.5 was taken as 12.5 %. If you mean 1250 %, type 1250%."],
    ["0.07", "0.07", "B6: 0.07 was taken as 7 %. If you mean 0.07 %, type 0.07%."],
    ["1,234", "1234%", "B6: 1,234 was taken as 1234 %. If you mean 1.234 %, type 1.234%."],
    ["007", "007%", "B6: 007 was taken as 7 %. If you mean 700 %, type 700%."],
    ["0", "0", ""],
  ])("%s is entered as %s, as if typed, and it is said", (text, entry, words) => {
    const reading = percentReading(text, false);
    expect(reading?.entry).toBe(entry);
    expect(reading && pastedWords([{ cell: "B6", text, reading }])).toBe(words);
  });

  it("stays text with a decimal comma, and the words tell the percentage that Enter makes of it", () => {
    const reading = percentReading("6,5", true);
    expect(reading && pastedWords([{ cell: "B6", text: "6,5", reading }])).toBe(
      "B6: 6,5 stayed text. To make it 6.5 %, go there and press F2 and Enter.",
    );
  });

  it.each(["6%", "Tin", "=6"])("%s is left to the spreadsheet", (text) => {
    expect(percentReading(text, false)).toBeNull();
  });
});
