import { isKept } from "../../core/check/keptNumber";
import { list } from "../../core/check/list";
import { plain } from "../../core/check/plain";
import { sum } from "../../core/statistics/sum";
import { unitKindOf } from "../../core/units/spellings";
import { unitRatio } from "../../core/units/unitRatio";
import type { Reads } from "./headings/field";
import { NO_WEIGHT } from "./headings/headingUnit";
import { VESSEL_WORDS } from "./headings/headingWords";
import type { Wanted } from "./wanted";

/** What to do about a text where a number is to stand. It says how the text may be read, and nothing is taken. */
export function textForNumber(text: string, wanted: Wanted): string {
  const shown = `"${text.slice(0, LONGEST)}"`;
  if (/^[-+]?(\d+\.?\d*|\.\d+)\s*%?$/.test(text)) return `${shown} is kept as text; ${MAKE_A_NUMBER}`;
  const amounts = text.length > LONGEST ? [] : amountsIn(text);
  const other = amounts.map(({ words }) => wrongKind(words, wanted)).find((one) => one !== "");
  if (other) return `${shown} is ${other}`;
  const written = writtenAs(amounts, text, wanted);
  return written ? `${shown} is text: write ${written}` : `${shown} is not a number; write a plain number`;
}

/** More of a text is not shown, and no number is so long. */
const LONGEST = 40;

const MAKE_A_NUMBER = 'choose "Text to Number" in the menu of the cell, in Excel "Convert to Number", or type it again';

/** A number in a text, and the words behind it. */
interface Amount {
  readonly digits: string;
  /** One, or two where a sign may stand for thousands or for decimals. */
  readonly values: readonly number[];
  readonly words: string;
}

const DIGITS = "[-+]?(?:\\d{1,3}(?:[ '’]\\d{3})+(?!\\d)[.,]?\\d*|\\d[\\d.,]*|[.,]\\d+)";
const AMOUNTS = new RegExp(`(${DIGITS})\\s*([^\\d]*)`, "g");

/** The numbers that a text is made of; none where anything else stands in it, or where one of them is none. */
function amountsIn(text: string): Amount[] {
  const tidy = text
    .normalize("NFKC")
    .replace(/−/g, "-")
    .replace(/^(\p{Sc})\s*(.*)$/u, "$2 $1");
  const parts = [...tidy.matchAll(AMOUNTS)].map(([whole, digits = "", words = ""]) => ({ whole, digits, words }));
  if (parts.map(({ whole }) => whole).join("") !== tidy) return [];
  const amounts = parts.map(({ digits, words }) => ({ digits, values: valuesOf(digits), words: words.trim() }));
  return amounts.every(({ values }) => values.length > 0) ? amounts : [];
}

/** Thousands and decimals as they are written with one sign for each. */
const WAYS = [
  { thousands: /,/g, decimal: ".", like: /^[-+]?(\d*|[1-9]\d{0,2}(,\d{3})+)(\.\d*)?$/ },
  { thousands: /\./g, decimal: ",", like: /^[-+]?(\d*|[1-9]\d{0,2}(\.\d{3})+)(,\d*)?$/ },
] as const;

function valuesOf(digits: string): number[] {
  const bare = digits.replace(/[ '’]/g, "");
  const values = WAYS.filter(({ like }) => like.test(bare)).map(({ thousands, decimal }) =>
    Number(bare.replace(thousands, "").replace(decimal, ".")),
  );
  return [...new Set(values)].filter(isKept);
}

/** What a unit measures where nothing of that kind belongs; empty where it does. */
function wrongKind(words: string, { reads }: Wanted): string {
  const kind = unitKindOf(words);
  const isWeight = reads === "weight" || reads === "amount";
  if (isWeight && (kind === "volume" || kind === "length" || kind === "temperature")) return NO_WEIGHT[`a ${kind}`];
  if (reads === "count" && kind === "weight") return "a weight; write how many";
  if (reads === "share" && kind === "weight") return "a weight; write a share such as 6%";
  return "";
}

/** What is to be written for the amounts together; empty where that is not known. */
function writtenAs(amounts: readonly Amount[], text: string, wanted: Wanted): string {
  const [first, ...more] = amounts;
  if (first === undefined) return "";
  const { values, words } = first;
  const sign = needsSign(amounts) ? ", with the decimal sign of your spreadsheet" : "";
  const numbers = (end = "") => `${list(values.map((value) => `${plain(value)}${end}`))}${sign}`;
  if (more.length === 0) {
    const plainly = plainlyWritten(words, wanted.reads);
    if (plainly) return `${numbers(plainly.end)}${plainly.why}`;
  }
  const ratios = amounts.map((amount) => ratioOf(amount.words, wanted.unit));
  // Of `1 lb 4 oz` each number must be read in one way.
  if (ratios.includes(undefined) || (more.length > 0 && amounts.some((amount) => amount.values.length > 1))) return "";
  const [ratio] = ratios as number[];
  if (more.length === 0 && ratio === 1) {
    return `${numbers()}; ${wanted.isInHeading ? "the unit stands in the heading" : takenIn(wanted)}`;
  }
  const others = sum(more.map((amount, i) => (amount.values[0] as number) * (ratios[i + 1] as number)));
  const converted = values.map((value) => plain(Number((value * (ratio as number) + others).toPrecision(6))));
  return `${list(converted)}, that is ${text} in ${wanted.unit}; ${wanted.isInHeading ? `the heading says ${wanted.unit}` : takenIn(wanted)}`;
}

/** Whether a comma stands for decimals: some spreadsheets read it so, and others the point. */
const needsSign = (amounts: readonly Amount[]): boolean =>
  amounts.some(({ digits, values }) => digits.includes(",") && values.some((value) => !Number.isInteger(value)));

const takenIn = ({ unit }: Wanted): string => `${unit} is the unit here`;

/** How a number is written whose words are no unit, or left out; undefined where they say something else. */
function plainlyWritten(words: string, reads: Reads): { readonly end: string; readonly why: string } | undefined {
  if (words === "") return { end: "", why: "" };
  if (words === "%" && (reads === "share" || reads === "factor" || reads === "parts")) return { end: "%", why: "" };
  if (reads === "money" && MONEY.test(words)) return { end: "", why: ", without the currency" };
  if ((reads === "count" || reads === "amount") && PIECES.test(words)) return { end: "", why: ", without words" };
  return undefined;
}

const MONEY = /^(\p{Sc}|[A-Z]{3})$/u;
/** One of each: a dozen and a pack are none. */
const PIECES = new RegExp(`^(pcs?|pieces?|units?|candles?|(${VESSEL_WORDS.join("|")})(s|es)?)\\.?$`, "i");

/** In minutes. */
const TIMES = [
  { like: /^(m|mins?|minutes?)\.?$/i, minutes: 1 },
  { like: /^(h|hrs?|hours?)\.?$/i, minutes: 60 },
  { like: /^(d|days?)\.?$/i, minutes: 24 * 60 },
  { like: /^(w|wks?|weeks?)\.?$/i, minutes: 7 * 24 * 60 },
] as const;

/** How many of the unit `to` one of the unit that words say is; undefined where the two do not measure the same. */
function ratioOf(words: string, to: string): number | undefined {
  const [time, other] = [words, to].map((unit) => TIMES.find(({ like }) => like.test(unit)));
  if (time && other) return time.minutes / other.minutes;
  const kind = unitKindOf(words);
  if ((kind !== "weight" && kind !== "length") || unitKindOf(to) !== kind) return undefined;
  return unitRatio("unit", words, "unit", to);
}
