/** The objects of Excel that the adapter uses, as kinds of remote objects over the model. */

import { type Area, type Book, columnOf, OfficeError, type SheetModel, type TableModel } from "./model";
import { finderOf, type Handle, type Kind, remote } from "./remote";

const ROWS = 1_048_576;
const COLUMNS = 16_384;

// --- cells -----------------------------------------------------------------------------------------------------

const cellsOf = <T>(area: Area, of: (row: number, column: number) => T): T[][] => {
  if (area.rows * area.columns > 5_000_000) throw new OfficeError("RangeExceedsLimit");
  return Array.from({ length: area.rows }, (_, r) =>
    Array.from({ length: area.columns }, (_, c) => of(area.row + r, area.column + c)),
  );
};

const wrongSize = () => new OfficeError("InvalidArgument", "The array does not have the size of the range.");

/** Refuses a block whose size is not the range's, as Excel does. */
function forBlock(area: Area, block: unknown, put: (row: number, column: number, value: unknown) => void): void {
  const fits =
    Array.isArray(block) &&
    block.length === area.rows &&
    block.every((row) => Array.isArray(row) && row.length === area.columns);
  if (!fits) throw wrongSize();
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
  sheet.book.fillColumns(area, (row, column) => (block as unknown[][])[row - area.row]?.[column - area.column] ?? null);
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
    font: ({ find }) =>
      remote(
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
    fill: ({ find }) => remote({ write: { color: painting("fill.color") } }, find),
    borders: ({ find }) =>
      remote(
        {
          call: {
            getItem: (_, edge: string) =>
              remote({ write: { style: drawing(edge, "style"), color: drawing(edge, "color") } }, find),
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
    worksheet: ({ find }) => remote(WORKSHEET, () => find()?.sheet ?? null),
    format: ({ find }) => remote(FORMAT, many(find)),
  },
  call: {
    getRow: (self, index: number) => from(self, (area) => ({ ...area, row: area.row + index, rows: 1 })),
    // So the client begins a block of many cells, which it sends in several.
    _ValidateArraySize: ({ send }, rows: number, columns: number) =>
      send((area) => {
        if (rows !== area.rows || columns !== area.columns) throw wrongSize();
      }),
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
    getRowProperties: ({ send }, wanted: { rowHidden: true }) => {
      if (JSON.stringify(wanted) !== '{"rowHidden":true}') throw new Error("The stand-in knows which rows are hidden.");
      return send(({ sheet, row, rows }) =>
        Array.from({ length: rows }, (_, i) => ({ rowHidden: sheet.hiddenRows.has(row + i) })),
      );
    },
    getResizedRange: ({ find }, moreRows: number, moreColumns: number) => {
      return remote(RANGE, () => {
        const area = find();
        return area && { ...area, rows: area.rows + moreRows, columns: area.columns + moreColumns };
      });
    },
    merge: ({ send }, across: boolean) =>
      send((area) => area.sheet.merges.push(`${area.row},${area.column} ${area.rows}x${area.columns} ${across}`)),
    select: ({ send }) =>
      send((area) => {
        const { book } = area.sheet;
        if (book.sheets[book.active] !== area.sheet) throw new OfficeError("InvalidOperation");
        book.selected = [area];
      }),
    getUsedRangeOrNullObject: ({ find }, valuesOnly: boolean) => usedRange(find, valuesOnly),
    getSpecialCellsOrNullObject: ({ find }, type: string, values?: string) => {
      if (type !== "Formulas" || values !== undefined) throw new Error("The stand-in finds formulas only.");
      return remote(
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
function from({ find }: Handle<Area>, make: (area: Area) => Area): object {
  return remote(RANGE, () => {
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

function usedRange(find: () => Area | null, valuesOnly: boolean): object {
  if (!valuesOnly) throw new Error("The stand-in does not know which empty cells have a format.");
  const there = (): Area | null => {
    const area = find();
    // Only the range itself may be missing, never what it is asked of.
    if (!area) throw new OfficeError("ItemNotFound");
    return used(area);
  };
  return remote(RANGE, there, true);
}

const AREAS: Kind<Area[]> = {
  reach: {
    format: ({ find }) => remote(FORMAT, find),
    areas: ({ find }) => remote<Area[]>({ items: (_, areas) => areas.map((area) => remote(RANGE, () => area)) }, find),
  },
};

// --- tables ----------------------------------------------------------------------------------------------------

const TABLE: Kind<TableModel> = {
  read: {
    id: ({ id }) => id,
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
    worksheet: ({ find }) => remote(WORKSHEET, () => find()?.area.sheet ?? null),
    autoFilter: ({ find }) => remote(FILTER, find),
    rows: ({ find }) => remote(TABLE_ROWS, find),
  },
  call: {
    getHeaderRowRange: ({ find }) =>
      remote(RANGE, () => {
        const table = find();
        return table?.showHeaders ? { ...table.area, rows: 1 } : null;
      }),
    getRange: ({ find }) => remote(RANGE, () => find()?.area ?? null),
    resize: ({ send }, to: object) => {
      const area = finderOf<Area>(to);
      send((table) => {
        const { book } = table.area.sheet;
        if (book.unknown.has("table.resize")) throw new OfficeError("ApiNotFound");
        book.resize(table, area() as Area);
      });
    },
    getDataBodyRange: ({ find }) =>
      remote(RANGE, () => {
        const table = find();
        return table && bodyOf(table);
      }),
  },
};

const FILTER: Kind<{ isFiltered: boolean }> = { read: { isDataFiltered: ({ isFiltered }) => isFiltered } };

const TABLE_ROWS: Kind<TableModel> = {
  read: { count: (table) => bodyOf(table).rows },
  items: ({ find }, table) => Array.from({ length: bodyOf(table).rows }, (_, index) => tableRow(find, () => index)),
  call: {
    add: ({ find, send }, index?: number | null, values?: unknown[][]) => {
      if ((index ?? -1) !== -1) throw new Error("The stand-in adds rows at the end only.");
      const first = send((table) => {
        const { rows } = bodyOf(table);
        for (const row of values ?? [undefined]) table.area.sheet.book.addRow(table, row);
        return rows;
      });
      return tableRow(find, () => first);
    },
  },
};

const bodyOf = (table: TableModel): Area => table.area.sheet.book.body(table);

/** A row of a table by its place, as Excel keeps it: whatever row stands there now. */
function tableRow(find: () => TableModel | null, index: () => number): object {
  const area = (): Area | null => {
    const table = find();
    const body = table && bodyOf(table);
    return body && index() < body.rows ? { ...body, row: body.row + index(), rows: 1 } : null;
  };
  const kind: Kind<Area> = {
    read: { values: valuesOf },
    call: {
      getRange: () => remote(RANGE, area),
      delete: ({ send }) =>
        send(() => {
          const table = find() as TableModel;
          table.area.sheet.book.deleteRow(table, index());
        }),
    },
  };
  return remote(kind, area);
}

/** By what methods office.js has Excel tell of events from now on, or no more. */
const telling = (events: Readonly<Record<string, string>>): Kind<Book>["call"] =>
  Object.fromEntries(
    Object.entries(events).flatMap(([method, event]) => [
      [`_Register${method}`, ({ send }: Handle<Book>) => send((book) => book.tell(event))],
      [`_Unregister${method}`, ({ send }: Handle<Book>) => send((book) => book.tellNoMore(event))],
    ]),
  );

const TABLES: Kind<Book> = {
  items: (_, book) => book.tables().map((table) => remote(TABLE, () => table)),
  call: {
    ...telling({ AddedEvent: "tables.onAdded", DeletedEvent: "tables.onDeleted" }),
    getItem: ({ find }, name: string) =>
      remote(
        TABLE,
        () =>
          find()
            ?.tables()
            .find((table) => table.name === name || table.id === name) ?? null,
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
    // The client has a name of its own for it.
    gridlines: (sheet, show: boolean) => {
      sheet.showGridlines = show;
    },
  },
  reach: {
    protection: ({ find }) => remote<SheetModel>({ read: { protected: (one) => one.protected } }, find),
    autoFilter: ({ find }) => remote(FILTER, find),
    freezePanes: ({ find }) =>
      remote<SheetModel>(
        {
          call: {
            freezeRows: ({ send }, count: number) =>
              send((sheet) => {
                sheet.frozenRows = count;
              }),
          },
        },
        find,
      ),
    horizontalPageBreaks: ({ find }) =>
      remote<SheetModel>(
        {
          call: {
            add: ({ send }, cell: string) => {
              send((sheet) => {
                const page = pageOf(sheet);
                page.breaks = [...((page.breaks as string[] | undefined) ?? []), cell];
              });
              return remote<string>({}, () => cell);
            },
          },
        },
        find,
      ),
    pageLayout: ({ send }) => remote(PAGE, () => send(pageOf)),
    tables: ({ find }) =>
      remote<SheetModel>(
        {
          items: (_, { tables }) => tables.map((table) => remote(TABLE, () => table)),
          call: {
            add: (_, range: object, hasHeaders: boolean) => {
              const area = finderOf<Area>(range);
              if (!hasHeaders) throw new Error("The stand-in makes tables with headings only.");
              const where = area();
              if (!where || where.sheet !== find()) throw new OfficeError("InvalidArgument");
              const made = where.sheet.book.addTable(where);
              return remote(TABLE, () => made);
            },
          },
        },
        find,
      ),
  },
  call: {
    getUsedRangeOrNullObject: ({ find }, valuesOnly: boolean) =>
      usedRange(() => {
        const sheet = find();
        return sheet && { sheet, row: 0, column: 0, rows: ROWS, columns: COLUMNS };
      }, valuesOnly),
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
    getRanges: ({ find }, list: string) => {
      if (list.length > 8192) throw new OfficeError("InvalidArgument", "The address is too long.");
      return remote(AREAS, () => {
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

function range({ find }: Handle<SheetModel>, of: (sheet: SheetModel) => Area): object {
  return remote(RANGE, () => {
    const sheet = find();
    return sheet && of(sheet);
  });
}

/** How a sheet is printed; Excel refuses to set that up where it finds no printer. */
function pageOf(sheet: SheetModel): SheetModel["page"] {
  if (!sheet.book.hasPrinter) throw new OfficeError("GeneralException");
  return sheet.page;
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
    headersFooters: ({ find }) => remote({ reach: { defaultForAllPages: () => remote(FOOTER, find) } }, find),
  },
  call: {
    setPrintTitleRows: ({ send }, rows: string) =>
      send((page) => {
        page.titleRows = rows;
      }),
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

const WORKSHEETS: Kind<Book> = {
  items: (_, { sheets }) => sheets.map((sheet) => remote(WORKSHEET, () => sheet)),
  call: {
    ...telling({
      DataChangedEvent: "worksheets.onChanged",
      AddedEvent: "worksheets.onAdded",
      DeletedEvent: "worksheets.onDeleted",
      CalculatedEvent: "worksheets.onCalculated",
      RowSortedEvent: "worksheets.onRowSorted",
      ColumnSortedEvent: "worksheets.onColumnSorted",
      EventNameChanged: "worksheets.onNameChanged",
      RowHiddenChangedEvent: "worksheets.onRowHiddenChanged",
      ActivatedEvent: "worksheets.onActivated",
    }),
    getItem: ({ find }, key: string) => remote(WORKSHEET, () => find()?.find(key) ?? null),
    getItemOrNullObject: ({ find }, key: string) => remote(WORKSHEET, () => find()?.find(key) ?? null, true),
    getActiveWorksheet: ({ find }) =>
      remote(WORKSHEET, () => {
        const book = find();
        return book?.sheets[book.active] ?? null;
      }),
    add: ({ send }, name: string) => {
      const made = send((book) => {
        if (book.protected) throw new OfficeError("AccessDenied");
        return book.add(name);
      });
      return remote(WORKSHEET, () => made);
    },
  },
};

const SETTINGS: Kind<Book> = {
  call: {
    getItemOrNullObject: ({ find }, key: string) => setting(find, key),
    add: ({ find, send }, key: string, value: unknown) => {
      send(({ settings }) => settings.set(key, value));
      return setting(find, key);
    },
  },
};

function setting(find: () => Book | null, key: string): object {
  const one: Kind<Map<string, unknown>> = {
    read: { value: (settings) => settings.get(key) },
    call: { delete: ({ send }) => send((settings) => settings.delete(key)) },
  };
  const there = () => {
    const settings = find()?.settings;
    return settings?.has(key) ? settings : null;
  };
  return remote(one, there, true);
}

/** The functions of a worksheet, worked out for a program. */
const FUNCTIONS: Kind<Book> = {
  call: {
    date: ({ find }, year: number, month: number, day: number) =>
      remote<Book>(
        {
          read: {
            // Days since the last one of 1899, or since the first of 1904; right from March 1900 on.
            value: ({ from1904 }) => Date.UTC(year, month - 1, day) / 86_400_000 + 25_569 - (from1904 ? 1462 : 0),
            error: () => null,
          },
        },
        find,
      ),
  },
};

const WORKBOOK: Kind<Book> = {
  reach: {
    functions: ({ find }) => remote(FUNCTIONS, find),
    application: ({ find }) => remote(APPLICATION, find),
    worksheets: ({ find }) => remote(WORKSHEETS, find),
    tables: ({ find }) => remote(TABLES, find),
    settings: ({ find }) => remote(SETTINGS, find),
    protection: ({ find }) => remote<Book>({ read: { protected: (book) => book.protected } }, find),
    names: ({ find }) => {
      const one: Kind<string> = { read: { name: (name) => name } };
      return remote<Book>({ items: (_, { names }) => names.map((name) => remote(one, () => name)) }, find);
    },
  },
  call: {
    getSelectedRange: ({ find }) =>
      remote(RANGE, () => {
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
    calculate: ({ find }, type: string) => {
      if (type !== "Recalculate") throw new Error("The stand-in calculates what has changed.");
      const book = find() as Book;
      // Nothing says what Excel makes of it while calculation is suspended.
      if (book.isSuspended) return;
      book.calculate();
      void book.fire("worksheets.onCalculated");
    },
  },
};

/** Where all requests begin. */
export const rootOf = (book: Book): object => remote(WORKBOOK, () => book);

/** What stands beside the workbook, by the names of its types. */
export const servicesOf = (book: Book): Readonly<Record<string, object>> => ({
  "Microsoft.AppRuntime.AppRuntimePersistenceService": remote(START_UP, () => book),
});

const START_UP: Kind<Book> = {
  call: {
    setAppRuntimeStartState: ({ send }, state: string) =>
      send((book) => {
        book.startState = state;
      }),
    getAppRuntimeStartState: ({ send }) => send(({ startState }) => startState),
  },
};
