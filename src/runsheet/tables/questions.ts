import { VESSEL_WORDS } from "./headings/headingWords";
import { WICK_TOOLS } from "./wick";

/** What may be asked about a column that nobody reads. Those of one type of table stand in its file. */
export interface Question {
  readonly isAsked: (column: UnreadColumn) => boolean;
  /** Follows the name of the column. */
  readonly text: (column: UnreadColumn) => string;
  /** What the column may say: where that stands elsewhere, the run waits until it is decided. */
  readonly figure?: Figure;
  /** Whether it is asked only where that figure has no column here, or only where its default served a row. */
  readonly onlyWhere?: "not here" | "default";
  /** Whether it is asked of columns of money, days and remarks too, which are no figure of the pour as a rule. */
  readonly isOfAny?: true;
  /** Whether the run waits until it is decided, whatever stands elsewhere. */
  readonly stops?: true;
}

export type Figure = "load" | "fill";

/** A column that nobody reads, as the questions look at it. */
export interface UnreadColumn {
  readonly heading: string;
  /** Its words, those in brackets among them. */
  readonly words: ReadonlySet<string>;
  readonly isWeight: boolean;
  /** Whether any cell holds something, whether any is a number, and whether all are percentages as loads are. */
  readonly isFilled: boolean;
  readonly isNumeric: boolean;
  readonly isShares: boolean;
  /** The texts in its cells, without the spaces around them. */
  readonly texts: readonly string[];
  /** Whether any cell is ticked, or says yes. */
  readonly isTicked: boolean;
  /** The name of the column that a field has; undefined where it has none. */
  readonly columnOf: (field: string) => string | undefined;
}

export const has = ({ words }: UnreadColumn, any: readonly string[]): boolean => any.some((word) => words.has(word));

/** Words of weights that follow from others, or are of something else than wax and scent. */
export const FOLLOWS: readonly string[] = [
  ..."each total totals sum tare empty gross shipping pot pots wick wicks lid box minimum".split(" "),
  ...VESSEL_WORDS,
];
const DYES = ["dye", "dyes", "colour", "color", "pigment", "mica", "additive", "additives", "uv"];
const STRENGTHS = ["strength", "concentration", "intensity", "ratio", "dilution"];
const FACTORS = ["density", "sg", "gravity", "ratio", "factor", "conversion"];
const LIMITED = ["load", "scent", "%", "wax", "product"];

/** Shares below a heading that speaks of a limit are limits, whatever else it says. */
export const isLimit = (column: UnreadColumn): boolean =>
  column.words.has("maximum") && !column.isWeight && (column.isShares || has(column, LIMITED));

export const orLeave = (what: string): string =>
  `is not read. If it is ${what}, choose it so under Columns; if not, leave it out`;

export const ASK_LIMIT: Question = {
  isAsked: isLimit,
  text: () => "is not read: a limit is no load. Limits stand in the table of scents; write it there, or leave it out",
  figure: "load",
};
export const ASK_LOAD: Question = {
  isAsked: (column) =>
    has(column, ["load"]) ||
    ((has(column, ["%"]) || column.isShares) && !has(column, DYES)) ||
    (has(column, ["scent"]) && has(column, STRENGTHS)),
  text: () => orLeave("the load"),
  figure: "load",
};
/** A factor, its vowels left out too. */
const isCalledFactor = (column: UnreadColumn): boolean =>
  has(column, FACTORS) || [...column.words].some((word) => /^f(a?c?t?r|act?)s?$/.test(word));
export const ASK_FACTOR: Question = {
  isAsked: (column) => column.isNumeric && isCalledFactor(column) && column.columnOf("factor") === undefined,
  text: () => orLeave("the wax factor"),
  figure: "fill",
};
export const ASK_WATER: Question = {
  isAsked: (column) => has(column, ["water"]) && column.columnOf("water") === undefined,
  text: () => orLeave("the water weight"),
  figure: "fill",
};
export const ASK_SHARE: Question = {
  isAsked: (column) => has(column, ["%", "load"]),
  text: () =>
    "is not read: a share has no place in this table that its heading says. Choose its column, or leave it out",
};
export const ASK_WICK: Question = {
  isAsked: (column) => has(column, ["wick", "wicks"]) && !has(column, WICK_TOOLS),
  text: () =>
    "is not read here: the approved wick of a vessel stands in the table of vessels. Write it there, or leave it out",
};
