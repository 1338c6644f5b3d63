import type { CellValue } from "../../sheet/sheet";
import type { UsualSetting } from "../plan/readRows";
import { columnNames } from "./headings/columnNames";
import { headingUnit } from "./headings/headingUnit";
import { headingWords, VESSEL_WORDS } from "./headings/headingWords";
import { fitsOf, KINDS, type Kind, type KindName, type Reads, roleName } from "./kinds";
import { type Problem, sameName, type TableRows } from "./tableReader";

/** A column that nobody reads, as the questions look at it. */
interface Unread {
  readonly kind: KindName;
  readonly heading: string;
  /** Its words, those in brackets among them. */
  readonly words: ReadonlySet<string>;
  readonly isWeight: boolean;
  /** Whether any cell is a number, and whether all are percentages as loads are. */
  readonly isNumeric: boolean;
  readonly isShares: boolean;
  /** The name of the column that has a role; undefined where none has. */
  readonly columnOf: (role: string) => string | undefined;
  /** Whether any row is poured by a load, or filled by a weight, that stands elsewhere. */
  readonly isElsewhere: Readonly<Record<Figure, boolean>>;
}

type Figure = "load" | "fill";

interface Question {
  readonly kinds: readonly KindName[];
  readonly isAsked: (column: Unread) => boolean;
  /** Follows the name of the column. */
  readonly text: (column: Unread) => string;
  /** What the column may say: where that stands elsewhere, the run stops until it is decided. */
  readonly figure?: Figure;
}

/** Words that say that a column is money, a check, a note or the like: no figure of the pour. */
const BESIDE = [
  ..."cost costs price prices margin discount tax vat fee profit paid deposit currency check checked ok status".split(
    " ",
  ),
  ..."done note notes remark remarks comment comments date due supplier brand url link photo picture".split(" "),
  ..."image lot label labels sticker waste reject rejects yield humidity made poured sold used actual real".split(" "),
  ..."weighed measured stock hand reorder reordering".split(" "),
];
/** Words of weights that follow from others, or are of something else than wax and scent. */
const FOLLOWS = [
  ..."each total totals sum tare empty gross shipping pot pots wick wicks lid box minimum".split(" "),
  ...VESSEL_WORDS,
];
const DYES = ["dye", "dyes", "colour", "color", "pigment", "mica", "additive", "additives", "uv"];
const STRENGTHS = ["strength", "concentration", "intensity", "ratio", "dilution"];
const FACTORS = ["density", "sg", "gravity", "ratio", "factor", "conversion"];
const LIMITED = ["load", "scent", "%", "wax", "product"];
/** Measures of which a table has one column each. */
const MEASURES: readonly Reads[] = ["count", "amount", "weight", "factor", "share", "parts"];

const has = ({ words }: Unread, any: readonly string[]): boolean => any.some((word) => words.has(word));
/** Shares below a heading that speaks of a limit are limits, whatever else it says. */
const isLimit = (column: Unread): boolean =>
  column.words.has("maximum") && !column.isWeight && (column.isShares || has(column, LIMITED));
const orLeave = (what: string): string =>
  `is not read. If it is ${what}, choose it so under Columns; if not, leave it out`;

/** A role that the column says as well as the one that has it does. */
function second({ kind, heading, columnOf, words }: Unread): { role: string; taken: string } | undefined {
  for (const { role, score, isUnsure } of fitsOf(kind, heading)) {
    const taken = columnOf(role);
    const { reads } = (KINDS[kind] as Kind).fields[role] as Kind["fields"][string];
    // A second scent of a blend is a name with a number.
    const isNumbered = role === "scent" && words.size === 2 && [...words].some((word) => /^\d+$/.test(word));
    const isMeasure = MEASURES.includes(reads) && (reads !== "count" || score > PLAIN);
    if (taken !== undefined && !isUnsure && (isMeasure || isNumbered)) return { role, taken };
  }
  return undefined;
}
/** Above it a heading begins with a word of a role, or is one. */
const PLAIN = 550;

/** What is asked, the first that fits. */
const QUESTIONS: readonly Question[] = [
  {
    kinds: ["pour", "vessels", "scents", "recipes", "stock", "prices"],
    isAsked: (column) => second(column) !== undefined,
    text: (column) => {
      const { role, taken } = second(column) as { role: string; taken: string };
      return `is not read: ${taken} is taken as ${roleName(column.kind, role).toLowerCase()}. Choose the right one under Columns, or leave this one out`;
    },
  },
  {
    kinds: ["scents"],
    isAsked: (column) =>
      isLimit(column) || (column.words.has("maximum") && !column.isWeight && column.words.size === 1),
    text: () =>
      "is not read: a limit, and not known whose. Choose it as Wax maximum or Product limit under Columns, or leave it out",
  },
  {
    kinds: ["pour", "recipes", "vessels"],
    isAsked: isLimit,
    text: () => "is not read: a limit is no load. Limits stand in the table of scents; write it there, or leave it out",
    figure: "load",
  },
  {
    kinds: ["pour", "scents"],
    isAsked: (column) =>
      has(column, ["load"]) ||
      ((has(column, ["%"]) || column.isShares) && !has(column, DYES)) ||
      (has(column, ["scent"]) && has(column, STRENGTHS)),
    text: () => orLeave("the load"),
    figure: "load",
  },
  {
    kinds: ["pour"],
    isAsked: (column) =>
      has(column, ["scent"]) &&
      !has(column, ["wax", "total"]) &&
      (column.isWeight || column.isNumeric) &&
      column.isElsewhere.load,
    text: () =>
      "is a weight of scent, and no load is read: write the load as a share of wax or of total, as POUR.LOADFROM works it out, or leave the column out",
    figure: "load",
  },
  {
    kinds: ["pour"],
    isAsked: (column) =>
      has(column, ["wax"]) &&
      !has(column, ["scent", "total", ...(column.columnOf("water") ? ["each"] : [])]) &&
      (column.isWeight || column.isNumeric) &&
      column.isElsewhere.fill,
    text: () =>
      "is a weight of wax alone, and no fill weight is read: write the weight of wax and scent together, or leave the column out",
    figure: "fill",
  },
  {
    kinds: ["pour"],
    isAsked: (column) => column.isWeight && !has(column, ["wax", "scent", ...FOLLOWS]),
    text: () => orLeave("the fill weight or the water weight"),
    figure: "fill",
  },
  {
    kinds: ["pour", "vessels"],
    isAsked: (column) => column.isNumeric && has(column, FACTORS) && column.columnOf("factor") === undefined,
    text: () => orLeave("the wax factor"),
    figure: "fill",
  },
  {
    kinds: ["pour", "vessels"],
    isAsked: (column) => has(column, ["water"]) && column.columnOf("water") === undefined,
    text: () => orLeave("the water weight"),
    figure: "fill",
  },
  {
    kinds: ["pour", "vessels", "scents", "recipes"],
    isAsked: (column) => has(column, ["%", "load"]),
    text: () =>
      "is not read: a share has no place in this table that its heading says. Choose its column, or leave it out",
  },
  {
    kinds: ["pour", "vessels", "scents"],
    isAsked: (column) => has(column, ["wick", "wicks"]),
    text: () => "is not read: the run sheet names no wick. Leave it out, and keep it for your own use",
  },
  {
    kinds: ["scents"],
    isAsked: (column) => has(column, ["flash"]) && column.columnOf("flash") === undefined,
    text: () => orLeave("the flash point"),
  },
  {
    kinds: ["scents"],
    isAsked: (column) => has(column, ["cure"]) && column.columnOf("cure") === undefined,
    text: () => "is not read: curing is read in whole days. Write it so, or leave it out",
  },
];

/**
 * Asks about columns that nobody reads and that look needed, so that no figure is passed over in silence. It stops
 * where the run would otherwise pour by what stands elsewhere.
 */
export function unreadColumns(table: TableRows<KindName>, usual: ReadonlySet<UsualSetting>): Problem[] {
  const { kind, headings, rows } = table;
  const columns = new Map(Object.entries<number | undefined>(table.columns));
  const names = columnNames(headings);
  const read = new Set(columns.values());
  const leftOut = new Set(table.leftOut?.map(sameName));
  const isOwnFill = columns.has("fill") || (columns.has("water") && !usual.has("waxFactor"));
  const isElsewhere = {
    load: usual.has("load") && !columns.has("load"),
    fill: kind === "pour" ? !isOwnFill : usual.has("waxFactor"),
  };
  return headings.flatMap((heading, i): Problem[] => {
    const name = names[i] as string;
    if (read.has(i) || leftOut.has(sameName(name))) return [];
    const { words, aside } = headingWords(heading);
    const unit = headingUnit(heading);
    const cells = rows.map((row) => row[i] ?? null).filter((cell) => cell !== null && cell !== "");
    const column: Unread = {
      kind,
      heading,
      words: new Set([...words, ...aside]),
      isWeight: unit !== undefined && "weight" in unit,
      isNumeric: cells.some((cell) => typeof cell === "number"),
      isShares: cells.length > 0 && cells.every(isShare),
      columnOf: (role) => names[columns.get(role) ?? -1],
      isElsewhere,
    };
    if (has(column, BESIDE)) return [];
    const question = QUESTIONS.find(({ kinds, isAsked }) => kinds.includes(kind) && isAsked(column));
    if (!question) return [];
    const stops = question.figure !== undefined && isElsewhere[question.figure];
    return [{ kind, unread: name, text: `The column "${name}" ${question.text(column)}`, stops }];
  });
}

/** Whether a cell is a percentage as loads are: common practice, no source. */
function isShare(cell: CellValue): boolean {
  return typeof cell === "number" ? cell > 0 && cell < 0.3 : /^\d+([.,]\d+)?\s*%$/.test(String(cell).trim());
}
