/** What would be read as something else than was meant, or as nothing: how it is taken, typed and pasted, and the words. */

import { getNumfmtParseValueFilter } from "@univerjs/core";
import { dottedDate } from "../dottedDates";
import { DECIMAL_COMMA, DOUBTFUL_COMMA, percentOf, plainMinus } from "./percent";

/** The spreadsheet would give its cell a look that hides every other number: `1.00E+03`. */
const EXPONENT = /^[+-]?(?:\d+\.?\d*|\.\d+)e[+-]?\d{1,3}$/i;

const NUMBER = /^([€$£¥]?)\s*([+-]?[\d.,' \u00a0\u202f]*\d)\s*([€$£¥%]?)$/;

/** Groups of three digits that a comma does not part. */
const GROUPS = /^[+-]?\d{1,3}(?:([. \u00a0\u202f'])\d{3}(?:\1\d{3})*,\d+|(?:\.\d{3}){2,})$/;
/** At most as many as make an exact number; with a plus in front it is one to dial. */
const SPACE_GROUPS = /^-?[1-9]\d{0,2}(?: \d{3}){1,4}(?:\.\d+)?$/;
const COMMA_GROUPS = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/;
/** Where others write decimal commas, this may stand for a thousand and more. */
const POINT_GROUP = /^[+-]?[1-9]\d{0,2}\.\d{3}$/;

const AS_TEXT = "If you mean a text, type ' in front of it.";

type Kind =
  | "decimal comma"
  | "thousands"
  | "spaces"
  | "zeros"
  | "point"
  | "sure"
  | "no year"
  | "month first"
  | "day first"
  | "percent"
  | "share";

/** How something is taken. */
export interface Reading {
  readonly kind: Kind;
  /** What to enter in its place. */
  readonly entry: string;
  /** What it is then, in words. */
  readonly taken: string;
  /** What to do if it was meant otherwise. */
  readonly advice: string;
}

/** Null where nothing is to be done. */
export function readingOf(typed: string): Reading | null {
  const trimmed = typed.trim();
  const plain = plainMinus(trimmed);
  const isNumber = plain !== trimmed && typeof getNumfmtParseValueFilter(plain)?.v === "number";
  return number(plain) ?? date(plain) ?? (isNumber ? { kind: "sure", entry: plain, taken: plain, advice: "" } : null);
}

/** What is said of something typed; nothing where it is beyond doubt. */
export const typedWords = (typed: string, { kind, taken, advice }: Reading): string =>
  kind === "sure" ? "" : `${typed.trim()} was taken as ${taken}. ${advice}`.trim();

function number(typed: string): Reading | null {
  if (EXPONENT.test(typed)) return written(typed);
  const [, before = "", body = "", after = ""] = NUMBER.exec(typed) ?? [];
  const unit = before || after;
  const as = (kind: Kind, plain: string, advice: string, entry = `${before}${plain}${after}`): Reading => ({
    kind,
    entry,
    taken: `${plain}${unit && ` ${unit}`}`,
    advice,
  });
  const asText = unit ? "" : AS_TEXT;
  if (DECIMAL_COMMA.test(body)) return as("decimal comma", body.replace(",", "."), asText);
  if (GROUPS.test(body)) {
    return as("decimal comma", body.replace(/[. \u00a0\u202f']/g, "").replace(",", "."), asText);
  }
  if (SPACE_GROUPS.test(body)) return as("spaces", body.replaceAll(" ", ""), asText);
  if (DOUBTFUL_COMMA.test(body)) {
    const plain = body.replace(",", "");
    const smaller = `${Number(body.replace(",", "."))}`;
    // The spreadsheet reads it so too, with its look.
    const entry = after ? `${before}${plain}${after}` : typed;
    return as("thousands", plain, `If you mean ${smaller}${after && ` ${after}`}, type ${smaller}${after}.`, entry);
  }
  // With a sign behind it the spreadsheet would take it for a text.
  if (after && COMMA_GROUPS.test(body)) return as("sure", body.replaceAll(",", ""), "");
  if (!unit && /^0\d{1,14}$/.test(body)) {
    return as("zeros", String(Number(body)), "To keep the zeros in front, type ' in front of them.");
  }
  return null;
}

/** A number with an exponent, written out where its digits allow it. */
function written(typed: string): Reading | null {
  const plain = String(Number(typed));
  return /^-?[\d.]+$/.test(plain) ? { kind: "sure", entry: plain, taken: plain, advice: "" } : null;
}

function date(typed: string): Reading | null {
  const [, first = "", second = "", year] = /^(\d{1,2})[/-](\d{1,2})(?:[/-](\d{4}|\d{2}))?$/.exec(typed) ?? [];
  const read = first ? getNumfmtParseValueFilter(typed) : null;
  if (typeof read?.v === "number") {
    // As Univer's numbers of days, from the last but one day of 1899 on.
    const day = new Date(Date.UTC(1899, 11, 30) + read.v * 86_400_000).toISOString().slice(0, 10);
    const taken = `the date ${day}`;
    if (!year) {
      return { kind: "no year", entry: typed, taken, advice: `If you mean a calculation, type =${typed}. ${AS_TEXT}` };
    }
    const other = iso(day.slice(0, 4), second, first);
    if (Number(first) === Number(second) || !isDay(other)) return null;
    return { kind: "month first", entry: typed, taken, advice: `If the day stands first, type ${other}.` };
  }
  const other = year ? iso(year.padStart(4, "20"), second, first) : "";
  if (!isDay(other)) return null;
  return { kind: "day first", entry: other, taken: `the date ${other}`, advice: AS_TEXT };
}

const isDay = (day: string): boolean => !Number.isNaN(Date.parse(day)) && new Date(day).toISOString().startsWith(day);

const iso = (year: string, month: string, day: string): string =>
  [year, month.padStart(2, "0"), day.padStart(2, "0")].join("-");

/**
 * How something pasted is taken; null where the spreadsheet takes it right by itself.
 * @param amongCommas whether there are decimal commas in what was pasted with it
 */
export function pastedReading(text: string, amongCommas: boolean): Reading | null {
  const plain = text.trim();
  const dotted = dottedDate(plain);
  if (dotted) return { kind: "sure", entry: dotted, taken: `the date ${dotted}`, advice: "" };
  if (!amongCommas || !POINT_GROUP.test(plain)) return readingOf(plain);
  const whole = plain.replace(".", "");
  return { kind: "point", entry: plain, taken: `${Number(plain)}`, advice: `If you mean ${whole}, type ${whole}.` };
}

/** How something pasted among percentages is taken: a plain number as if it were typed there. */
export function percentReading(text: string, amongCommas: boolean): Reading | null {
  const plain = pastedReading(text, amongCommas);
  const read = percentOf(text);
  const isPercent = read?.entry.endsWith("%");
  const doubtful = isPercent ? readingOf(`${text}%`) : plain;
  if (!read || doubtful) return doubtful ?? plain;
  const share = getNumfmtParseValueFilter(read.entry)?.v;
  const percent = (value: unknown) => Number((Number(value) * 100).toPrecision(12));
  const other = isPercent ? percent(text) : Number(text);
  const advice = other === 0 ? "" : `If you mean ${other} %, type ${other}%.`;
  const kind = other === 0 ? "sure" : isPercent ? "percent" : "share";
  return { kind, entry: read.entry, taken: `${percent(share)} %`, advice };
}

export const hasDecimalComma = (text: string): boolean => readingOf(text)?.kind === "decimal comma";

/** Data of another program stays what it was there: as numbers such texts could be meant in two ways within a column. */
export const staysText = ({ kind }: Reading): boolean =>
  kind === "decimal comma" || kind === "spaces" || kind === "day first";

/** A pasted cell that was taken in a way that may be doubted. */
export interface Doubt {
  /** Such as `B6`. */
  readonly cell: string;
  readonly text: string;
  readonly reading: Reading;
}

/** What to do with several of a kind, after they are taken back. */
const FOR_ALL: Readonly<Record<Exclude<Kind, "sure">, string>> = {
  "decimal comma": "write them with a decimal point in the other program",
  "day first": "write them as year, month and day in the other program, such as 2026-04-25",
  thousands: "write them without commas, with a decimal point, in the other program",
  spaces: "write them without spaces in the other program",
  point: "write them without points for thousands in the other program",
  zeros: "give these cells the number format Text",
  "no year": "give these cells the number format Text",
  "month first": "write them as year, month and day in the other program, such as 2026-04-25",
  percent: "write them with % in the other program",
  share: "write them with % in the other program",
};

/** What is said of pasted cells: for each kind the first one, how many more, and what to do. */
export function pastedWords(doubts: readonly Doubt[]): string {
  const kinds = new Map<Kind, Doubt[]>();
  for (const doubt of doubts) {
    const { kind } = doubt.reading;
    if (kind !== "sure") kinds.set(kind, [...(kinds.get(kind) ?? []), doubt]);
  }
  return [...kinds.entries()].map(([kind, some]) => kindWords(FOR_ALL[kind as keyof typeof FOR_ALL], some)).join(" ");
}

function kindWords(forAll: string, [first, ...more]: readonly Doubt[]): string {
  if (!first) return "";
  const { cell, text, reading } = first;
  const others = more.length === 0 ? "" : more.length === 1 ? "1 more cell" : `${more.length} more cells`;
  const redo = `take it back with Undo, ${forAll} and paste again.`;
  if (staysText(reading)) {
    const here = `${cell}: ${text} stayed text${others && `, and so did ${others}`}.`;
    const way = `To make it ${reading.taken}, go there and press F2 and Enter`;
    return others ? `${here} ${way}; for all of them, ${redo}` : `${here} ${way}.`;
  }
  const here = `${cell}: ${text} was taken as ${reading.taken}${others && `, and ${others} in the same way`}.`;
  return others ? `${here} If you mean something else, ${redo}` : `${here} ${reading.advice}`.trim();
}
