import { beforeAll, describe, expect, it } from "vitest";
import { type Calculated, calculate } from "../../../src/engine/calculate";
import { buildRun } from "../../../src/runsheet/buildRun";
import { isError } from "../../../src/runsheet/problem";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT } from "../../../src/runsheet/sheet/layout";
import { plainNumbers } from "../../../src/runsheet/sheet/plainNumbers";
import type { Cell, Content, Sheet } from "../../../src/sheet/sheet";
import { metadataText, script } from "../../functions/built";

const settings: Settings = { ...FIRST_SETTINGS, potCapacity: 3000, loss: 0.03, division: 0.1 };

/** Two scents, one of them a blend with dye, in one pot each; the first with two kinds of candles. */
const run = buildRun(
  {
    pour: {
      type: "pour",
      headings: [],
      rows: [
        ["Tin", 7, 172.3, "Cedar"],
        ["Jar", 3, 340.25, "Cedar"],
        ["Bowl", 4, 255.5, "Fig"],
      ],
      columns: { vessel: 0, quantity: 1, fill: 2, scent: 3 },
    },
    recipes: {
      type: "recipes",
      headings: [],
      rows: [
        ["Cedar", "Soft wax", 7, "part", "wax"],
        ["Cedar", "Hard wax", 3, "part", "wax"],
        ["Cedar", "Cedar oil", 0.06, "of wax", "scent"],
        ["Cedar", "Green dye", 0.01, "of wax", "dye"],
        ["Fig", "Soft wax", 1, "part", "wax"],
        ["Fig", "Fig oil", 0.05, "of total", "scent"],
      ],
      columns: { scent: 0, ingredient: 1, share: 2, basis: 3, sort: 4 },
    },
    scents: {
      type: "scents",
      headings: [],
      rows: [
        ["Cedar", 14, 0.1],
        ["Fig", 10, 0.1],
      ],
      columns: { scent: 0, cure: 1, waxMaximum: 2 },
    },
  } as never,
  settings,
);
const describeIt = (changes: Partial<Settings> = {}): Sheet =>
  describeRun(run, { lot: "2026-330-01", date: 46352, settings: { ...settings, ...changes } });

const calculated = async (sheets: readonly Sheet[]): Promise<Calculated[][][]> =>
  calculate(
    sheets.map((sheet, i) => ({ ...sheet, name: `S${i}` })),
    { script, metadata: metadataText },
  );

type Typed = Content | undefined;
/** The sheet with what was typed into one or several of its cells; undefined clears one. */
const typed = (sheet: Sheet, ...cells: readonly (readonly [row: number, column: number, content: Typed])[]): Sheet => ({
  ...sheet,
  cells: [
    ...sheet.cells.filter((old) => !cells.some(([row, column]) => row === old.row && column === old.column)),
    ...cells.map(([row, column, content]): Cell => ({ row, column, ...(content && { content }) })),
  ],
});
const rowIn = (sheet: Sheet, name: string, from = 0): number =>
  sheet.cells.find(
    ({ row, column, content }) => row >= from && column === 0 && content && "text" in content && content.text === name,
  )?.row ?? -1;
const isNumber = (value: Calculated | undefined): boolean => typeof value === "number";

const live = describeIt();
const plain = describeIt({ live: false });
const at = (name: string, from = rowIn(live, "Cedar: pot 1 of 1")) => rowIn(live, name, from);
const totals = rowIn(live, "Totals");
const [tin, jar, bowl] = [at("Tin"), at("Jar"), at("Bowl")];
/** Dye goes in before the scent. */
const [dye, scent] = [at("Green dye"), at("Scent: Cedar oil")];
const pots = { cedar: at("Soft wax"), fig: at("Soft wax", bowl - 12) };
// A cure stands in the row of its scent's totals.
const cure = totals;

const BLANK: readonly [string, Typed] = ["blank", undefined];
const text = (value: string): readonly [string, Typed] => [`text ${JSON.stringify(value)}`, { text: value }];
const num = (value: number): readonly [string, Typed] => [String(value), { number: value }];
const broken: readonly [string, Typed] = ["an error", { formula: "=1/0" }];
const NEVER = [BLANK, text("12 "), text(""), text("twelve"), num(-1), broken];

interface Input {
  readonly name: string;
  readonly cell: readonly [row: number, column: number];
  readonly bad: readonly (readonly [string, Typed])[];
  /** Where it is said, and how it begins. */
  readonly said: readonly [row: number, column: number, begins: RegExp];
  /** Cells that must show no number and no label: what is made from it. */
  readonly spoilt: readonly (readonly [row: number, column: number])[];
  /** Cells that must go on as they were. */
  readonly kept: readonly (readonly [row: number, column: number])[];
}

const down = (first: number, count: number, column: number): [number, number][] =>
  Array.from({ length: count }, (_, i) => [first + i, column]);
/** Weights to melt of a pot, their sum and the load. */
const melted = { cedar: down(pots.cedar, 5, 3), fig: down(pots.fig, 3, 3) };
const loads = { cedar: [pots.cedar + 5, 1], fig: [pots.fig + 3, 1] } as const;
const all = totals + 3;
const sums = { cedar: down(totals + 1, 1, 3), fig: down(totals + 2, 1, 3) };
const weightsOf = (row: number): [number, number][] => [
  [row, 3],
  [row, 4],
  [row, 5],
];
const cedarPot = [...melted.cedar, loads.cedar, ...weightsOf(totals + 1), ...weightsOf(all), [all + 1, 5] as const];
const figPot = [...melted.fig, loads.fig, ...weightsOf(totals + 2), ...weightsOf(all), [all + 1, 5] as const];
const figKept = [...melted.fig, ...sums.fig, [bowl, 3], [bowl, AT.label]] as [number, number][];
const cedarKept = [...melted.cedar, ...sums.cedar, [tin, 3], [tin, AT.label], [jar, AT.label]] as [number, number][];

const INPUTS: readonly Input[] = [
  {
    name: "date",
    cell: [1, 1],
    bad: [...NEVER, num(0), num(46352.5), num(12), num(20261126), text("26.11.2026")],
    said: [3, 0, /^Fix the date/],
    spoilt: down(cure + 1, 2, AT.until),
    kept: [...cedarKept, ...figKept],
  },
  {
    name: "what the scale reads to",
    cell: [2, 1],
    bad: [...NEVER, num(0)],
    said: [3, 0, /^Fix what the scale reads to/],
    spoilt: [...cedarPot, ...figPot, [tin, 3], [tin, AT.label], [bowl, 3], [bowl, AT.label]],
    kept: down(cure + 1, 2, AT.until),
  },
  {
    name: "what the pot holds",
    cell: [2, 5],
    bad: [...NEVER, num(0)],
    said: [3, 0, /^Fix what the pot holds/],
    spoilt: [],
    kept: [...cedarKept, ...figKept],
  },
  {
    name: "loss",
    cell: [2, 9],
    bad: [...NEVER, num(1), num(3)],
    said: [3, 0, /^Fix the extra to melt/],
    spoilt: [...cedarPot, ...figPot],
    kept: [...down(cure + 1, 2, AT.until), [tin, 3], [tin, AT.label]],
  },
  {
    name: "parts of a wax",
    cell: [pots.cedar + 1, 1],
    bad: NEVER,
    said: [pots.cedar + 1, AT.remark, /^Fix share/],
    spoilt: cedarPot,
    kept: figKept,
  },
  {
    name: "load of a scent",
    cell: [scent, 1],
    bad: [...NEVER, num(1), num(6)],
    said: [scent, AT.remark, /^Fix/],
    spoilt: cedarPot,
    kept: figKept,
  },
  {
    name: "load of a dye",
    cell: [dye, 1],
    bad: [...NEVER, num(1), num(1.5)],
    said: [dye, AT.remark, /^Fix/],
    spoilt: cedarPot,
    kept: figKept,
  },
  {
    name: "load of total",
    cell: [pots.fig + 1, 1],
    bad: [...NEVER, num(1), num(5)],
    said: [pots.fig + 1, AT.remark, /^Fix/],
    spoilt: figPot,
    kept: cedarKept,
  },
  {
    name: "count",
    cell: [tin, 1],
    bad: [...NEVER, num(4.5), num(0.001)],
    said: [tin, AT.label, /^Fix count/],
    spoilt: [...cedarPot, [tin, 3], [totals + 1, 1], [all, 1]],
    kept: [...figKept, [jar, 3], [jar, AT.label]],
  },
  {
    name: "fill",
    cell: [jar, 2],
    bad: [...NEVER, num(0), num(0.01)],
    said: [jar, AT.label, /^Fix/],
    spoilt: [...cedarPot, [jar, 3]],
    kept: [...figKept, [tin, 3], [tin, AT.label]],
  },
  {
    name: "days of cure",
    cell: [cure + 1, AT.days],
    bad: [...NEVER, num(1.5)],
    said: [cure + 1, AT.remark, /^Fix the days/],
    spoilt: [[cure + 1, AT.until]],
    kept: [...cedarKept, [cure + 2, AT.until]],
  },
];

describe("a live sheet", () => {
  const cases = INPUTS.flatMap((input) => input.bad.map(([what, content]) => ({ ...input, what, content })));
  let honest: Calculated[][];
  let results: Calculated[][][];
  beforeAll(async () => {
    const sheets = cases.map(({ cell, content }) => typed(live, [...cell, content]));
    [honest, ...results] = (await calculated([live, ...sheets])) as [Calculated[][], ...Calculated[][][]];
  });

  it("says nothing to fix where nothing is wrong, and shows a number wherever one can be spoilt", () => {
    expect(run.problems.filter(isError)).toEqual([]);
    expect([pots.cedar, pots.fig, tin, jar, bowl, cure, totals].every((row) => row > 0)).toBe(true);
    for (const row of honest) for (const value of row) expect(String(value ?? "")).not.toMatch(/^Fix/);
    for (const { name, spoilt, kept } of INPUTS) {
      for (const [row, column] of [...spoilt, ...kept]) {
        const value = honest[row]?.[column];
        if (column === AT.label) expect(value, `${name} ${row}`).toMatch(/^Net Wt/);
        else expect(typeof value, `${name} ${row} ${column}`).toBe("number");
      }
    }
  });

  it.each(cases.map(({ name, what }, i) => [name, what, i] as const))("%s: %s", (_name, _what, i) => {
    const { said, spoilt, kept } = cases[i] as (typeof cases)[number];
    const rows = results[i] as Calculated[][];
    const [row, column, begins] = said;
    expect(rows[row]?.[column]).toMatch(begins);
    for (const [r, c] of spoilt) {
      const value = rows[r]?.[c];
      if (c === AT.label) expect(value, `row ${r}`).toMatch(/^Fix/);
      else expect(isNumber(value), `row ${r} column ${c}: ${JSON.stringify(value)}`).toBe(false);
    }
    for (const [r, c] of kept) expect(rows[r]?.[c], `row ${r} column ${c}`).toEqual(honest[r]?.[c]);
  });

  it("says nothing of limits where there is no load to compare with them", () => {
    for (const [i, { name, what }] of cases.entries()) {
      for (const row of [loads.cedar[0], loads.fig[0]]) {
        expect(
          isNumber(results[i]?.[row]?.[1]) || !results[i]?.[row]?.[AT.plannedRemark],
          `${name} ${what} ${row}`,
        ).toBe(true);
      }
    }
  });

  it("shows what is typed as it is: half a candle is not rounded to one", () => {
    const inputs = live.cells.filter(({ look }) => look === "input");
    expect(inputs).toHaveLength(4 + 6 + 2 * 3 + 2);
    for (const { row, column, format = "General" } of inputs) {
      expect(format, `row ${row} column ${column}`).toMatch(/^General$|^0\.0##%$|^0\.00$|^yyyy-mm-dd$/);
    }
  });

  it("says that a number is text, which looks like one", () => {
    const of = (name: string, what: string) =>
      results[cases.findIndex((one) => one.name === name && one.what === what)] as Calculated[][];
    expect(of("count", 'text "12 "')[tin]?.[AT.label]).toBe("Fix count: it is text");
    expect(of("count", "4.5")[tin]?.[AT.label]).toBe("Fix count: whole, 0 or more");
    expect(of("fill", 'text "12 "')[jar]?.[AT.label]).toBe("Fix the fill: it is text");
    expect(of("fill", "blank")[jar]?.[AT.label]).toBe("Fix the fill: above 0");
    expect(of("fill", "0.01")[jar]?.[AT.label]).toBe("Fix: less than a scale step");
    expect(of("load of a dye", "-1")[dye]?.[AT.remark]).toBe("Fix share: 0 or more");
    expect(of("date", 'text "26.11.2026"')[3]?.[0]).toBe("Fix the date: it is text. ");
    expect(of("loss", "blank")[3]?.[0]).toBe("Fix the extra to melt: 0% or more, 0% for none. ");
  });

  it("says which basis a share may have, and that a pot needs wax", async () => {
    const [basis, noWax] = await calculated([
      typed(live, [scent, 2, { text: "of vax" }]),
      typed(live, [pots.cedar, 1, { number: 0 }], [pots.cedar + 1, 1, { number: 0 }]),
    ]);
    expect(basis?.[scent]?.[AT.remark]).toBe("Fix basis: part or of wax");
    expect(basis?.[pots.cedar + 4]?.[AT.potRemark]).toBe("Fix the shares above");
    expect(noWax?.[pots.cedar + 4]?.[AT.potRemark]).toBe("Fix the shares: some wax, less scent");
    for (const rows of [basis, noWax]) {
      for (const [row, column] of cedarPot) expect(isNumber(rows?.[row]?.[column]), `${row} ${column}`).toBe(false);
    }
  });

  it("says of a load of 6 that it is 600 %, and of a loss of 3 that it is 300 %", () => {
    const of = (name: string, what: string) =>
      results[cases.findIndex((one) => one.name === name && one.what === what)];
    expect(of("load of a scent", "6")?.[scent]?.[AT.remark]).toBe("Fix: 6 is 600 %, write 6%");
    expect(of("loss", "3")?.[3]?.[0]).toBe("Fix the extra to melt: 3 is 300 %, write 3%. ");
    expect(of("load of a dye", "1.5")?.[dye]?.[AT.remark]).toBe("Fix: 1.5 is 150 %, write 1.5%");
  });

  it("says at the pot and beside the yield that something is to be fixed", () => {
    for (const [i, { name, cell }] of cases.entries()) {
      const rows = results[i] as Calculated[][];
      const ofPot = rows[pots.cedar + 4]?.[AT.potRemark];
      if (name === "count" || name === "fill") expect(ofPot).toBe("Fix the counts and fills below");
      if (name === "loss") expect(ofPot).toBe("Fix the extra to melt (loss)");
      if (name === "what the scale reads to") expect(ofPot).toBe("Fix what the scale reads to");
      if (name === "what the pot holds") expect(ofPot).toBe("Fix what the pot holds");
      if (name === "parts of a wax" || name.startsWith("load of a ")) expect(ofPot).toBe("Fix the shares above");
      const isSpoilt = !["date", "what the pot holds", "days of cure"].includes(name);
      expect(rows[all]?.[6] ?? "", `${name} ${cell}`).toBe(isSpoilt ? "Fix the pots below" : "");
    }
  });

  it("takes none for a count, and nothing for a loss or a share that is 0", async () => {
    const [none, bare] = await calculated([
      typed(live, [tin, 1, { number: 0 }]),
      typed(live, [2, 9, { number: 0 }], [dye, 1, { number: 0 }]),
    ]);
    // 3 x 340.25 x 1.03 = 1051.3725, to a tenth 1051.4.
    expect(none?.[pots.cedar + 4]?.[3]).toBeCloseTo(1051.4, 9);
    // 7 x 172.3 + 3 x 340.25 = 2226.85, to a tenth and half up 2226.9.
    expect(bare?.[pots.cedar + 4]?.[3]).toBeCloseTo(2226.9, 9);
    expect(bare?.[dye]?.[3]).toBe(0);
    for (const rows of [none, bare]) expect(rows?.flat().filter((value) => /^Fix/.test(String(value)))).toEqual([]);
  });

  it("goes on when rows are put in between, by a maker's own words", async () => {
    const between = [tin + 1, pots.cedar + 1];
    // As a spreadsheet does it: rows move down, and so do the references to them.
    const moved = (row: number) => row + between.filter((at) => at <= row).length;
    const shifted = (formula: string) =>
      formula.replace(/(\$?[A-N]\$?)(\d+)/g, (_, letter, row) => `${letter}${moved(Number(row) - 1) + 1}`);
    const sheet: Sheet = {
      ...live,
      cells: [
        ...live.cells.map((cell): Cell => {
          const { content, row } = cell;
          const isFormula = content && "formula" in content;
          return { ...cell, row: moved(row), ...(isFormula && { content: { formula: shifted(content.formula) } }) };
        }),
        { row: moved(tin) + 1, column: 1, content: { text: "a note of the maker" } },
        { row: moved(pots.cedar) + 1, column: 1, content: { text: "" } },
      ],
    };
    const count = typed(sheet, [moved(jar), 1, undefined]);
    const [rows, spoilt] = (await calculated([sheet, count])) as [Calculated[][], Calculated[][]];
    for (const [r, row] of honest.entries()) {
      expect(
        rows[moved(r)]?.map((value) => value || null),
        `row ${r}`,
      ).toEqual(row.map((value) => value || null));
    }
    expect(spoilt[moved(jar)]?.[AT.label]).toMatch(/^Fix count/);
    expect(isNumber(spoilt[moved(pots.cedar)]?.[3])).toBe(false);
  });
});

describe.each([
  ["live formulas", live, 0],
  ["plain numbers", plain, 1],
])("what is written after the pour on a sheet of %s", (_name, sheet, above) => {
  // The line of the head that a live sheet has and the other has not.
  const on = (row: number) => row - above;
  const write = (...cells: readonly (readonly [row: number, column: number, content: Typed])[]): Sheet =>
    typed(sheet, ...cells.map(([row, column, content]) => [on(row), column, content] as const));
  const cell = (rows: Calculated[][] | undefined, row: number, column: number) => rows?.[on(row)]?.[column] || "";
  const number = (value: number): Content => ({ number: value });
  const words = (value: string): Content => ({ text: value });

  it("is the net weight to declare, once a candle is weighed", async () => {
    const [before, lighter, heavier, ...wrong] = await calculated([
      write(),
      write([tin, 5, number(168.9)]),
      write([tin, 5, number(175.2)]),
      ...[words("170 "), number(0), number(-170), words("about 170")].map((content) => write([tin, 5, content])),
    ]);
    // 172.3 g are 6.077 oz, 168.9 g are 5.957 oz, 175.2 g are 6.180 oz, at 28.3495 g an ounce, all rounded down.
    expect(cell(before, tin, AT.label)).toBe("Net Wt 6.07 oz (172 g)");
    expect(cell(lighter, tin, AT.label)).toBe("Net Wt 5.95 oz (168 g)");
    // One that holds more than planned says nothing of the others.
    expect(cell(heavier, tin, AT.label)).toBe("Net Wt 6.07 oz (172 g)");
    for (const rows of wrong) expect(cell(rows, tin, AT.label)).toBe("Fix the weight of one");
    for (const rows of wrong) expect(cell(rows, jar, AT.label)).toBe(cell(before, jar, AT.label));
  });

  it("is no net weight to declare while one weighs more than a tenth above its fill, or under half of it", async () => {
    // The planned fill is 172.3: a tenth above it is 189.53, half of it 86.15.
    const [within, above, withVessel, half, tenth] = await calculated(
      [189.5, 189.6, 402.5, 86.2, 17.23].map((weight) => write([tin, 5, number(weight)], [tin, 4, number(7)])),
    );
    expect(cell(within, tin, AT.label)).toMatch(/^Net Wt/);
    expect(cell(above, tin, AT.label)).toBe("Check one without vessel");
    expect(cell(withVessel, tin, AT.label)).toBe("Check one without vessel");
    expect(cell(withVessel, totals + 1, 6)).toBe("7 good of 7, 100%");
    expect(cell(half, tin, AT.label)).toMatch(/^Net Wt/);
    expect(cell(tenth, tin, AT.label)).toBe("Check the weight of one");
  });

  it("counts a ruined pot as 0 in the yield, and one that is not counted yet not at all", async () => {
    const [none, ruined, oneOfTwo, full] = await calculated([
      write(),
      write([bowl, 4, number(0)]),
      write([tin, 4, number(0)], [bowl, 4, number(3)]),
      write([tin, 4, number(7)], [jar, 4, number(0)], [bowl, 4, number(4)]),
    ]);
    const yields = (rows: Calculated[][] | undefined) => [totals + 1, totals + 2, all].map((row) => cell(rows, row, 6));
    expect(yields(none)).toEqual(["", "", ""]);
    expect(yields(ruined)).toEqual(["", "0 good of 4, 0%", "0 good of 4, 0%"]);
    expect(yields(oneOfTwo)).toEqual(["0 good of 7, 0%", "3 good of 4, 75%", "3 good of 11, 27%"]);
    expect(yields(full)).toEqual(["7 good of 10, 70%", "4 good of 4, 100%", "11 good of 14, 79%"]);
  });

  it("makes no yield of what is no number of candles", async () => {
    const bad = [words("3 "), words("all"), number(-1), number(2.5), number(5)];
    const results = await calculated(bad.map((content) => write([bowl, 4, content], [tin, 4, number(7)])));
    for (const [i, rows] of results.entries()) {
      const name = JSON.stringify(bad[i]);
      expect(cell(rows, bowl, AT.label), name).toBe("Fix good candles: 0 to 4");
      expect(cell(rows, totals + 2, 6), name).toBe("Fix the pots below");
      expect(cell(rows, all, 6), name).toBe("Fix the pots below");
      expect(cell(rows, totals + 1, 6), name).toBe("7 good of 7, 100%");
    }
  });

  it("makes a load as weighed only of all ingredients of use", async () => {
    const wax = pots.cedar;
    const weighed = (...values: (number | string | undefined)[]) =>
      write(
        ...values.map((value, i): [number, number, Typed] => [
          wax + i,
          4,
          value === undefined ? undefined : typeof value === "string" ? words(value) : number(value),
        ]),
      );
    const rows = await calculated([
      weighed(1400),
      weighed(1400, 600, 20),
      weighed(1400, undefined, 20, 125),
      weighed(1400, 600, undefined, 125),
      weighed(1400, 600, 20, "125 "),
      weighed(1400, 600, 20, -125),
      weighed(0, 0, 20, 125),
      weighed(1400, 600, 20, 125),
    ]);
    const load = wax + 5;
    expect(cell(rows[0], load, AT.basis)).toBe("of wax; weighed:");
    for (const [i, one] of rows.slice(0, -1).entries()) expect(cell(one, load, AT.actual), `case ${i}`).toBe("");
    // 125 of 2000 of wax.
    expect(cell(rows.at(-1), load, AT.actual)).toBeCloseTo(0.0625, 12);
    // The sum so far, and none where one of them is no weight.
    expect(rows.map((one) => cell(one, wax + 4, 4))).toEqual([
      1400,
      2020,
      1545,
      2125,
      "Fix above",
      "Fix above",
      145,
      2145,
    ]);
    for (const i of [4, 5]) expect(cell(rows[i], wax + 3, AT.remark)).toBe("Fix actual weight");
  });
});

describe("the fill that is poured", () => {
  it.each([
    // A scale that reads to 5 shows 172.3 as 170: no more may be declared than is poured.
    [5, 170, "Net Wt 5.99 oz (170 g)"],
    // One that reads to 0.5 shows it as 172.5, and 172.3 are planned.
    [0.5, 172.5, "Net Wt 6.07 oz (172 g)"],
    [0.1, 172.3, "Net Wt 6.07 oz (172 g)"],
    [1, 172, "Net Wt 6.06 oz (172 g)"],
  ])("is what a scale that reads to %d shows", async (division, each, label) => {
    const sheets = [describeIt({ division }), describeIt({ division, live: false })];
    for (const [i, rows] of (await calculated(sheets)).entries()) {
      const tins = rows[tin - i];
      expect(tins?.slice(0, 3)).toEqual(["Tin", 7, 172.3]);
      expect(tins?.[3]).toBeCloseTo(each, 9);
      expect(tins?.[AT.label]).toBe(label);
    }
    // The pot is melted for the fill as planned: (7 x 172.3 + 3 x 340.25) x 1.03 = 2293.6555.
    const [rows] = await calculated(sheets);
    expect(Math.abs((rows?.[pots.cedar + 4]?.[3] as number) - 2293.6555)).toBeLessThanOrEqual(division / 2);
  });

  it("shows half a step of binary fractions as decimals say", async () => {
    // 1.15 / 0.1 is 11.499999999999998: half a step goes up.
    const [rows] = await calculated([typed(live, [tin, 2, { number: 1.15 }])]);
    expect(rows?.[tin]?.[3]).toBeCloseTo(1.2, 12);
  });
});

describe("a live sheet turned into plain numbers", () => {
  const turned = async (sheet: Sheet): Promise<Cell[]> => {
    const [rows] = await calculated([sheet]);
    return plainNumbers(rows as Calculated[][]);
  };

  it("keeps the day on which a cure ends as a date's number", async () => {
    const cells = await turned(live);
    const until = cells.filter(({ row, column }) => (row === cure + 1 || row === cure + 2) && column === AT.until);
    // 46352 is 2026-11-26; 14 and 10 days on.
    expect(until.map(({ content }) => content)).toEqual([{ number: 46366 }, { number: 46362 }]);
    // Only what they hold is written: the format of a date stays.
    for (const cell of until) expect(Object.keys(cell).sort()).toEqual(["column", "content", "row"]);
  });

  it("moves no more, but for the net weight of the candle that is weighed", async () => {
    const sheet = typed(
      live,
      ...(await turned(live)).map(({ row, column, content }) => [row, column, content] as const),
    );
    const [before, changed] = await calculated([
      sheet,
      typed(
        sheet,
        [1, 1, { number: 46400 }],
        [2, 9, { number: 0.5 }],
        [pots.cedar, 1, { number: 1 }],
        [tin, 1, { number: 70 }],
        [jar, 2, { number: 100 }],
        [bowl, 5, { number: 250.4 }],
      ),
    ]);
    const input = new Set(["1 1", "2 9", `${pots.cedar} 1`, `${tin} 1`, `${jar} 2`, `${bowl} 5`]);
    for (const [r, row] of (before ?? []).entries()) {
      for (const [c, value] of row.entries()) {
        if (!input.has(`${r} ${c}`) && !(r === bowl && c === AT.label))
          expect(changed?.[r]?.[c], `${r} ${c}`).toEqual(value);
      }
    }
    // 250.4 g at 28.3495 g an ounce are 8.832 oz.
    expect(changed?.[bowl]?.[AT.label]).toBe("Net Wt 8.83 oz (250 g)");
  });

  it.each(INPUTS)("is refused with the row and what to fix while there is something to fix: $name", async (input) => {
    const [row, column, begins] = input.said;
    const [, content] = input.bad.at(-1) as readonly [string, Typed];
    const [rows] = await calculated([typed(live, [...input.cell, content])]);
    const remark = String(rows?.[row]?.[column]);
    expect(remark).toMatch(begins);
    expect(() => plainNumbers(rows as Calculated[][])).toThrow(
      `Row ${row + 1}: ${remark.trim().replace(/\.$/, "")}. Then turn the sheet into plain numbers.`,
    );
  });

  it("is refused with the row while a weight of one is to be checked", async () => {
    const [heavy, light] = await calculated([402.5, 17.23].map((one) => typed(live, [tin, 5, { number: one }])));
    const refused = (remark: string) => `Row ${tin + 1}: ${remark}. Then turn the sheet into plain numbers.`;
    expect(() => plainNumbers(heavy as Calculated[][])).toThrow(refused("Check one without vessel"));
    expect(() => plainNumbers(light as Calculated[][])).toThrow(refused("Check the weight of one"));
  });

  it("is refused with the row where a figure was overwritten by an error", async () => {
    const [rows] = await calculated([typed(live, [totals + 1, 1, { formula: "=1/0" }])]);
    expect(() => plainNumbers(rows as Calculated[][])).toThrow(`Row ${totals + 2} shows no number to keep. Fix it`);
  });
});
