import { dayNumber } from "../read/isoDay";

/** A number that a text in a list means, with the number format that shows it as it is written. */
export interface Figure {
  readonly number: number;
  readonly format: string;
}

/** Reads the texts of a list as numbers where they can mean nothing else. */
export interface FigureReader {
  read(text: string): Figure | undefined;
  /** Whether a text may be a number, but nobody can tell which one: `1.500`. */
  isDoubtful(text: string): boolean;
}

/** More digits are no exact number in a spreadsheet. */
const MOST_DIGITS = 15;
const COMMA_DECIMAL = /^-?(?:0|[1-9]\d*),(?:\d{1,2}|\d{4,})$|^-?0,\d+$/;
const DOT_DECIMAL = /^-?(?:0|[1-9]\d*)\.(?:\d{1,2}|\d{4,})$|^-?0\.\d+$/;
/** A comma or a dot with three digits behind it can be either. */
const EITHER = /^-?[1-9]\d{0,2}[.,]\d{3}$/;

/** A day and a month without a year, as it is written where commas are decimal. */
const SHORT_DAY = /^(?:[1-9]|[12]\d|3[01])\.(?:0?[1-9]|1[0-2])$/;

/** Finds out whether a list has decimal commas or dots, by its numbers, else by what stands between its cells. */
export function figureReader(rows: readonly (readonly string[])[], delimiter: string): FigureReader {
  const commas = rows.some((row) => row.some((text) => COMMA_DECIMAL.test(text.trim())));
  const dots = rows.some((row) => row.some((text) => DOT_DECIMAL.test(text.trim())));
  const isSure = commas !== dots;
  const decimal = isSure ? (commas ? "," : ".") : delimiter === ";" ? "," : ".";
  const isBoth = commas && dots;
  // Commas between the cells are no decimal ones, nor is a list with semicolons likely to have dots for them.
  const isUnsure = (text: string): boolean => isBoth || delimiter === "\t" || (delimiter === ";" && text.includes("."));
  const isDoubtful = (text: string): boolean =>
    !isSure &&
    ((EITHER.test(text.trim()) && isUnsure(text)) || (isBoth && decimal === "," && SHORT_DAY.test(text.trim())));
  // With both in one list, what is left tells by itself which one is the decimal sign in it.
  const ways = [decimal, ...(isBoth ? [decimal === "," ? "." : ","] : [])].map((sign) => numberReader(sign));
  const number = (text: string): Figure | undefined => {
    for (const way of ways) {
      const figure = way(text);
      if (figure) return figure;
    }
    return undefined;
  };
  return {
    isDoubtful,
    read: (text) => (isDoubtful(text) ? undefined : (day(text.trim()) ?? number(text.trim()))),
  };
}

function numberReader(decimal: string): (text: string) => Figure | undefined {
  const patterns = patternsFor(decimal);
  return (text) => number(text, decimal, patterns);
}

function patternsFor(decimal: string): RegExp[] {
  const [point, groups] = decimal === "," ? [",", "[.\u00a0\u202f']"] : ["\\.", "[,\u00a0\u202f']"];
  return [
    new RegExp(`^-?(?:0|[1-9]\\d*)(?:${point}\\d+)?$`),
    new RegExp(`^-?${point}\\d+$`),
    new RegExp(`^-?[1-9]\\d{0,2}(${groups})\\d{3}(?:\\1\\d{3})*(?:${point}\\d+)?$`),
    new RegExp(`^-?[1-9]${point}\\d+E[+-]?\\d{1,3}$`, "i"),
  ];
}

function number(text: string, decimal: string, patterns: readonly RegExp[]): Figure | undefined {
  const [, bare = text, percent] = /^(.*?)\s?(%)$/.exec(text) ?? [];
  const [mantissa = ""] = bare.split(/e/i);
  if (mantissa.replace(/\D/g, "").replace(/^0+/, "").length > MOST_DIGITS) return undefined;
  if (!patterns.some((pattern) => pattern.test(bare))) return undefined;
  const plain = bare.replace(decimal === "," ? /[.\u00a0\u202f']/g : /[,\u00a0\u202f']/g, "").replace(",", ".");
  // Moved by two places as a text: dividing would leave noise behind the last digit.
  const value = Number(percent ? `${plain}e-2` : plain);
  if (!Number.isFinite(value)) return undefined;
  if (!percent) return { number: value, format: "General" };
  const places = plain.split(".")[1]?.length ?? 0;
  return { number: value, format: places > 0 ? `0.${"0".repeat(places)}%` : "0%" };
}

/** `2026-11-26` and `2026-11-26 14:30`, which are days everywhere. */
function day(text: string): Figure | undefined {
  const [, date, time] = /^(\d{4}-\d\d-\d\d)(?:[ T](\d\d:\d\d(?::\d\d)?))?$/.exec(text) ?? [];
  if (date === undefined || Number.isNaN(Date.parse(`${date}T00:00Z`)) || date < "1900-01-01") return undefined;
  if (new Date(`${date}T00:00Z`).toISOString().slice(0, 10) !== date) return undefined;
  if (time !== undefined && !/^(?:[01]\d|2[0-3])(?::[0-5]\d)+$/.test(time)) return undefined;
  const value = dayNumber(time === undefined ? date : `${date}T${time}`);
  const clock = time === undefined ? "" : time.length > 5 ? " hh:mm:ss" : " hh:mm";
  return value === undefined ? undefined : { number: value, format: `yyyy-mm-dd${clock}` };
}
