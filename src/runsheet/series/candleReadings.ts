import type { ReadingField, SeenColumn, SeenColumns } from "./seenColumns";

/** A candle's readings on the sheet of a series: fetched into hidden cells, where all other formulas look at them. */

/** The columns of readings that formulas look at. */
export const LOOK_FIELDS = [
  ...(["cycle", "minutes", "weight", "flame", "pool", "poolDepth"] as const),
  ...(["depth", "soot", "glass", "throw", "remarks"] as const),
] as const satisfies readonly ReadingField[];
export type LookField = (typeof LOOK_FIELDS)[number];
/** Hidden columns that a candle's readings take: these, and whether each is placed. */
export const LOOK_COLUMNS = LOOK_FIELDS.length + 1;

const JUDGED = ["flame", "pool", "depth", "soot", "glass"] as const satisfies readonly LookField[];
const TAKEN = [...JUDGED, "weight", "poolDepth", "throw", "remarks"] as const satisfies readonly LookField[];

const LENGTHS: readonly LookField[] = ["flame", "pool", "poolDepth", "depth"];

/**
 * Fetches a column of a candle's readings: one formula that fills as many cells. A blank comes as an empty text, and a
 * length below 0, which cannot be read, as a text too.
 */
export function looksAt({ reading }: SeenColumns, field: LookField, candle: string): string | undefined {
  const column = reading(field);
  if (!column) return undefined;
  const own = `TRIM(${refOf(reading("test"))})=${candle}`;
  const cell = LENGTHS.includes(field) ? `IF(${column.ref}<0,"below 0",${column.ref})` : column.ref;
  return `=IF(${candle}="","",IFERROR(FILTER(IF(${column.ref}="","",${cell}),${own}),""))`;
}

/**
 * Whether the place in the burn of each reading can be read, 1 or 0: a cycle counted from 1, and the minutes since it
 * began, which a clock time is not.
 */
export function placedAt({ reading }: SeenColumns, { candle, looks }: Pick<CandleCells, "candle" | "looks">): string {
  const [cycle, minutes] = [looks("cycle"), looks("minutes")];
  const times = reading("minutes")?.times ?? "";
  const isCycle = `IF(ISNUMBER(${cycle}),(${cycle}>=1)*(INT(${cycle})=${cycle}),0)`;
  const isTime = `IF(ISNUMBER(${minutes}),(${minutes}=0)+(${minutes}${times}>=1),0)`;
  return `=IF(${candle}="","",${isCycle}*${isTime})`;
}

/** Cells of the candle's own row. */
export interface CandleCells {
  readonly candle: string;
  /** Its row in the table of burn tests, and the first of its readings, counted from 1. */
  readonly at: string;
  readonly first: string;
  readonly width: string;
  /** Its readings, as `looksAt` fetches them; undefined for a column that the table does not have. */
  readonly looks: (field: LookField) => string | undefined;
  /** For each of them, whether it is placed, as `placedAt` says. */
  readonly placed: string;
  /** Whether one of its weights is above an earlier one: 1 or 0. */
  readonly rise: string;
  /** The cell below the last of them that there is room for. */
  readonly over: string;
  /** Says which headings no longer name the units that all of this goes by. */
  readonly renamed: string;
}

export interface CandleReadings {
  readonly cells: CandleCells;
  readonly cycle: SeenColumn;
  readonly minutes: SeenColumn;
  /** What makes a reading say how the candle burns, and what makes it one at all. */
  readonly judged: readonly SeenColumn[];
  readonly taken: readonly SeenColumn[];
  readonly column: (field: LookField) => SeenColumn | undefined;
  /** Those that are there. */
  readonly columns: (fields: readonly LookField[]) => readonly SeenColumn[];
}

export function candleReadings({ reading }: SeenColumns, cells: CandleCells): CandleReadings {
  const column = (field: LookField): SeenColumn | undefined => {
    const [inTable, ref] = [reading(field), cells.looks(field)];
    return inTable && ref !== undefined ? { ...inTable, ref } : undefined;
  };
  const columns = (fields: readonly LookField[]) => fields.flatMap((field) => column(field) ?? []);
  const [cycle, minutes] = columns(["cycle", "minutes"]) as [SeenColumn, SeenColumn];
  return { cells, cycle, minutes, column, columns, judged: columns(JUDGED), taken: columns(TAKEN) };
}

export const refOf = (column: SeenColumn | undefined): string => (column as SeenColumn).ref;
export const isFilled = ({ ref }: SeenColumn): string => `(TRIM(${ref})<>"")`;
export const isNumber = ({ ref }: SeenColumn): string => `ISNUMBER(${ref})`;
export const isAnyFilled = (columns: readonly SeenColumn[]): string =>
  columns.length > 0 ? `(${columns.map(isFilled).join("+")}>0)` : "0";

/** The numbers of a column in readings whose place is known, else empty texts. */
export const numbersIn = ({ cells }: CandleReadings, { ref, times }: SeenColumn, and = ""): string =>
  `IF(${cells.placed}*ISNUMBER(${ref})${and},${ref}${times},"")`;

/** Blank in a row that no candle has. */
export const unlessFree = ({ candle }: CandleCells, formula: string): string => `=IF(${candle}="","",${formula})`;

/** The same, and this while the candle has no readings. */
export const ifRead = (cells: CandleCells, formula: string, none = '""'): string =>
  unlessFree(cells, `IF(${cells.first}="",${none},${formula})`);

/** Empty where the table does not have the column. */
export function ifThere(own: CandleReadings, field: LookField, formula: (column: SeenColumn) => string): string {
  const column = own.column(field);
  return column ? ifRead(own.cells, formula(column)) : NOT_SAID;
}
export const NOT_SAID = '=""';
