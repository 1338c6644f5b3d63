import { dayNumber } from "../read/isoDay";
import { type FigureText, figureText, isSpaced } from "./figureText";

/** A number that a text in a list means, with the number format that shows it as it is written. */
export interface Figure {
  readonly number: number;
  readonly format: string;
}

/** Reads the texts of a list as numbers where they can mean nothing else. */
export interface FigureReader {
  /** @param column the place of the text in its row */
  read(text: string, column: number): Figure | undefined;
  /** Whether a text may be a number, but nobody can tell which one: `1.500`. */
  isDoubtful(text: string): boolean;
}

/** More digits are no exact number in a spreadsheet. */
const MOST_DIGITS = 15;
/** What groups digits by three where commas are decimal, and where dots are. */
const GROUPS = { ",": ".'\u2019 \u00a0\u202f", ".": ",'\u2019 \u00a0\u202f" } as const;
type Decimal = keyof typeof GROUPS;

const COMMA_DECIMAL = new RegExp(
  `^-?(?:0|[1-9]\\d*),(?:\\d{1,2}|\\d{4,})$|^-?0,\\d+$|^-?[1-9]\\d{0,2}(?:[${GROUPS[","]}]\\d{3})+,\\d+$`,
);
const DOT_DECIMAL = new RegExp(
  `^-?(?:0|[1-9]\\d*)\\.(?:\\d{1,2}|\\d{4,})$|^-?0\\.\\d+$|^-?[1-9]\\d{0,2}(?:[${GROUPS["."]}]\\d{3})+\\.\\d+$`,
);
/** A comma or a dot with three digits behind it can be either. */
const EITHER = /^-?[1-9]\d{0,2}[.,]\d{3}$/;

/** A day and a month without a year, as it is written where commas are decimal. */
const SHORT_DAY = /^(?:[1-9]|[12]\d|3[01])\.(?:0?[1-9]|1[0-2])$/;

/** Finds out whether a list has decimal commas or dots, by its numbers, else by what stands between its cells. */
export function figureReader(rows: readonly (readonly string[])[], delimiter: string): FigureReader {
  let [commas, dots] = [false, false];
  /** Columns with whole numbers that are grouped by spaces. */
  const doubted = new Set<number>();
  for (const row of rows) {
    for (const [column, text] of row.entries()) {
      const parts = figureText(text.trim());
      commas ||= COMMA_DECIMAL.test(parts.bare);
      dots ||= DOT_DECIMAL.test(parts.bare);
      if (isSpaced(parts)) doubted.add(column);
    }
  }
  const isSure = commas !== dots;
  const decimal: Decimal = isSure ? (commas ? "," : ".") : delimiter === ";" ? "," : ".";
  const isBoth = commas && dots;
  // Commas between the cells are no decimal ones, nor is a list with semicolons likely to have dots for them.
  const isUnsure = ({ bare, after }: FigureText): boolean =>
    isBoth || delimiter === "\t" || (delimiter === ";" && bare.includes(".")) || after.includes("%");
  const isDoubtful = (text: FigureText): boolean =>
    !isSure &&
    ((EITHER.test(text.bare) && isUnsure(text)) ||
      (isBoth && decimal === "," && !text.before && !text.after && SHORT_DAY.test(text.bare)));
  // With both in one list, what is left tells by itself which one is the decimal sign in it.
  const ways = [decimal, ...(isBoth ? ([decimal === "," ? "." : ","] as const) : [])].map(numberReader);
  const number = (text: FigureText): Figure | undefined => {
    if (isDoubtful(text)) return undefined;
    for (const way of ways) {
      const figure = way(text);
      if (figure) return figure;
    }
    return undefined;
  };
  // Where something else in their column is a number for sure, they are numbers too.
  const sure = new Set<number>();
  for (const row of doubted.size > 0 ? rows : []) {
    for (const [column, text] of row.entries()) {
      if (!doubted.has(column) || sure.has(column)) continue;
      const parts = figureText(text.trim());
      if (!isSpaced(parts) && number(parts)) sure.add(column);
    }
  }
  return {
    isDoubtful: (text) => isDoubtful(figureText(text.trim())),
    read: (text, column) => {
      const parts = figureText(text.trim());
      if (isSpaced(parts) && !sure.has(column)) return undefined;
      return day(text.trim()) ?? number(parts);
    },
  };
}

function numberReader(decimal: Decimal): (text: FigureText) => Figure | undefined {
  const groups = `[${GROUPS[decimal]}]`;
  const point = `\\${decimal}`;
  const patterns = [
    new RegExp(`^-?(?:0|[1-9]\\d*)(?:${point}\\d+)?$`),
    new RegExp(`^-?${point}\\d+$`),
    new RegExp(`^-?[1-9]\\d{0,2}(${groups})\\d{3}(?:\\1\\d{3})*(?:${point}\\d+)?$`),
    new RegExp(`^-?[1-9]${point}\\d+E[+-]?\\d{1,3}$`, "i"),
  ];
  const separators = new RegExp(groups, "g");
  return ({ bare, before, after }) => {
    const [mantissa = ""] = bare.split(/e/i);
    if (mantissa.replace(/\D/g, "").replace(/^0+/, "").length > MOST_DIGITS) return undefined;
    if (!patterns.some((pattern) => pattern.test(bare))) return undefined;
    const plain = bare.replace(separators, "").replace(",", ".");
    const isPercent = after.includes("%");
    // Moved by two places as a text: dividing would leave noise behind the last digit.
    const number = Number(isPercent ? `${plain}e-2` : plain);
    if (!Number.isFinite(number)) return undefined;
    if (!before && !after) return { number, format: "General" };
    const places = plain.split(".")[1]?.length ?? 0;
    const digits = places > 0 ? `0.${"0".repeat(places)}` : "0";
    return { number, format: isPercent ? `${digits}%` : `${literal(before)}${digits}${literal(after)}` };
  };
}

/** Such as `"€ "`, or nothing, as a number format has it. */
const literal = (text: string): string => text && `"${text.replace(/\s/, " ")}"`;

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
