/**
 * Univer's numbers for what it names. They stand here because a worker that reads files would else load all of Univer
 * for them; a test compares them with Univer's own.
 */

import type {
  BaselineOffset,
  BooleanNumber,
  BorderStyleTypes,
  CellValueType,
  CustomRangeType,
  DataValidationRenderMode,
  HorizontalAlign,
  LocaleType,
  TextDecoration,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";

export const YES = 1 as BooleanNumber.TRUE;
export const NO = 0 as BooleanNumber.FALSE;

export const VALUE_TYPE = {
  text: 1 as CellValueType.STRING,
  number: 2 as CellValueType.NUMBER,
  boolean: 3 as CellValueType.BOOLEAN,
  /** A text that stays one when its cell is edited. */
  forcedText: 4 as CellValueType.FORCE_STRING,
} as const;

/** Line styles by their names in the file format. */
export const BORDERS: Readonly<Record<string, BorderStyleTypes>> = {
  thin: 1,
  hair: 2,
  dotted: 3,
  dashed: 4,
  dashDot: 5,
  dashDotDot: 6,
  double: 7,
  medium: 8,
  mediumDashed: 9,
  mediumDashDot: 10,
  mediumDashDotDot: 11,
  slantDashDot: 12,
  thick: 13,
};

export const HORIZONTAL = {
  left: 1 as HorizontalAlign.LEFT,
  center: 2 as HorizontalAlign.CENTER,
  right: 3 as HorizontalAlign.RIGHT,
  justify: 4 as HorizontalAlign.JUSTIFIED,
  distributed: 6 as HorizontalAlign.DISTRIBUTED,
} as const;

export const VERTICAL = {
  top: 1 as VerticalAlign.TOP,
  center: 2 as VerticalAlign.MIDDLE,
  bottom: 3 as VerticalAlign.BOTTOM,
} as const;

export const WRAPS = 3 as WrapStrategy.WRAP;

export const UNDERLINE = {
  double: 10 as TextDecoration.DOUBLE,
  single: 12 as TextDecoration.SINGLE,
} as const;

export const ON_THE_LINE = 1 as BaselineOffset.NORMAL;
export const RAISED = {
  subscript: 2 as BaselineOffset.SUBSCRIPT,
  superscript: 3 as BaselineOffset.SUPERSCRIPT,
} as const;

export const HYPERLINK = 0 as CustomRangeType.HYPERLINK;

/** A list in a cell with an arrow beside the text; else what is chosen is drawn as a coloured label. */
export const ARROW = 1 as DataValidationRenderMode.ARROW;

export const EN_US = "enUS" as LocaleType.EN_US;

/** A row of totals is marked so, as Univer knows none. */
export const TOTALS = "totals";

/** Under which names Univer's packages keep what is theirs in a workbook. */
export const RESOURCES = {
  tables: "SHEET_TABLE_PLUGIN",
  filters: "SHEET_FILTER_PLUGIN",
  validations: "SHEET_DATA_VALIDATION_PLUGIN",
  conditions: "SHEET_CONDITIONAL_FORMATTING_PLUGIN",
  notes: "SHEET_NOTE_PLUGIN",
  names: "SHEET_DEFINED_NAME_PLUGIN",
} as const;

/** The key of a thing by its code. */
export function keyOf<K extends string>(codes: Readonly<Record<K, unknown>>, code: unknown): K | undefined {
  return (Object.keys(codes) as K[]).find((key) => codes[key] === code);
}
