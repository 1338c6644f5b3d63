import fc from "fast-check";
import { HOSTILE_TEXTS } from "../hostileTexts";

/** Texts as makers type them where a number or one of a few words is asked for. */
const TYPED = [
  ...["12 oz", "8.8oz", "1,5", "1.234,50", "6 %", "6%", "½", "1/2", "ca. 200", "~ 200", "200g", "200 g each", "12-14"],
  ...["n/a", "-", "?", "x", "see note", "TBD", "none", "yes", "as usual", "2 dozen", "26/11/2026", "26 Nov", "14:05"],
  ...["1e3", "0x10", "٣", "−5", "--5", "5.", ".5", "$4.50", "4,50 €", "10'000", "1 000", "\u00a0", "\t", "a\nb"],
];

/** Names that are something else to a program: they must be names like any other. */
const PROGRAM_NAMES = ["__proto__", "constructor", "toString", "hasOwnProperty", "length", "; ", ": pot 1 of 2", "%s"];

/** Texts that nobody thought of, none of which says what isSaid forbids. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  fc.constantFrom(...TYPED),
  fc.constantFrom(...HOSTILE_TEXTS, ...PROGRAM_NAMES),
  fc.string({ maxLength: 12 }),
  fc.string({ unit: "grapheme", maxLength: 6 }),
);

/** A word as it is typed in a hurry. */
export const typed = (word: fc.Arbitrary<string>): fc.Arbitrary<string> =>
  fc.tuple(word, fc.nat(11)).map(([one, how]) => {
    if (how === 9) return one.toUpperCase();
    if (how === 10) return ` ${one} `;
    return how === 11 ? one.replace(" ", "  ") : one;
  });

export const ERROR_CODES = ["#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!"] as const;

/** Numbers that a spreadsheet keeps, at the ends of what it keeps too: never NaN or Infinity, which it has no cell for. */
export const anyNumber: fc.Arbitrary<number> = fc.oneof(
  fc.integer({ min: -3, max: 120 }),
  fc.constantFrom(0, 0.5, 1, 0.1 + 0.2, 46_352, 46_352.58, 2_958_466, 1e6, 1e15, 1e16, 2 ** 53, -1e-9, 1e-300, 5e-324),
  fc.constantFrom(1e100, -1e100, 1.7e308, -1.7e308, 9.99999999999999e307, 1 / 3, 2.675, 999_999.999999),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);
