import { afterEach, describe, expect, it, vi } from "vitest";
import { textOfTyped, typedText } from "../../../src/host/excel/typedText";
import { HOSTILE_NAMES, HOSTILE_TEXTS } from "../../hostileTexts";
import { Book } from "./model";

afterEach(() => vi.unstubAllGlobals());

describe("a text goes as it is where Excel reads nothing else in it", () => {
  it.each([
    "Run sheet",
    "Run sheet 2026-330-01",
    "Vessel",
    "Wax for 3 candles",
    "Medium tin, 120 g of water",
    "Pot 1 of 2, melt to 75 C",
    "Amber & oud",
    "Notes: anything unusual",
    "Orders of 5 May",
    "(none)",
    "",
  ])("%j", (text) => {
    expect(typedText(text)).toBe(text);
  });
});

// What Excel reads in typed text is from memory, not from a published list.
describe("and behind an apostrophe where it would", () => {
  it.each([
    ...["=1+1", "+5", "-", "@home", "'quoted", " =1", "＝1", "#N/A", "12", " 12 ", "1,5", "1.234,5", "5%", "(5)", ".5"],
    ...["$5", "5 €", "USD 5", "5 kr", "1/2", "1-2", "3.5.2026", "2026-11-26", "12:30", "12:30 PM", "1e5", "٣"],
    ...["5 May", "May 5", "march 2026", "26 September 2026", "2026年5月", "TRUE", "false", "Wahr", "vrai", "ИСТИНА"],
  ])("%j", (text) => {
    expect(typedText(text)).toBe(`'${text}`);
  });

  it("knows the months of the language that Excel speaks", async () => {
    vi.resetModules();
    vi.stubGlobal("navigator", { language: "fi-FI" });
    const { typedText: inFinnish } = await import("../../../src/host/excel/typedText");
    expect(inFinnish("5. toukokuuta 2026")).toBe("'5. toukokuuta 2026");
    expect(typedText("5. toukokuuta 2026")).toBe("5. toukokuuta 2026");
  });

  it("does with English where the system gives its language a name that is none", async () => {
    vi.resetModules();
    vi.stubGlobal("navigator", { language: "en-US@posix" });
    const { typedText: inEnglish } = await import("../../../src/host/excel/typedText");
    expect(inEnglish("26 September 2026")).toBe("'26 September 2026");
  });
});

it.each([...HOSTILE_TEXTS, ...HOSTILE_NAMES])("%j is held as it is", (text) => {
  const typed = typedText(text);
  expect(textOfTyped(typed)).toBe(text);
  if (text !== "") expect(new Book().typed(typed)).toEqual({ formula: null, value: text, type: "String" });
});
