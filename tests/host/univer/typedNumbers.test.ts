import { getNumfmtParseValueFilter } from "@univerjs/core";
import { afterEach, describe, expect, it, vi } from "vitest";
import { readingOf, typedWords } from "../../../src/host/univer/editing/typedReadings";

const TEXT = "If you mean a text, type ' in front of it.";

/** What Univer's number format makes of an entry: the value of the cell. */
const cellValue = (entry: string | undefined) => getNumfmtParseValueFilter(entry ?? "")?.v;

/** What is entered for something typed, and what is said of it. */
const taken = (typed: string) => {
  const reading = readingOf(typed);
  return reading ? [reading.entry, typedWords(typed, reading)] : [];
};

afterEach(() => void vi.useRealTimers());

describe("what is typed into any cell", () => {
  it.each([
    ["3,5", 3.5, `3,5 was taken as 3.5. ${TEXT}`],
    [" -0,75 ", -0.75, `-0,75 was taken as -0.75. ${TEXT}`],
    ["0,125", 0.125, `0,125 was taken as 0.125. ${TEXT}`],
    ["1.234,5", 1234.5, `1.234,5 was taken as 1234.5. ${TEXT}`],
    ["1 234,5", 1234.5, `1 234,5 was taken as 1234.5. ${TEXT}`],
    ["1 250", 1250, `1 250 was taken as 1250. ${TEXT}`],
    ["-12 345 678.5", -12345678.5, `-12 345 678.5 was taken as -12345678.5. ${TEXT}`],
    ["1 250 €", 1250, "1 250 € was taken as 1250 €."],
    ["\u22125", -5, ""],
    ["\u22121,250.5", -1250.5, ""],
    ["\u22123,5", -3.5, `\u22123,5 was taken as -3.5. ${TEXT}`],
    ["€ \u22123.50", -3.5, ""],
    ["1.234.567", 1234567, `1.234.567 was taken as 1234567. ${TEXT}`],
    ["7,50 €", 7.5, "7,50 € was taken as 7.50 €."],
    ["€ 7,50", 7.5, "€ 7,50 was taken as 7.50 €."],
    ["1.234,50 €", 1234.5, "1.234,50 € was taken as 1234.50 €."],
    ["1,234.50 €", 1234.5, ""],
    ["3,5%", 0.035, "3,5% was taken as 3.5 %."],
    ["3,500", 3500, "3,500 was taken as 3500. If you mean 3.5, type 3.5."],
    ["007", 7, "007 was taken as 7. To keep the zeros in front, type ' in front of them."],
  ])("%s is the number %s, and it is said where it may be doubted", (typed, value, words) => {
    const [entry, said] = taken(typed);
    expect(said).toBe(words);
    expect(cellValue(entry)).toBe(value);
  });

  it.each([
    ["1e3", 1000],
    ["-1.5E2", -150],
    ["2e-3", 0.002],
    ["1.2e+1", 12],
  ])("%s is the number %d, and its cell gets no format that hides the next one", (typed, value) => {
    const [entry, said] = taken(typed);
    expect(said).toBe("");
    // Univer's number format gives a format along with what it has one for, as with the number as it was typed.
    expect(getNumfmtParseValueFilter(typed)?.z).toBe("0.00E+00");
    expect(getNumfmtParseValueFilter(entry ?? "")).toEqual({ v: value });
  });

  it("is a date with the year of today where it has none", () => {
    vi.useFakeTimers({ now: new Date(2026, 5, 1) });
    expect(taken("12-4")).toEqual([
      "12-4",
      `12-4 was taken as the date 2026-12-04. If you mean a calculation, type =12-4. ${TEXT}`,
    ]);
    expect(taken("1/2")[1]).toContain("1/2 was taken as the date 2026-01-02.");
  });

  it.each([
    ["5/4/2026", "5/4/2026", "5/4/2026 was taken as the date 2026-05-04. If the day stands first, type 2026-04-05."],
    ["5/4/26", "5/4/26", "5/4/26 was taken as the date 2026-05-04. If the day stands first, type 2026-04-05."],
    ["25/4/26", "2026-04-25", `25/4/26 was taken as the date 2026-04-25. ${TEXT}`],
    ["25/4/2026", "2026-04-25", `25/4/2026 was taken as the date 2026-04-25. ${TEXT}`],
  ])("%s is entered as the date %s", (typed, entry, words) => {
    expect(taken(typed)).toEqual([entry, words]);
  });

  it.each([
    "3.5",
    "1234",
    "0",
    "0.5",
    "6%",
    "€7.50",
    "2026-04-25",
    "4/4/2026",
    "11/26/2026",
    "12/31/26",
    "31/2/2026",
    "13/25",
    "3,5 g",
    "1,5,5",
    "1,234.5",
    "Tin, 200",
    "12 34",
    "1 2500",
    "0171 250",
    "+49 171 250 250",
    "1 250 g",
    "100 000 000 000 000 000",
    "\u2212",
    "\u22125 g",
    "\u2212Fig",
    "",
    "00000000000000000001",
    "1e400",
    "1e30",
  ])("%s is left as it is", (typed) => {
    expect(readingOf(typed)).toBeNull();
  });
});
