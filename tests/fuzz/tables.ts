import fc from "fast-check";
import type { SourceRows } from "../../src/host/host";
import type { ReadTables } from "../../src/pane/state/useTables";
import { CHOICES, FIRST_SETTINGS, FIRST_WEIGHTS, type Settings } from "../../src/runsheet/settings";
import type { Field, Reads } from "../../src/runsheet/tables/headings/field";
import { isFormer, TABLE_TYPE_IDS, TABLE_TYPES, type TableTypeId } from "../../src/runsheet/tables/registry";
import type { TableType } from "../../src/runsheet/tables/tableType";
import type { CellValue } from "../../src/sheet/sheet";
import { rowsOf } from "../pane/tablesAlone";
import { anyNumber, anyText, ERROR_CODES, typed } from "./texts";

/** Tables as makers keep them, from such as are right to such as are none. */

export const anyValue: fc.Arbitrary<CellValue> = fc.oneof(
  fc.constantFrom<CellValue>(null, "", 0, true, false),
  anyNumber,
  anyText,
  fc.constantFrom(...ERROR_CODES).map((error) => ({ error })),
);

/** What stands in a column by what it is called; the same names in all tables, for they look each other up. */
const NAMES: Readonly<Record<string, readonly string[]>> = {
  vessel: ["Tin", "Bowl", "Jar 8"],
  scent: ["Cedar", "Fig", "", "Cedar"],
  wax: ["", "", "Soft wax", "Blend"],
  ingredient: ["Soft wax", "Hard wax", "Cedar oil", "Fig", "Straw dye"],
  item: ["Soft wax", "Hard wax", "Cedar oil", "Cedar", "Tin", "Bowl", "Wick 4", "Lid", "Wax"],
  wick: ["", "Wick 4", "Wick 5"],
  kind: ["wax", "scent", "dye", "other", "vessel", ""],
  sort: ["wax", "scent", "dye", "other", ""],
  lot: ["W-1", "W-2", "a; b", "2026-330-01", ""],
  run: ["", "2026-330-01", "2026-330-02"],
  test: ["1", "2", "T-3"],
  unit: [...CHOICES.unit],
  note: ["", "all pots", "pots: Cedar: pot 1 of 2", "correction, pots: Fig: pot 1 of 1"],
  pots: ["", "all", "Cedar: pot 1 of 1", "Cedar: pot 1 of 2; Cedar: pot 2 of 2"],
  product: ["container", "tea light", ""],
  soot: ["none", "much", ""],
};
const BASES = ["of wax", "of total", ""];

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((one) => one / 10);
const NUMBERS: Readonly<Partial<Record<Reads, fc.Arbitrary<number>>>> = {
  count: fc.integer({ min: 0, max: 30 }),
  amount: tenths(-50, 9000),
  weight: tenths(20, 400),
  factor: fc.integer({ min: 80, max: 99 }).map((one) => one / 100),
  share: fc.integer({ min: 1, max: 24 }).map((one) => one / 200),
  parts: fc.constantFrom(0.02, 0.04, 0.06, 0.3),
  temperature: fc.integer({ min: 45, max: 95 }),
  length: fc.integer({ min: 1, max: 90 }),
  time: fc.integer({ min: 1, max: 240 }),
  days: fc.integer({ min: 0, max: 21 }),
  date: fc.integer({ min: 46_300, max: 46_400 }),
  money: tenths(0, 90),
};

function fittingValue(id: TableTypeId, field: string, reads: Reads): fc.Arbitrary<CellValue> {
  if (field === "basis") return typed(fc.constantFrom(...(id === "recipes" ? ["part", "of wax", "of total"] : BASES)));
  const number = NUMBERS[reads];
  if (number) return fc.oneof({ weight: 9, arbitrary: number as fc.Arbitrary<CellValue> }, fc.constant(null));
  return typed(fc.constantFrom(...(NAMES[field] ?? ["", "Noted"])));
}

/** What stands behind a heading's words, as makers write it. */
const UNITS: Readonly<Partial<Record<Reads, readonly string[]>>> = {
  weight: ["", "", " (g)", " (g)", " (oz)", ", kg", " ml", " (stones)"],
  amount: ["", " (g)", " (kg)", " lb"],
  share: ["", " (%)", " of wax", " (% of total)"],
  temperature: ["", " (C)", " (F)"],
  length: [" (mm)", " (in)", ""],
  time: ["", " (min)"],
  money: ["", " (per g)", " per kg", " (EUR)"],
};

/** A heading of a field: its name, more often the more care is taken, or some other words for it, or none of them. */
const headingOf = ({ name, aliases, alone = [], unsure = [], reads }: Field, care: number): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: care * care, arbitrary: fc.constant(name) },
    {
      weight: 3,
      arbitrary: fc
        .tuple(
          typed(fc.constantFrom(name, ...aliases, ...alone, ...unsure)),
          fc.constantFrom(...(UNITS[reads] ?? [""])),
        )
        .map((words) => words.join("")),
    },
    { weight: care < 10 ? 1 : 0, arbitrary: anyText },
  );

/** How likely it is that a cell holds what its column is for, of ten. */
const CARE = [10, 9, 2] as const;

/** A table of a type: its fields' columns, some of them missing, between columns of no field. */
function tableOf(id: TableTypeId, care: number): fc.Arbitrary<SourceRows> {
  const { name, fields, needs } = TABLE_TYPES[id] as TableType;
  const needed = new Set(needs.flat());
  const all = Object.entries<Field>(fields);
  const headings = all.map(([field, one]) =>
    fc.option(headingOf(one, care), { freq: needed.has(field) ? 10 * care : 2, nil: undefined }),
  );
  const cells = all.map(([field, { reads }]) =>
    fc.oneof({ weight: care, arbitrary: fittingValue(id, field, reads) }, { weight: 10 - care, arbitrary: anyValue }),
  );
  return fc
    .record({
      headings: fc.tuple(...headings),
      extra: fc.array(fc.tuple(fc.nat(9), fc.oneof(anyText, fc.constantFrom("Total", "Notes", "Cost (EUR)"))), {
        maxLength: 2,
      }),
      rows: fc.array(fc.tuple(fc.tuple(...cells), anyValue), { minLength: 1, maxLength: 7, size: "max" }),
      hidden: fc.array(fc.nat(6), { maxLength: 1 }),
      below: fc.oneof({ weight: 60, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.constant(2) }),
    })
    .map(({ headings: said, extra, rows, hidden, below }) => {
      const kept = said.flatMap((heading, i) => (heading === undefined ? [] : [i]));
      const lines = [said, ...rows.map(([row]) => row)].map((row) => kept.map((i) => row[i] ?? null) as CellValue[]);
      for (const [at, heading] of extra) {
        for (const [r, line] of lines.entries()) line.splice(at, 0, r === 0 ? heading : (rows[r - 1]?.[1] ?? null));
      }
      return { ...rowsOf(name, lines), hidden, below };
    });
}

/** The tables of a workbook: one to pour from, and of the others those that happen to be there. */
const tablesWith = (care: number): fc.Arbitrary<ReadTables> =>
  fc
    .record(
      Object.fromEntries(
        TABLE_TYPE_IDS.map((id) => [
          id,
          id === "pour"
            ? tableOf(id, care)
            : fc.oneof(
                { weight: isFormer(id) ? 4 : 1, arbitrary: fc.constant(null) },
                { weight: 1, arbitrary: tableOf(id, care) },
              ),
        ]),
      ) as Record<TableTypeId, fc.Arbitrary<SourceRows | null>>,
    )
    .map((tables) => Object.fromEntries(Object.entries(tables).filter(([, one]) => one !== null)) as ReadTables);

export const anyTables: fc.Arbitrary<ReadTables> = fc.oneof(
  { weight: 5, arbitrary: tablesWith(CARE[0]) },
  { weight: 4, arbitrary: tablesWith(CARE[1]) },
  { weight: 1, arbitrary: tablesWith(CARE[2]) },
);

/** Settings as the pane lets them be. */
export const anySettings: fc.Arbitrary<Settings> = fc
  .record({
    ...(Object.fromEntries(Object.entries(CHOICES).map(([name, all]) => [name, fc.constantFrom(...all)])) as {
      [K in keyof typeof CHOICES]: fc.Arbitrary<(typeof CHOICES)[K][number]>;
    }),
    unit: fc.constantFrom("g", "g", "g", ...CHOICES.unit),
    steps: fc.constantFrom(0.1, 1, 1, 5),
    potCapacity: fc.constantFrom(400, 1000, 2500, 2500, 9000),
    loss: fc.constantFrom(0, 0.03, 0.2),
    waxFactor: fc.constantFrom(0.86, 0.9, 2),
    load: fc.constantFrom(0.06, 0.1, 0.3),
    labourMinutes: fc.constantFrom(0, 4),
    labourRate: fc.constantFrom(0, 18),
  })
  .map(({ steps, ...rest }) => ({
    ...FIRST_SETTINGS,
    ...rest,
    division: FIRST_WEIGHTS[rest.unit].division * steps,
  }));
