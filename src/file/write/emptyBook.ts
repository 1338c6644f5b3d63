import type { Book, BookSheet } from "../book";

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
