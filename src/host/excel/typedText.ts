/** Languages whose months a text with a number may name: Excel's own English, and that of this Excel. */
const LANGUAGES = ["en", ...ownLanguage()];

/** A system may give its language a name that is none. */
function ownLanguage(): string[] {
  try {
    return Intl.getCanonicalLocales(typeof navigator === "undefined" ? [] : navigator.language);
  } catch {
    return [];
  }
}

/** Excel's words for true and false, from memory; in other languages than these such a word alone is taken as one. */
const TRUTHS = new Set(
  `true false wahr falsch vrai faux verdadero falso vero verdadeiro waar onwaar sant falskt sann usann sand falsk tosi
  epätosi prawda fałsz pravda nepravda igaz hamis doğru yanlış истина ложь`.split(/\s+/),
);

/** The names of the months. */
const MONTHS = new Set(LANGUAGES.flatMap((language) => [namesIn(language, "long"), namesIn(language, "short")].flat()));

function namesIn(language: string, month: "long" | "short"): string[] {
  const format = new Intl.DateTimeFormat(language, { month, day: "numeric", timeZone: "UTC" });
  return Array.from({ length: 12 }, (_, i) => {
    const parts = format.formatToParts(Date.UTC(2000, i));
    return (
      parts
        .find(({ type }) => type === "month")
        ?.value.toLowerCase()
        .replace(/\.$/, "") ?? ""
    );
  });
}

/**
 * A text as it is typed into Excel: behind an apostrophe, which Excel takes off again, where it would be read as
 * something else. That is a formula, a number, an amount of money, a date, a time, a truth or an error.
 */
export const typedText = (text: string): string => (mayBeRead(text) ? `'${text}` : text);

/** The text that a cell holds of what was typed into it. */
export const textOfTyped = (typed: string): string => (typed.startsWith("'") ? typed.slice(1) : typed);

function mayBeRead(text: string): boolean {
  // Full-width signs too: an Excel in Japanese takes them for the others.
  if (/^\s*['=+\-@#＝＋－＠]/u.test(text)) return true;
  if (TRUTHS.has(text.trim().toLowerCase())) return true;
  if (!/\p{N}/u.test(text)) return false;
  // Beside figures stand short words in what is read as a number: months, currencies, h, PM. A longer word ends that.
  const words = text.match(/\p{L}{4,}/gu) ?? [];
  return !words.some((word) => !MONTHS.has(word.toLowerCase()));
}
