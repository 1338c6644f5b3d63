import fc, { type Arbitrary } from "fast-check";
import type {
  Area,
  Book,
  BookCell,
  BookRow,
  BookSheet,
  BookTable,
  CellStyle,
  ColumnRange,
  Condition,
  DefinedName,
  Font,
  Link,
  Note,
  Validation,
} from "../../../src/file/book";
import { emptySheet } from "../../../src/file/emptyBook";
import type { CellValue } from "../../../src/sheet/sheet";
import { anyCharacter } from "../../anyCharacter";

/** Workbooks of all kinds, as a file would give them: in order, without what says nothing. */

const color = fc.constantFrom("000000", "FF0000", "1A2B3C", "FFFFFF");
const text = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 12 }),
  fc.string({ unit: anyCharacter, maxLength: 4 }),
  fc.constantFrom("", " spaced ", "two\nlines", "=1+1", "007", "_x0041_", "]]>", "<&\"'>", "\r\n", "\u0007", "TRUE"),
);
const shortText = fc.constantFrom("One", "a & b", "two\nlines", '"<>"', " x ");
const number = fc
  .oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer())
  .filter((one) => !Object.is(one, -0));
const error = fc.constantFrom("#N/A", "#DIV/0!", "#VALUE!", "#NAME?").map((code) => ({ error: code }));
const value: Arbitrary<CellValue> = fc.oneof(text, number, fc.boolean(), error, fc.constant(null));
const formula = fc.constantFrom(
  "=1+1",
  '="a<b"&A1',
  "=SUM($A$1:B2)",
  '=TEXTJOIN(", ",TRUE,A1:A3)',
  "='It''s'!A1*2",
  "=LET(x,1,x+1)",
  "=A1#",
  "=_xlfnot",
);

/** Without what is undefined. */
const said = <T extends object>(fields: Arbitrary<T>): Arbitrary<T> =>
  fields.map((one) => Object.fromEntries(Object.entries(one).filter(([, field]) => field !== undefined)) as T);

const maybe = <T>(one: Arbitrary<T>): Arbitrary<T | undefined> => fc.option(one, { nil: undefined });
const yes = maybe(fc.constant(true as const));

const font: Arbitrary<Font> = said(
  fc.record({
    name: fc.constantFrom("Calibri", "Arial", "Fira & Sons"),
    size: fc.integer({ min: 2, max: 144 }).map((half) => half / 2),
    bold: fc.boolean(),
    italic: fc.boolean(),
    underline: fc.constantFrom("none" as const, "single" as const, "double" as const),
    strike: fc.boolean(),
    color: fc.option(color),
    raised: maybe(fc.constantFrom("superscript" as const, "subscript" as const)),
  }),
) as Arbitrary<Font>;

const edge = maybe(fc.record({ style: fc.constantFrom("thin", "double", "mediumDashDot"), color: fc.option(color) }));

const style: Arbitrary<CellStyle> = said(
  fc.record({
    font,
    fill: fc.option(color),
    border: said(fc.record({ top: edge, bottom: edge, left: edge, right: edge })) as Arbitrary<CellStyle["border"]>,
    format: fc.constantFrom(
      "General",
      "0.0%",
      "m/d/yyyy",
      '0.00 "g"',
      "[Red][<0]0.0;0.0",
      "#,##0.00_);[Red](#,##0.00)",
      "@",
    ),
    align: said(
      fc.record({
        horizontal: maybe(fc.constantFrom("left" as const, "center" as const, "centerContinuous" as const)),
        vertical: maybe(fc.constantFrom("top" as const, "distributed" as const)),
        wrap: yes,
        indent: maybe(fc.integer({ min: 1, max: 9 })),
        rotation: maybe(fc.constantFrom(-90, -45, 1, 90, "stacked" as const)),
        shrink: yes,
      }),
    ) as Arbitrary<CellStyle["align"]>,
    unlocked: yes,
  }),
) as Arbitrary<CellStyle>;

const area = (rows: number, columns: number): Arbitrary<Area> =>
  fc.record({
    row: fc.nat(rows),
    column: fc.nat(columns),
    rows: fc.integer({ min: 1, max: 4 }),
    columns: fc.integer({ min: 1, max: 4 }),
  });
const areas = fc.array(area(40, 8), { minLength: 1, maxLength: 2 });

/** Texts in the last of the looks are held by an apostrophe: in a file the look says so. */
const cell = (styles: number): Arbitrary<Omit<BookCell, "column">> =>
  fc.tuple(value, maybe(formula), fc.nat(styles - 1)).map(([what, how, look]) => ({
    value: what,
    style: look,
    ...(how !== undefined && { formula: how }),
    // In a file it is an array, though it fills its own cell alone.
    ...(how?.startsWith("=LET(") && { spill: { rows: 1, columns: 1, dynamic: true } }),
    ...(how === undefined && typeof what === "string" && look > 0 && look === styles - 1 && { quoted: true as const }),
  }));

const rich: Arbitrary<Pick<BookCell, "value" | "runs">> = fc
  .array(
    fc.record({
      text,
      font: said(fc.record({ bold: yes, color: maybe(color), size: maybe(fc.constant(9)) })) as Arbitrary<
        Partial<Font>
      >,
    }),
    {
      minLength: 1,
      maxLength: 3,
    },
  )
  .filter((runs) => runs.some((run) => Object.keys(run.font).length > 0))
  .map((runs) => ({ value: runs.map((run) => run.text).join(""), runs }));

const row = (styles: number): Arbitrary<Omit<BookRow, "row">> =>
  said(
    fc.record({
      height: maybe(fc.integer({ min: 4, max: 400 })),
      hidden: yes,
      style: maybe(fc.nat(styles - 1)),
      cells: fc
        .uniqueArray(fc.tuple(fc.nat(9), cell(styles)), { selector: ([column]) => column, minLength: 1, maxLength: 6 })
        .map((cells) =>
          cells.map(([column, one]): BookCell => ({ column, ...one })).sort((a, b) => a.column - b.column),
        ),
    }),
  ) as Arbitrary<Omit<BookRow, "row">>;

const rows = (styles: number): Arbitrary<BookRow[]> =>
  fc
    .uniqueArray(fc.tuple(fc.nat(30), row(styles)), { selector: ([at]) => at, maxLength: 6 })
    .map((list) => list.map(([at, one]): BookRow => ({ row: at, ...one })).sort((a, b) => a.row - b.row));

/** Rows below the others: a formula that fills cells around it, and a text in several looks. */
const specialRows: Arbitrary<BookRow[]> = fc
  .record({
    rows: fc.integer({ min: 1, max: 3 }),
    columns: fc.integer({ min: 2, max: 3 }),
    dynamic: fc.boolean(),
    value,
    rich,
  })
  .map(({ value: what, rich: texts, ...spill }) =>
    Array.from(
      { length: spill.rows },
      (_, r): BookRow => ({
        row: 50 + r,
        cells: [
          ...Array.from(
            { length: spill.columns },
            (_, c): BookCell =>
              r + c === 0
                ? { column: 0, value: what, formula: spill.dynamic ? "=POUR.X(A1:B2)" : "=A1:B2*2", spill, style: 0 }
                : { column: c, value: what, spilled: true, style: 0 },
          ),
          ...(r === 0 ? [{ column: 8, style: 0, ...texts }] : []),
        ],
      }),
    ),
  );

const columns = (styles: number): Arbitrary<ColumnRange[]> =>
  fc
    .array(
      said(
        fc.record({
          gap: fc.nat(2),
          size: fc.integer({ min: 1, max: 3 }),
          width: fc.integer({ min: 1, max: 60 }),
          hidden: yes,
          style: maybe(fc.integer({ min: 1, max: Math.max(1, styles - 1) })),
        }),
      ),
      { maxLength: 4 },
    )
    .map((list) => {
      let next = 0;
      return list.map((one): ColumnRange => {
        const { gap, size, style: look, ...rest } = one;
        const first = next + gap;
        next = first + size;
        return { first, last: next - 1, ...rest, ...(look !== undefined && look < styles && { style: look }) };
      });
    });

const filterColumns = fc.constantFrom(
  [],
  [{ column: 0, values: ["a & b", ""] }],
  [
    {
      column: 0,
      custom: {
        and: true,
        rules: [
          { operator: "greaterThan", value: "1" },
          { operator: "equal", value: "x*" },
        ],
      },
    },
  ],
);

/** A table with the row of its headings, right of the other cells. */
const table = (name: string, at: number): Arbitrary<{ table: BookTable; heading: BookRow }> =>
  fc
    .record({
      headings: fc.uniqueArray(fc.constantFrom("Wax", "Load (%)", "two\nlines", "a & b", "#'[x]"), { minLength: 1 }),
      rows: fc.integer({ min: 2, max: 4 }),
      hasTotals: fc.boolean(),
      formula: maybe(formula),
      total: fc.constantFrom({ label: "All" }, { function: "sum" }, { function: "custom", formula: "=1+1" }),
      look: fc.option(fc.constantFrom("TableStyleLight1", "TableStyleMedium2")),
      stripes: fc.boolean(),
      filter: fc.option(filterColumns),
    })
    .map(({ headings, rows: count, hasTotals, formula: how, total, look, stripes, filter }) => {
      const whole = { row: at, column: 20, rows: count + (hasTotals ? 1 : 0), columns: headings.length };
      return {
        heading: { row: at, cells: headings.map((heading, i) => ({ column: 20 + i, value: heading, style: 0 })) },
        table: {
          name,
          area: whole,
          hasHeadings: true,
          hasTotals,
          columns: headings.map((heading, i) => ({
            heading,
            ...(i === 0 && how !== undefined && { formula: how }),
            ...(i === 0 && hasTotals && { total }),
          })),
          filter: filter && { area: { ...whole, rows: count }, columns: filter },
          look,
          stripes,
        },
      };
    });

const validation: Arbitrary<Validation> = said(
  fc.record({
    areas,
    kind: fc.constantFrom("list" as const, "decimal" as const, "date" as const, "custom" as const),
    operator: fc.constantFrom("between" as const, "notEqual" as const),
    formulas: fc.constantFrom(['="a,b & c"'], ["=1", "=A1"], ["=Other!$A$1:$A$9"]),
    allowsBlank: fc.boolean(),
    showsList: fc.boolean(),
    onWrong: fc.constantFrom("stop" as const, "warning" as const, "information" as const, "none" as const),
    prompt: maybe(fc.record({ title: shortText, text: shortText })),
    error: maybe(fc.record({ title: shortText, text: shortText })),
  }),
).map((one) => ({
  ...(one as Validation),
  // Only a comparison has a sign, and only a list drops down.
  ...(["list", "custom"].includes(one.kind as string) && { operator: "between" as const }),
  ...(one.kind !== "list" && { showsList: true }),
  // A second bound is there only between two.
  ...((["list", "custom"].includes(one.kind as string) || one.operator === "notEqual") && {
    formulas: one.formulas?.slice(0, 1) ?? [],
  }),
}));

const look = said(
  fc.record({
    font: maybe(fc.record({ bold: fc.boolean(), color })),
    fill: maybe(color),
  }),
) as Arbitrary<NonNullable<Condition["look"]>>;

const conditionKinds: Arbitrary<Partial<Condition>> = fc.oneof(
  look.map((one) => ({ kind: "cellIs", operator: "between", formulas: ["=1", '="<x>"'], look: one })),
  look.map((one) => ({ kind: "containsText", operator: "containsText", text: "a & b", formulas: ["=A1"], look: one })),
  fc.constantFrom<Partial<Condition>>(
    {
      kind: "colorScale",
      stopsAt: [
        { kind: "min", color: "FF0000" },
        { kind: "percentile", value: "50", color: "00FF00" },
        { kind: "max", color: "0000FF" },
      ],
    },
    {
      kind: "dataBar",
      stopsAt: [
        { kind: "min", color: "FF0000" },
        { kind: "max", color: "FF0000" },
      ],
    },
    {
      kind: "iconSet",
      stopsAt: [0, 33, 67].map((at) => ({ kind: "percent", value: String(at) })),
      icons: { set: "3Arrows", reversed: true, hidesValue: false },
    },
    { kind: "top10", rank: { count: 3, percent: true, bottom: false } },
    { kind: "aboveAverage", average: { above: false, orEqual: true, deviations: 0 } },
    { kind: "timePeriod", period: "lastWeek", formulas: ["=A1>1"] },
    { kind: "duplicateValues" },
  ),
);

const conditions: Arbitrary<Condition[]> = fc
  .array(fc.tuple(areas, conditionKinds, fc.boolean()), { maxLength: 3 })
  .map((list) =>
    list.map(
      ([where, what, stops], i) => ({ areas: where, priority: i + 1, stops, formulas: [], ...what }) as Condition,
    ),
  );

const notes: Arbitrary<Note[]> = fc
  .uniqueArray(fc.record({ row: fc.nat(9), column: fc.nat(3), text, author: shortText }), {
    selector: (note) => `${note.row} ${note.column}`,
    maxLength: 3,
  })
  .map((list) => list.sort((a, b) => a.row - b.row || a.column - b.column));

const links: Arbitrary<Link[]> = fc.array(
  fc.oneof(
    area(9, 3).map((where) => ({ area: where, address: "https://example.org/?a=1&b=2", place: null, tip: "see & go" })),
    area(9, 3).map((where) => ({ area: where, address: null, place: "'It''s'!A1", tip: null })),
  ),
  { maxLength: 2 },
);

const print = fc.option(
  said(
    fc.record({
      paper: fc.constantFrom("letter" as const, "a4" as const),
      landscape: yes,
      repeatRows: maybe(fc.constantFrom([0, 0] as const, [2, 5] as const)),
      newPages: maybe(fc.constantFrom([3], [1, 7, 40])),
    }),
  ) as Arbitrary<NonNullable<BookSheet["print"]>>,
);

const sheet = (styles: number, at: number): Arbitrary<BookSheet> =>
  fc
    .record({
      name: fc.constantFrom("Plain", "It's", "a & b <c>", "Ärger 😀", "1st"),
      state: fc.constantFrom("visible" as const, "hidden" as const, "veryHidden" as const),
      rows: rows(styles),
      special: specialRows,
      columns: columns(styles),
      merge: maybe(area(40, 8).filter((one) => one.rows * one.columns > 1)),
      frozen: fc.record({ rows: fc.nat(3), columns: fc.nat(3) }),
      tables: fc.tuple(maybe(table(`First_${at}`, 60)), maybe(table(`Second${at}`, 70))),
      filter: fc.option(
        filterColumns.map((list) => ({ area: { row: 0, column: 0, rows: 9, columns: 3 }, columns: list })),
      ),
      validations: fc.array(validation, { maxLength: 2 }),
      conditions,
      notes,
      links,
      showsGrid: fc.boolean(),
      print,
      tabColor: fc.option(color),
      sizes: fc.constantFrom([null, null], [12.5, 18], [null, 20.25]),
    })
    .map(({ special, merge, tables, sizes, rows: list, name, ...rest }) => {
      const own = tables.flatMap((one) => (one ? [one] : []));
      return {
        ...emptySheet(String(at + 1), at === 0 ? name : `${name} ${at}`),
        ...rest,
        rows: [...list, ...special, ...own.map(({ heading }) => heading)],
        tables: own.map((one) => one.table),
        merges: merge ? [merge] : [],
        defaultWidth: sizes[0] ?? null,
        defaultHeight: sizes[1] ?? null,
      };
    });

const names = (sheets: readonly BookSheet[]): Arbitrary<DefinedName[]> =>
  fc.uniqueArray(
    fc.record({
      name: fc.constantFrom("Rate", "Löss_1", "other.name"),
      formula,
      sheet: fc.option(fc.constantFrom(...sheets.map(({ id }) => id))),
      hidden: fc.boolean(),
      comment: fc.option(fc.constantFrom("why", "a & b")),
    }),
    { selector: ({ name, sheet: id }) => `${name} ${id}`, maxLength: 3 },
  );

export const anyBook: Arbitrary<Book> = fc
  .array(style, { minLength: 1, maxLength: 4 })
  .chain((styles) =>
    fc.integer({ min: 1, max: 3 }).chain((count) =>
      fc.record({
        styles: fc.constant(styles),
        sheets: fc.tuple(...Array.from({ length: count }, (_, at) => sheet(styles.length, at))),
        settings: fc.dictionary(fc.constantFrom("a", "b & c"), fc.constantFrom("", '{"x":"<&>"}', "two\nlines")),
      }),
    ),
  )
  .map(({ sheets, ...book }) => ({
    ...book,
    // One sheet has to be in sight.
    sheets: sheets.map((one, i) => (i === 0 ? { ...one, state: "visible" as const } : one)),
  }))
  .chain((book) =>
    fc.record({
      styles: fc.constant(book.styles),
      sheets: fc.constant(book.sheets),
      settings: fc.constant(book.settings),
      names: names(book.sheets),
      active: fc.constantFrom(...book.sheets.flatMap(({ state }, i) => (state === "visible" ? [i] : []))),
      from1904: fc.constant(false),
    }),
  );
