/** The objects of Excel that the adapter uses, as kinds of remote objects over the model. */

import { type Area, type Book, columnOf, OfficeError, type SheetModel, type TableModel } from "./model";
import { finderOf, type Handle, type Kind, type Queue, remote } from "./remote";

const ROWS = 1_048_576;
const COLUMNS = 16_384;

// --- cells -----------------------------------------------------------------------------------------------------

const cellsOf = <T>(area: Area, of: (row: number, column: number) => T): T[][] => {
  if (area.rows * area.columns > 5_000_000) throw new OfficeError("RangeExceedsLimit");
  return Array.from({ length: area.rows }, (_, r) =>
    Array.from({ length: area.columns }, (_, c) => of(area.row + r, area.column + c)),
  );
};

/** Refuses a block whose size is not the range's, as Excel does. */
function forBlock(area: Area, block: unknown, put: (row: number, column: number, value: unknown) => void): void {
  const fits =
    Array.isArray(block) &&
    block.length === area.rows &&
    block.every((row) => Array.isArray(row) && row.length === area.columns);
  if (!fits) throw new OfficeError("InvalidArgument", "The array does not have the size of the range.");
  for (const [r, row] of block.entries())
    for (const [c, value] of row.entries()) put(area.row + r, area.column + c, value);
}

const each = (area: Area, paint: (row: number, column: number) => void): void => {
  cellsOf(area, paint);
};

function valuesOf(area: Area): unknown[][] {
  const shown = area.sheet.shown();
  return cellsOf(area, (row, column) => shown.get(`${row},${column}`)?.value ?? "");
}

function enter(
  area: Area,
  block: unknown,
  put = (row: number, column: number, value: unknown): void => area.sheet.enter(row, column, value),
): void {
  const { sheet, rows } = area;
  if (sheet.protected) throw new OfficeError("AccessDenied");
  // A table's filter hides whole rows, what stands beside the table included.
  const isBeside = ({ area: { row, rows: high } }: TableModel): boolean =>
    row < area.row + rows && area.row < row + high;
  const isFiltered = sheet.isFiltered || sheet.tables.some((table) => table.isFiltered && isBeside(table));
  if (isFiltered && rows > 1) throw new Error("Excel would put these into other rows: a filter hides some.");
  forBlock(area, block, put);
}

/** `A1`, `A1:B2`, `A:B`, `1:2`. */
function parse(sheet: SheetModel, address: string): Area {
  const found = /^([A-Z]*)(\d*)(?::([A-Z]*)(\d*))?$/.exec(address.trim());
  if (!found || address.trim() === "") throw new OfficeError("InvalidArgument", `${address} is no address.`);
  const [, a = "", from = "", b = a, to = from] = found;
  const row = from ? Number(from) - 1 : 0;
  const column = a ? columnOf(a) : 0;
  return {
    sheet,
    row,
    column,
    rows: (to ? Number(to) : ROWS) - row,
    columns: (b ? columnOf(b) + 1 : COLUMNS) - column,
  };
}

/** The smallest block with everything in it that an area holds, or null. */
function used(area: Area): Area | null {
  const held = [...area.sheet.shown().keys()]
    .map((key) => key.split(",").map(Number) as [number, number])
    .filter(
      ([row, column]) =>
        row >= area.row && row < area.row + area.rows && column >= area.column && column < area.column + area.columns,
    );
  if (held.length === 0) return null;
  const rows = held.map(([row]) => row);
  const columns = held.map(([, column]) => column);
  const row = Math.min(...rows);
  const column = Math.min(...columns);
  return {
    sheet: area.sheet,
    row,
    column,
    rows: Math.max(...rows) - row + 1,
    columns: Math.max(...columns) - column + 1,
  };
}

/** The formulas of a sheet, as blocks of one column. */
function formulasOf(sheet: SheetModel): Area[] {
  const areas: Area[] = [];
  const found = [...sheet.cells]
    .filter(([, { formula }]) => formula !== null)
    .map(([key]) => key.split(",").map(Number) as [number, number])
    .sort(([r, c], [s, d]) => c - d || r - s);
  for (const [row, column] of found) {
    const last = areas.at(-1);
    if (last && last.column === column && last.row + last.rows === row) {
      areas[areas.length - 1] = { ...last, rows: last.rows + 1 };
    } else areas.push({ sheet, row, column, rows: 1, columns: 1 });
  }
  return areas;
}

// --- looks -----------------------------------------------------------------------------------------------------

const painting =
  (what: string) =>
  (areas: Area[], value: unknown): void => {
    for (const area of areas) each(area, (row, column) => area.sheet.paint(row, column, what, value));
  };

const sizing =
  (whole: "rows" | "columns") =>
  (areas: Area[], value: number): void => {
    for (const { sheet, row, column, rows, columns } of areas) {
      const full = whole === "columns" ? rows === ROWS : columns === COLUMNS;
      if (!full) throw new Error(`The stand-in sizes whole ${whole} only.`);
      const [into, first, count] = whole === "columns" ? [sheet.widths, column, columns] : [sheet.heights, row, rows];
      for (let i = 0; i < count; i++) into.set(first + i, value);
    }
  };

/** The sides of the cells that an edge of a block draws. */
const SIDES: Readonly<Record<string, (area: Area, row: number, column: number) => string[]>> = {
  EdgeTop: (area, row) => (row === area.row ? ["top"] : []),
  EdgeBottom: (area, row) => (row === area.row + area.rows - 1 ? ["bottom"] : []),
  EdgeLeft: (area, _, column) => (column === area.column ? ["left"] : []),
  EdgeRight: (area, _, column) => (column === area.column + area.columns - 1 ? ["right"] : []),
  InsideHorizontal: (area, row) => [
    ...(row > area.row ? ["top"] : []),
    ...(row < area.row + area.rows - 1 ? ["bottom"] : []),
  ],
  InsideVertical: (area, _, column) => [
    ...(column > area.column ? ["left"] : []),
    ...(column < area.column + area.columns - 1 ? ["right"] : []),
  ],
};

function drawing(edge: string, what: string) {
  return (areas: Area[], value: unknown): void => {
    for (const area of areas) {
      if (edge === "InsideHorizontal" && area.rows < 2) throw new OfficeError("InvalidArgument", "No inside.");
      if (edge === "InsideVertical" && area.columns < 2) throw new OfficeError("InvalidArgument", "No inside.");
      each(area, (row, column) => {
        for (const side of SIDES[edge]?.(area, row, column) ?? []) {
          area.sheet.paint(row, column, `border.${side}.${what}`, value);
        }
      });
    }
  };
}

const FORMAT: Kind<Area[]> = {
  write: {
    wrapText: painting("wrapText"),
    verticalAlignment: painting("verticalAlignment"),
    horizontalAlignment: painting("horizontalAlignment"),
    columnWidth: sizing("columns"),
    rowHeight: sizing("rows"),
  },
  reach: {
    font: ({ queue, find }) =>
      remote(
        queue,
        {
          write: {
            bold: painting("font.bold"),
            italic: painting("font.italic"),
            size: painting("font.size"),
            color: painting("font.color"),
          },
        },
        find,
      ),
    fill: ({ queue, find }) => remote(queue, { write: { color: painting("fill.color") } }, find),
    borders: ({ queue, find }) =>
      remote(
        queue,
        {
          call: {
            getItem: (_, edge: string) =>
              remote(queue, { write: { style: drawing(edge, "style"), color: drawing(edge, "color") } }, find),
          },
        },
        find,
      ),
  },
  call: { autofitRows: ({ send }) => send(() => {}) },
};

// --- ranges ----------------------------------------------------------------------------------------------------

const many = (find: () => Area | null) => (): Area[] | null => {
  const area = find();
  return area && [area];
};

const RANGE: Kind<Area> = {
  read: {
    rowIndex: ({ row }) => row,
    columnIndex: ({ column }) => column,
    rowCount: ({ rows }) => rows,
    columnCount: ({ columns }) => columns,
    cellCount: ({ rows, columns }) => rows * columns,
    values: valuesOf,
    valueTypes: (area) => {
      const shown = area.sheet.shown();
      return cellsOf(area, (row, column) => shown.get(`${row},${column}`)?.type ?? "Empty");
    },
    // A text's apostrophe is not among them: that is how Excel answers.
    formulas: (area) =>
      cellsOf(area, (row, column) => {
        const cell = area.sheet.cell(row, column);
        return cell?.formula ?? cell?.value ?? "";
      }),
    formulasR1C1: (area) =>
      cellsOf(area, (row, column) => {
        const cell = area.sheet.cell(row, column);
        return cell?.formula ? area.sheet.r1c1(row, column) : (cell?.value ?? "");
      }),
    rowHidden: ({ sheet, row, rows }) => {
      const hidden = Array.from({ length: rows }, (_, i) => sheet.hiddenRows.has(row + i));
      return hidden.every((one) => one === hidden[0]) ? hidden[0] : null;
    },
  },
  write: {
    values: (area, block) => enter(area, block),
    formulas: (area, block) => enter(area, block),
    formulasR1C1: (area, block) => enter(area, block, (row, column, value) => area.sheet.enterR1C1(row, column, value)),
    columnHidden: ({ sheet, column, rows, columns }, hide: boolean) => {
      // Excel hides whole columns only.
      if (rows !== ROWS) throw new OfficeError("InvalidArgument");
      for (let i = 0; i < columns; i++) {
        if (hide) sheet.hidden.add(column + i);
        else sheet.hidden.delete(column + i);
      }
    },
    numberFormat: (area, block) =>
      forBlock(area, block, (row, column, value) => {
        if (value !== null) area.sheet.paint(row, column, "numberFormat", value);
      }),
  },
  reach: {
    worksheet: ({ queue, find }) => remote(queue, WORKSHEET, () => find()?.sheet ?? null),
    format: ({ queue, find }) => remote(queue, FORMAT, many(find)),
  },
  call: {
    getLastRow: (self) => from(self, (area) => ({ ...area, row: area.row + area.rows - 1, rows: 1 })),
    getEntireColumn: (self) => from(self, (area) => ({ ...area, row: 0, rows: ROWS })),
    getBoundingRect: (self, other: object) => {
      const find = finderOf<Area>(other);
      return from(self, (area) => {
        const more = find();
        if (more?.sheet !== area.sheet) throw new OfficeError("InvalidArgument");
        return around(area, more);
      });
    },
    getIntersection: (self, other: object) => {
      const find = finderOf<Area>(other);
      return from(self, (area) => {
        const more = find();
        const [row, column] = [Math.max(area.row, more?.row ?? 0), Math.max(area.column, more?.column ?? 0)];
        const rows = Math.min(area.row + area.rows, more ? more.row + more.rows : 0) - row;
        const columns = Math.min(area.column + area.columns, more ? more.column + more.columns : 0) - column;
        if (rows < 1 || columns < 1) throw new OfficeError("ItemNotFound");
        return { sheet: area.sheet, row, column, rows, columns };
      });
    },
    getRowProperties: ({ queue, find }, wanted: { rowHidden: true }) => {
      if (JSON.stringify(wanted) !== '{"rowHidden":true}') throw new Error("The stand-in knows which rows are hidden.");
      const answer: { value?: unknown } = {};
      queue.push(() => {
        const area = find();
        if (!area) throw new OfficeError("ItemNotFound");
        const { sheet, row, rows } = area;
        const value = Array.from({ length: rows }, (_, i) => ({ rowHidden: sheet.hiddenRows.has(row + i) }));
        return () => Object.assign(answer, { value });
      }, wanted);
      return answer;
    },
    getResizedRange: ({ queue, find }, moreRows: number, moreColumns: number) => {
      queue.push(() => undefined, [moreRows, moreColumns]);
      return remote(queue, RANGE, () => {
        const area = find();
        return area && { ...area, rows: area.rows + moreRows, columns: area.columns + moreColumns };
      });
    },
    merge: ({ send }, across: boolean) =>
      send(
        (area) => area.sheet.merges.push(`${area.row},${area.column} ${area.rows}x${area.columns} ${across}`),
        across,
      ),
    select: ({ send }) =>
      send((area) => {
        const { book } = area.sheet;
        if (book.sheets[book.active] !== area.sheet) throw new OfficeError("InvalidOperation");
        book.selected = [area];
      }),
    getUsedRangeOrNullObject: ({ queue, find }, valuesOnly: boolean) => usedRange(queue, find, valuesOnly),
    getSpecialCellsOrNullObject: ({ queue, find }, type: string, values?: string) => {
      if (type !== "Formulas" || values !== undefined) throw new Error("The stand-in finds formulas only.");
      return remote(
        queue,
        AREAS,
        () => {
          const area = find();
          if (area?.sheet.protected) throw new OfficeError("AccessDenied");
          const found = area ? formulasOf(area.sheet) : [];
          return found.length > 0 ? found : null;
        },
        true,
      );
    },
  },
};

/** A range made from another one. */
function from({ queue, find }: Handle<Area>, make: (area: Area) => Area): object {
  queue.push(() => undefined, "range");
  return remote(queue, RANGE, () => {
    const area = find();
    return area && make(area);
  });
}

/** The smallest block that holds both. */
function around(a: Area, b: Area): Area {
  const [row, column] = [Math.min(a.row, b.row), Math.min(a.column, b.column)];
  const rows = Math.max(a.row + a.rows, b.row + b.rows) - row;
  return { sheet: a.sheet, row, column, rows, columns: Math.max(a.column + a.columns, b.column + b.columns) - column };
}

function usedRange(queue: Queue, find: () => Area | null, valuesOnly: boolean): object {
  if (!valuesOnly) throw new Error("The stand-in does not know which empty cells have a format.");
  const there = (): Area | null => {
    const area = find();
    // Only the range itself may be missing, never what it is asked of.
    if (!area) throw new OfficeError("ItemNotFound");
    return used(area);
  };
  return remote(queue, RANGE, there, true);
}

const AREAS: Kind<Area[]> = {
  reach: {
    format: ({ queue, find }) => remote(queue, FORMAT, find),
    areas: ({ queue, find }) =>
      remote<Area[]>(queue, { items: (_, areas) => areas.map((area) => remote(queue, RANGE, () => area)) }, find),
  },
};

// --- tables ----------------------------------------------------------------------------------------------------

const TABLE: Kind<TableModel> = {
  read: {
    name: ({ name }) => name,
    showHeaders: ({ showHeaders }) => showHeaders,
    showTotals: ({ showTotals }) => showTotals,
  },
  write: {
    name: (table, name: string) => table.area.sheet.book.renameTable(table, name),
    style: (table, style: string) => {
      table.style = style;
    },
    showBandedRows: (table, show: boolean) => {
      table.showBandedRows = show;
    },
  },
  reach: {
    worksheet: ({ queue, find }) => remote(queue, WORKSHEET, () => find()?.area.sheet ?? null),
    autoFilter: ({ queue, find }) => remote(queue, FILTER, find),
    rows: ({ queue, find }) => remote(queue, TABLE_ROWS, find),
  },
  call: {
    getHeaderRowRange: ({ queue, find }) =>
      remote(queue, RANGE, () => {
        const table = find();
        return table?.showHeaders ? { ...table.area, rows: 1 } : null;
      }),
    getRange: ({ queue, find }) => remote(queue, RANGE, () => find()?.area ?? null),
    resize: ({ send }, to: object) => {
      const area = finderOf<Area>(to);
      send((table) => {
        const { book } = table.area.sheet;
        if (book.unknown.has("table.resize")) throw new OfficeError("ApiNotFound");
        book.resize(table, area() as Area);
      });
    },
    getDataBodyRange: ({ queue, find }) =>
      remote(queue, RANGE, () => {
        const table = find();
        return table && bodyOf(table);
      }),
  },
};

const FILTER: Kind<{ isFiltered: boolean }> = { read: { isDataFiltered: ({ isFiltered }) => isFiltered } };

const TABLE_ROWS: Kind<TableModel> = {
  read: { count: (table) => bodyOf(table).rows },
  items: ({ queue, find }, table) =>
    Array.from({ length: bodyOf(table).rows }, (_, index) => tableRow(queue, find, () => index)),
  call: {
    add: ({ queue, find, send }, index?: number | null, values?: unknown[][]) => {
      if ((index ?? -1) !== -1) throw new Error("The stand-in adds rows at the end only.");
      let first = 0;
      send(
        (table) => {
          first = bodyOf(table).rows;
          for (const row of values ?? [undefined]) table.area.sheet.book.addRow(table, row);
        },
        index,
        values,
      );
      return tableRow(queue, find, () => first);
    },
  },
};

const bodyOf = (table: TableModel): Area => table.area.sheet.book.body(table);

/** A row of a table by its place, as Excel keeps it: whatever row stands there now. */
function tableRow(queue: Queue, find: () => TableModel | null, index: () => number): object {
  const area = (): Area | null => {
    const table = find();
    const body = table && bodyOf(table);
    return body && index() < body.rows ? { ...body, row: body.row + index(), rows: 1 } : null;
  };
  const kind: Kind<Area> = {
    read: { values: valuesOf },
    call: {
      getRange: () => remote(queue, RANGE, area),
      delete: ({ send }) =>
        send(() => {
          const table = find() as TableModel;
          table.area.sheet.book.deleteRow(table, index());
        }),
    },
  };
  return remote(queue, kind, area);
}

const TABLES: Kind<Book> = {
  items: ({ queue }, book) => book.tables().map((table) => remote(queue, TABLE, () => table)),
  reach: {
    onAdded: ({ queue, find }) => event(queue, find() as Book, "tables.onAdded"),
    onDeleted: ({ queue, find }) => event(queue, find() as Book, "tables.onDeleted"),
  },
  call: {
    getItem: ({ queue, find }, name: string) =>
      remote(
        queue,
        TABLE,
        () =>
          find()
            ?.tables()
            .find((table) => table.name === name) ?? null,
      ),
  },
};

// --- worksheets and the workbook ---------------------------------------------------------------------------------

const WORKSHEET: Kind<SheetModel> = {
  read: {
    id: ({ id }) => id,
    name: ({ name }) => name,
    position: (sheet) => sheet.book.sheets.indexOf(sheet),
  },
  write: {
    name: (sheet, name: string) => {
      sheet.book.checkName(name, sheet);
      sheet.name = name;
    },
    showGridlines: (sheet, show: boolean) => {
      sheet.showGridlines = show;
    },
  },
  reach: {
    protection: ({ queue, find }) => remote<SheetModel>(queue, { read: { protected: (one) => one.protected } }, find),
    autoFilter: ({ queue, find }) => remote(queue, FILTER, find),
    freezePanes: ({ queue, find }) =>
      remote<SheetModel>(
        queue,
        {
          call: {
            freezeRows: ({ send }, count: number) =>
              send((sheet) => {
                sheet.frozenRows = count;
              }, count),
          },
        },
        find,
      ),
    horizontalPageBreaks: ({ queue, find }) =>
      remote<SheetModel>(
        queue,
        {
          call: {
            add: ({ send }, cell: string) =>
              send(({ page }) => {
                page.breaks = [...((page.breaks as string[] | undefined) ?? []), cell];
              }, cell),
          },
        },
        find,
      ),
    pageLayout: ({ queue, find }) => remote(queue, PAGE, () => find()?.page ?? null),
    tables: ({ queue, find }) =>
      remote<SheetModel>(
        queue,
        {
          items: (_, { tables }) => tables.map((table) => remote(queue, TABLE, () => table)),
          call: {
            add: (_, range: object, hasHeaders: boolean) => {
              let made: TableModel | null = null;
              const area = finderOf<Area>(range);
              queue.push(() => {
                if (!hasHeaders) throw new Error("The stand-in makes tables with headings only.");
                const where = area();
                if (!where || where.sheet !== find()) throw new OfficeError("InvalidArgument");
                made = where.sheet.book.addTable(where);
                return undefined;
              }, hasHeaders);
              return remote(queue, TABLE, () => made);
            },
          },
        },
        find,
      ),
  },
  call: {
    getUsedRangeOrNullObject: ({ queue, find }, valuesOnly: boolean) =>
      usedRange(
        queue,
        () => {
          const sheet = find();
          return sheet && { sheet, row: 0, column: 0, rows: ROWS, columns: COLUMNS };
        },
        valuesOnly,
      ),
    getUsedRange: (self, valuesOnly: boolean) => {
      if (!valuesOnly) throw new Error("The stand-in does not know which empty cells have a format.");
      return range(self, (sheet) => {
        const whole = { sheet, row: 0, column: 0, rows: ROWS, columns: COLUMNS };
        // Of a blank sheet it is the first cell.
        return used(whole) ?? { ...whole, rows: 1, columns: 1 };
      });
    },
    getRange: (self, address?: string) => range(self, (sheet) => parse(sheet, address ?? `1:${ROWS}`)),
    getRangeByIndexes: (self, row: number, column: number, rows: number, columns: number) =>
      range(self, (sheet) => {
        if (Math.min(row, column) < 0 || Math.min(rows, columns) < 1) throw new OfficeError("InvalidArgument");
        return { sheet, row, column, rows, columns };
      }),
    getRanges: ({ queue, find }, list: string) => {
      if (list.length > 8192) throw new OfficeError("InvalidArgument", "The address is too long.");
      queue.push(() => undefined, list);
      return remote(queue, AREAS, () => {
        const sheet = find();
        return sheet && list.split(",").map((address) => parse(sheet, address));
      });
    },
    activate: ({ send }) =>
      send((sheet) => {
        sheet.book.active = sheet.book.sheets.indexOf(sheet);
      }),
    delete: ({ send }) =>
      send((sheet) => {
        const { book } = sheet;
        const at = book.sheets.indexOf(sheet);
        if (book.protected) throw new OfficeError("AccessDenied");
        if (book.sheets.length === 1) throw new OfficeError("InvalidOperation");
        book.sheets.splice(at, 1);
        if (book.active >= at) book.active = Math.max(0, book.active - 1);
      }),
  },
};

function range({ queue, find }: Handle<SheetModel>, of: (sheet: SheetModel) => Area): object {
  queue.push(() => undefined, "range");
  return remote(queue, RANGE, () => {
    const sheet = find();
    return sheet && of(sheet);
  });
}

const PAGE_PROPERTIES = [
  ...["paperSize", "orientation", "leftMargin", "rightMargin", "topMargin", "bottomMargin", "footerMargin"],
];

const PAGE: Kind<Record<string, unknown>> = {
  write: Object.fromEntries(
    [...PAGE_PROPERTIES, "zoom"].map((property) => [
      property,
      (page: Record<string, unknown>, value: unknown) => {
        page[property] = value;
      },
    ]),
  ),
  reach: {
    headersFooters: ({ queue, find }) =>
      remote(queue, { reach: { defaultForAllPages: () => remote(queue, FOOTER, find) } }, find),
  },
  call: {
    setPrintTitleRows: ({ send }, rows: string) =>
      send((page) => {
        page.titleRows = rows;
      }, rows),
  },
};

const FOOTER: Kind<Record<string, unknown>> = {
  write: Object.fromEntries(
    ["leftFooter", "centerFooter", "rightFooter"].map((property) => [
      property,
      (page: Record<string, unknown>, value: unknown) => {
        page[property] = value;
      },
    ]),
  ),
};

/** An event that program parts listen to. */
function event(queue: Queue, book: Book, name: string): object {
  if (book.unknown.has(name)) throw new OfficeError("ApiNotFound");
  const listeners = book.listeners.get(name) ?? new Set();
  book.listeners.set(name, listeners);
  const add = (_: unknown, listener: () => Promise<void>): object => {
    queue.push(() => () => listeners.add(listener), name);
    return { remove: () => queue.push(() => () => listeners.delete(listener), name) };
  };
  return remote<true>(queue, { call: { add } }, () => true);
}

const WORKSHEETS: Kind<Book> = {
  items: ({ queue }, { sheets }) => sheets.map((sheet) => remote(queue, WORKSHEET, () => sheet)),
  reach: {
    onChanged: ({ queue, find }) => event(queue, find() as Book, "worksheets.onChanged"),
    onAdded: ({ queue, find }) => event(queue, find() as Book, "worksheets.onAdded"),
    onDeleted: ({ queue, find }) => event(queue, find() as Book, "worksheets.onDeleted"),
    onCalculated: ({ queue, find }) => event(queue, find() as Book, "worksheets.onCalculated"),
    onRowSorted: ({ queue, find }) => event(queue, find() as Book, "worksheets.onRowSorted"),
    onColumnSorted: ({ queue, find }) => event(queue, find() as Book, "worksheets.onColumnSorted"),
    onNameChanged: ({ queue, find }) => event(queue, find() as Book, "worksheets.onNameChanged"),
    onRowHiddenChanged: ({ queue, find }) => event(queue, find() as Book, "worksheets.onRowHiddenChanged"),
    onActivated: ({ queue, find }) => event(queue, find() as Book, "worksheets.onActivated"),
  },
  call: {
    getItem: ({ queue, find }, key: string) => remote(queue, WORKSHEET, () => find()?.find(key) ?? null),
    getItemOrNullObject: ({ queue, find }, key: string) =>
      remote(queue, WORKSHEET, () => find()?.find(key) ?? null, true),
    getActiveWorksheet: ({ queue, find }) =>
      remote(queue, WORKSHEET, () => {
        const book = find();
        return book?.sheets[book.active] ?? null;
      }),
    add: ({ queue, send }, name: string) => {
      let made: SheetModel | null = null;
      send((book) => {
        if (book.protected) throw new OfficeError("AccessDenied");
        made = book.add(name);
      }, name);
      return remote(queue, WORKSHEET, () => made);
    },
  },
};

const SETTINGS: Kind<Book> = {
  call: {
    getItemOrNullObject: ({ queue, find }, key: string) => {
      const value: Kind<Map<string, unknown>> = {
        read: { value: (settings) => settings.get(key) },
        call: { delete: ({ send }) => send((settings) => settings.delete(key)) },
      };
      return remote(
        queue,
        value,
        () => {
          const settings = find()?.settings;
          return settings?.has(key) ? settings : null;
        },
        true,
      );
    },
    add: ({ send }, key: string, value: unknown) => send(({ settings }) => settings.set(key, value), key, value),
  },
};

const WORKBOOK: Kind<Book> = {
  reach: {
    worksheets: ({ queue, find }) => remote(queue, WORKSHEETS, find),
    tables: ({ queue, find }) => remote(queue, TABLES, find),
    settings: ({ queue, find }) => remote(queue, SETTINGS, find),
    protection: ({ queue, find }) => remote<Book>(queue, { read: { protected: (book) => book.protected } }, find),
    names: ({ queue, find }) => {
      const one: Kind<string> = { read: { name: (name) => name } };
      return remote<Book>(
        queue,
        { items: (_, { names }) => names.map((name) => remote(queue, one, () => name)) },
        find,
      );
    },
  },
  call: {
    getSelectedRange: ({ queue, find }) =>
      remote(queue, RANGE, () => {
        const book = find() as Book;
        const [only, ...more] = book.selected;
        if (!only || more.length > 0) throw new OfficeError("InvalidSelection");
        return { ...only, sheet: book.sheets[book.active] as SheetModel };
      }),
  },
};

const APPLICATION: Kind<Book> = {
  read: {
    calculationMode: ({ calculationMode }) => calculationMode,
    calculationState: ({ calculationState }) => calculationState,
  },
  call: {
    suspendApiCalculationUntilNextSync: ({ send }) =>
      send((book) => {
        book.isSuspended = true;
      }),
    calculate: ({ queue, find }, type: string) => {
      if (type !== "Recalculate") throw new Error("The stand-in calculates what has changed.");
      const book = find() as Book;
      queue.push(() => {
        book.calculate();
        return () => void book.fire("worksheets.onCalculated");
      }, type);
    },
  },
};

/** The `context` of a batch, without its sync. */
export function rootOf(queue: Queue, book: Book): { workbook: object; application: object } {
  return { workbook: remote(queue, WORKBOOK, () => book), application: remote(queue, APPLICATION, () => book) };
}
