import type { CellValue } from "../../sheet/sheet";
import { sameName } from "../sameName";
import type { UsualSetting, WeightUnit } from "../settings";
import { columnNames } from "./headings/columnNames";
import type { Reads } from "./headings/field";
import { headingUnit } from "./headings/headingUnit";
import { headingWords } from "./headings/headingWords";
import { fitsOf } from "./headings/matching";
import { type Figure, has, type Question, type UnreadColumn } from "./questions";
import type { TableTypeId } from "./registry";
import type { TableRows } from "./tableRows";
import type { TableType } from "./tableType";
import { otherUnitsOf } from "./unitColumn";

/** A column that nobody reads and that looks needed, with what may be asked about it: the first that holds. */
export interface AskedColumn {
  readonly table: TableTypeId;
  readonly name: string;
  readonly questions: readonly { readonly text: string; readonly isAsked: Holds; readonly isError: Holds }[];
}

/** Whether something holds: always, never, or where this default served a row. */
export type Holds = boolean | UsualSetting;

/** Words that say that a column is money, a check, a note or the like: no figure of the pour. */
const BESIDE = [
  ..."cost costs price prices margin discount tax vat fee profit paid deposit currency check checked ok status".split(
    " ",
  ),
  ..."done note notes remark remarks comment comments date due supplier brand url link photo picture".split(" "),
  ..."image lot label labels sticker waste reject rejects yield humidity made poured sold used actual real".split(" "),
  ..."weighed measured stock hand reorder reordering".split(" "),
];

/** The columns of a table that nobody reads and that look needed, so that no figure is passed over in silence. */
export function unreadColumns(type: TableType, table: TableRows, unit: WeightUnit): AskedColumn[] {
  const { headings, rows } = table;
  const columns = new Map(Object.entries<number | undefined>(table.columns));
  const names = columnNames(headings);
  const read = new Set(columns.values());
  const leftOut = new Set(table.leftOut?.map(sameName));
  const questions = [otherUnitsOf(type.fields, unit), secondOf(type), ...type.asks];
  const columnOf = (field: string) => names[columns.get(field) ?? -1];
  const elsewhere = elsewhereOf(type, (field) => columns.get(field) !== undefined);
  return headings.flatMap((heading, i): AskedColumn[] => {
    const name = names[i] as string;
    if (read.has(i) || leftOut.has(sameName(name))) return [];
    const column = lookAt(
      heading,
      rows.map((row) => row[i] ?? null),
      columnOf,
    );
    const isBeside = has(column, BESIDE);
    const asked = questions
      .filter(({ isAsked, isOfAny }) => (isOfAny || !isBeside) && isAsked(column))
      .map(({ text, figure, onlyWhere, stops = false }) => {
        const isElsewhere = figure !== undefined && elsewhere[figure];
        const words = `The column "${name}" ${text(column)}`;
        const isAsked = onlyWhere === "not here" ? isElsewhere !== false : onlyWhere ? isElsewhere : true;
        return { text: words, isAsked, isError: stops || isElsewhere };
      });
    return asked.length === 0 ? [] : [{ table: table.type, name, questions: asked }];
  });
}

/** Whether a row may be poured by a load, or filled by a weight, that stands in no column of the table. */
function elsewhereOf({ fields }: TableType, has: (field: string) => boolean): Readonly<Record<Figure, Holds>> {
  const ownFill = has("fill") ? false : has("water") ? "waxFactor" : true;
  return { load: has("load") ? false : "load", fill: "fill" in fields ? ownFill : "waxFactor" };
}

function lookAt(heading: string, all: readonly CellValue[], columnOf: UnreadColumn["columnOf"]): UnreadColumn {
  const { words, aside } = headingWords(heading);
  const unit = headingUnit(heading);
  const cells = all.filter((cell) => cell !== null && cell !== "");
  return {
    heading,
    words: new Set([...words, ...aside]),
    isWeight: unit !== undefined && "weight" in unit,
    isFilled: cells.length > 0,
    isNumeric: cells.some((cell) => typeof cell === "number"),
    isShares: cells.length > 0 && cells.every(isShare),
    texts: cells.map(wordsIn).filter((text) => text !== ""),
    isTicked: cells.some(
      (cell) => cell === true || /^(y(es)?|x|✓|✔|true|ok|done|poured|made|finished)$/i.test(wordsIn(cell)),
    ),
    columnOf,
  };
}

const wordsIn = (cell: CellValue): string => (typeof cell === "string" ? cell.trim() : "");

/** Whether a cell is a percentage as loads are: common practice, no source. */
function isShare(cell: CellValue): boolean {
  return typeof cell === "number" ? cell > 0 && cell < 0.3 : /^\d+([.,]\d+)?\s*%$/.test(String(cell).trim());
}

/** Asked of every type: a column that says what another one is read as. */
function secondOf({ fields }: TableType): Question {
  const find = ({ heading, columnOf, words }: UnreadColumn) => {
    for (const { field, score, isUnsure } of fitsOf(fields, heading)) {
      const taken = columnOf(field);
      const { reads = "words", name = field } = fields[field] ?? {};
      // A second scent of a blend is a name with a number.
      const isNumbered = field === "scent" && words.size === 2 && [...words].some((word) => /^\d+$/.test(word));
      const isMeasure = MEASURES.includes(reads) && (reads !== "count" || score > PLAIN);
      if (taken !== undefined && !isUnsure && (isMeasure || isNumbered)) return { name, taken };
    }
    return undefined;
  };
  return {
    isAsked: (column) => find(column) !== undefined,
    text: (column) => {
      const { name = "", taken = "" } = find(column) ?? {};
      return `is not read: ${taken} is taken as ${name.toLowerCase()}. Choose the right one under Columns, or leave this one out`;
    },
  };
}

/** Measures of which a table has one column each. */
const MEASURES: readonly Reads[] = ["count", "amount", "weight", "factor", "share", "parts"];
/** Above it a heading begins with a word of a field, or is one. */
const PLAIN = 550;
