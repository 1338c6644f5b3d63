import type { Book, BookSheet, CellStyle, Font } from "./book";

/** What a font is of which nothing is said. */
export const PLAIN_FONT: Font = {
  name: "Calibri",
  size: 11,
  bold: false,
  italic: false,
  underline: "none",
  strike: false,
  color: null,
};

/** The look of cells of which nothing is said. */
export const PLAIN_STYLE: CellStyle = { font: PLAIN_FONT, fill: null, border: {}, format: "General", align: {} };

/** A workbook with nothing in it. */
export const emptyBook = (): Book => ({
  sheets: [],
  styles: [],
  names: [],
  active: 0,
  from1904: false,
  settings: {},
});

/** A sheet with nothing on it. */
export const emptySheet = (id: string, name: string): BookSheet => ({
  id,
  name,
  state: "visible",
  rows: [],
  columns: [],
  merges: [],
  frozen: { rows: 0, columns: 0 },
  tables: [],
  filter: null,
  validations: [],
  conditions: [],
  notes: [],
  links: [],
  showsGrid: true,
  print: null,
  tabColor: null,
  defaultWidth: null,
  defaultHeight: null,
});
