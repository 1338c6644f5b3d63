import { beforeAll, describe, expect, it } from "vitest";
import { type Calculated, calculate } from "../../../src/engine/calculate";
import { rowHeights } from "../../../src/host/excel/rowHeights";
import { heightOf, widthsOf } from "../../../src/host/univer/layout";
import { isError } from "../../../src/runsheet/problem";
import { readBack } from "../../../src/runsheet/record/readBack";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT } from "../../../src/runsheet/sheet/layout";
import type { CellValue, Sheet } from "../../../src/sheet/sheet";
import { STYLES } from "../../../src/sheet/styles";
import { linesOf, roomIn } from "../../../src/sheet/textLines";
import { metadataText, script } from "../../functions/built";
import { HEADINGS, type ScentedRun, SETTINGS, scentedRun } from "./scentedRun";

/** The run, and what is said of it beside flash points that are not known: flashPoint.test.ts has those. */
const built = (given: ScentedRun, settings = SETTINGS) => {
  const run = scentedRun(given, settings);
  return { ...run, problems: run.problems.filter(({ text }) => !text.includes(": flash point not known, nor the")) };
};
const safety = (given: ScentedRun) => built(given).problems.filter((one) => one.safety);
const texts = (given: ScentedRun) => safety(given).map(({ text }) => text);

/** 4 % of Fir and 2 % of Moss, of wax, and 3 % of dye: 1090 in all, of which Fir is 3.670 %, Moss 1.835 %. */
const BLEND: CellValue[][] = [
  ["Wax", 1, "part", null],
  ["Fir", 0.04, "of wax", "scent"],
  ["Moss", 0.02, "of wax", "scent"],
  ["Dye", 0.03, "of wax", "dye"],
];
const OWN = ["Forest", 0.1, 0.09, null, null, null];

describe("the limits of a pot", () => {
  it("are said to be unknown where they are blank, each by its name, and never for wax without scent", () => {
    expect(texts({})).toEqual(["Forest: wax maximum and product limit not known: not checked"]);
    expect(texts({ scents: [["Forest", 0.1]] })).toEqual(["Forest: product limit not known: not checked"]);
    expect(texts({ scents: [["Forest", null, 0.1]] })).toEqual(["Forest: wax maximum not known: not checked"]);
    expect(texts({ scents: [["Forest", 0.1, 0.1]] })).toEqual([]);
    expect(texts({ rows: [["Tin", 10, 106, "", 0, ""]] })).toEqual([]);
    expect(texts({ rows: [["Tin", 10, 106, "Forest", 0, ""]] })).toEqual([]);
    expect(texts({ scents: [["Other", 0.1, 0.1]] })).toEqual([
      "Forest: wax maximum and product limit not known: not checked",
    ]);
  });

  it("are said once where one scent is poured at two loads, at the cell of the limit", () => {
    const rows = [0.06, 0.07].map((load): CellValue[] => ["Tin", 10, 106, "Forest", load, "of wax"]);
    const found = safety({ rows, scents: [["Other"], ["Forest", 0.1]] });
    expect(found).toMatchObject([{ table: "scents", row: 1, field: "productLimit", severity: "warning" }]);
  });

  it("allow nothing at 0, and are wrong at 6 for 6 %", () => {
    expect(texts({ scents: [["Forest", 0.1, 0]] })).toEqual([
      "Forest: over the product limit by 5.66 points: 5.66 % of total, at most 0 %",
    ]);
    expect(safety({ scents: [["Forest", 0.1, 6]] })).toMatchObject([
      { text: "Product limit: 6 means 600 %; write 6% or 0.06", severity: "error" },
    ]);
  });

  it("hold each oil of a blend to its own share of all that is in the pot", () => {
    const scents = (fir: number | null, moss: number | null) => [OWN, ["Fir", null, fir], ["moss ", null, moss]];
    expect(texts({ recipe: BLEND, scents: scents(0.04, 0.02) })).toEqual([]);
    // 40 of 1090 and 20 of 1090: of wax, or without the dye, the limits would be passed elsewhere.
    expect(texts({ recipe: BLEND, scents: scents(0.0367, 0.0183) })).toEqual([
      "Forest: Moss, over the product limit by 0.005 points: 1.835 % of total, at most 1.83 %",
    ]);
    expect(safety({ recipe: BLEND, scents: scents(0.02, 0.02) })).toMatchObject([{ severity: "error" }]);
    // All scent together, 60 of 1090, to the row of the blend.
    expect(texts({ recipe: BLEND, scents: [["Forest", 0.1, 0.05], ...scents(0.04, 0.02).slice(1)] })).toEqual([
      "Forest: over the product limit by 0.505 points: 5.505 % of total, at most 5 %",
    ]);
  });

  it("name the oils of a blend whose limits are not known", () => {
    expect(texts({ recipe: BLEND, scents: [OWN, ["Fir", null, 0.04]] })).toEqual([
      "Forest: product limit of Moss not known: not checked",
    ]);
    expect(texts({ recipe: BLEND })).toEqual([
      "Forest: wax maximum not known: not checked",
      "Forest: product limit of Fir and Moss not known: not checked",
    ]);
  });

  it("take the lowest wax maximum for all scent together, and say whose it is", () => {
    const scents = [OWN, ["Fir", 0.05, 0.09], ["Moss", 0.08, 0.09]];
    expect(texts({ recipe: BLEND, scents })).toEqual([
      "Forest: over the wax maximum by 1 point: 6 % of wax, at most 5 % (the maximum of Fir)",
    ]);
  });

  it("count the same oil in two rows of a recipe together", () => {
    const recipe = [...BLEND, ["fir", 0.01, "of wax", "scent"]];
    const scents = [OWN, ["Fir", null, 0.04], ["Moss", null, 0.09]];
    // 50 of 1100.
    expect(texts({ recipe, scents })[0]).toContain("by 0.545 points: 4.545 % of total, at most 4 %");
  });

  it("stop scent that is given in parts of the wax, and ask about one of another kind", () => {
    const scents = [OWN, ["Fir", null, 0.09], ["Moss", null, 0.09]];
    const stops = (kind: string | null) =>
      built({ recipe: [...BLEND, ["Moss", 2, "part", kind]], scents }).problems.filter(isError);
    expect(
      stops("scent")
        .map(({ text }) => text)
        .join(),
    ).toContain("Moss is scent by its kind; give it a load");
    expect(
      stops(null)
        .map(({ text }) => text)
        .join(),
    ).toContain("Moss is in the table of scents and stands in the recipe as parts");
    const other = [...BLEND.slice(0, 2), ["Moss", 0.02, "of wax", "other"]];
    expect(texts({ recipe: other, scents })).toContain(
      "Forest: Moss is in the table of scents and its kind in the recipe is another: no limit counts it",
    );
  });

  it("stand above all else: what stops, what does not, then the other stops", () => {
    const rows = [["", 1, 106, "Forest", 0.06, "of wax"], ["Tin", 10, 106, "Forest", 0.06, "of wax"] as CellValue[]];
    const made = built({ rows, scents: [["Forest", 0.05]] }).problems.map((one) => [one.safety, isError(one)]);
    expect(made).toEqual([
      [true, true],
      [true, false],
      [undefined, true],
    ]);
  });
});

describe("a load with its point in the wrong place", () => {
  // No wax holds a fifth of its weight: common practice, no source.
  const at = (load: number, ...scents: CellValue[][]) =>
    texts({ rows: [["Tin", 10, 106, "Forest", load, "of wax"]], scents });

  it("is asked about where no wax maximum holds it", () => {
    const said = "Forest: a load of 60 % of wax is more than waxes hold as a rule; check it";
    expect(at(0.6)).toContain(said);
    expect(at(0.6, ["Forest", null, 0.9])).toContain(said);
    expect(at(0.2, ["Forest", null, 0.9])).toEqual(["Forest: wax maximum not known: not checked"]);
    // Over a known maximum it stops by that.
    expect(at(0.6, ["Forest", 0.1, 0.9])).toHaveLength(1);
  });
});

describe("limits on the sheet", () => {
  it("hold a scent whose share is left open, once it is written on a live sheet", async () => {
    const open = {
      recipe: [
        ["Wax", 1, "part", null],
        ["Fir", 0, "of wax", "scent"],
      ],
      scents: [["Fir", 0.1, 0.04]],
    };
    const sheet = describeRun(built(open), { lot: "2026-330-01", date: 46352, settings: { ...SETTINGS, live: true } });
    const fir = [...sheet.cells]
      .reverse()
      .find(({ content }) => content && "text" in content && content.text === "Scent: Fir");
    const share = sheet.cells.find(({ row, column }) => column === AT.share && row === fir?.row);
    expect(share?.content).toEqual({ number: 0 });
    const cells = sheet.cells.map((cell) => (cell === share ? { ...cell, content: { number: 0.12 } } : cell));
    const [rows] = await calculate([{ ...sheet, cells }], { script, metadata: metadataText });
    // 12 % of wax is over 10 % of wax, and 12 / 112 is over 4 % of total.
    const load = rows?.findIndex(([name]) => name === "Load after rounding") ?? -1;
    const said = rows?.slice(load).find(([name]) => String(name).startsWith("Over"))?.[0];
    expect(said).toContain("Over the wax maximum of Fir: 10 % of wax.");
    expect(said).toContain("Over the limit of Fir: 4 % of total.");
  });

  const LONG = "A scent with a name as long as any that a maker gives, and then some more";
  const written = (given: ScentedRun, live: boolean) =>
    describeRun(built(given), { lot: "2026-330-01", date: 46352, settings: { ...SETTINGS, live } });
  const textsOf = (sheet: Sheet) =>
    sheet.cells.flatMap(({ content }) => (content && "text" in content ? [content.text] : []));
  const scents = [OWN, ["Fir", null, 0.04], ['The "best" moss', null, 0.02]];
  const recipe = BLEND.map(
    ([name, ...rest]): CellValue[] => [name === "Moss" ? 'The "best" moss' : name, ...rest] as CellValue[],
  );

  let rows: Calculated[][];
  let poured: Calculated[][];
  const rowOf = (all: Calculated[][], name: string) => all.find((row) => row[0] === name) ?? [];
  beforeAll(async () => {
    const sheet = written({ recipe, scents }, true);
    const at = (name: string) =>
      [...sheet.cells]
        .reverse()
        .find(({ column, content }) => column === 0 && content && "text" in content && content.text === name)?.row;
    const changed = (change: (row: number, column: number) => number | undefined, name: string): Sheet => ({
      ...sheet,
      name,
      cells: sheet.cells.map((cell) => {
        const number = change(cell.row, cell.column);
        return number === undefined ? cell : { ...cell, content: { number } };
      }),
    });
    const moss = at('Scent: The "best" moss');
    // On the live sheet the moss is raised to 3 % of wax: 30 of 1100. On the bench 30 are weighed of 1100.
    const actual = new Map([
      [at("Wax"), 1000],
      [at("Scent: Fir"), 40],
      [moss, 30],
      [at("Dye"), 30],
    ]);
    [rows, poured] = (await calculate(
      [
        changed((row, column) => (row === moss && column === 1 ? 0.03 : undefined), "Raised"),
        changed((row, column) => (column === 4 ? actual.get(row) : undefined), "Poured"),
      ],
      { script, metadata: metadataText },
    )) as [Calculated[][], Calculated[][]];
  });

  it("follow each oil of a live sheet by its own weight", () => {
    const load = rowOf(rows, 'Load of The "best" moss');
    expect(load[1]).toBeCloseTo(30 / 1100, 3);
    const over = 'Over the limit of The "best" moss: 2 % of total. ';
    expect(load[AT.plannedRemark]).toBe(over);
    expect(rows.map(([text]) => text)).toContain(over);
    expect(rowOf(rows, "Load of Fir")[AT.plannedRemark] || "").toBe("");
    expect(rowOf(rows, "Load after rounding")[AT.plannedRemark] || "").toBe("");
  });

  it("follow what is weighed, and are read back into the log", () => {
    expect(rowOf(poured, 'Load of The "best" moss')[AT.actual]).toBeCloseTo(30 / 1100, 12);
    expect(rowOf(poured, "Load of Fir")[AT.loadRemark] || "").toBe("");
    const back = readBack(poured.map((row) => row.map((value): CellValue => value as CellValue)));
    expect(back?.pots[0]?.remark).toBe('Over the limit of The "best" moss: 2 % of total.');
  });

  it.each([true, false])("says what is not known, and is whole on screen and paper, live: %s", (live) => {
    const oils = Array.from({ length: 20 }, (_, i) => `${i} ${LONG}`);
    const given = {
      recipe: [["Wax", 1, "part", null], ...oils.map((oil): CellValue[] => [oil, 0.006, "of wax", "scent"])],
      // Two limits are passed, and of ten oils both are too; of ten nothing is known.
      scents: [["Forest", 0.05, 0.05, 90, 90, 80], ...oils.slice(10).map((oil) => [oil, 0.01, 0.001, null, null, 70])],
    };
    const sheet = written(given, live);
    const all = textsOf(sheet).join(" ");
    for (const { text } of built(given).plan.scents[0]?.remarks ?? []) {
      for (const word of text.split(" ")) expect(all).toContain(word);
    }
    const widths = widthsOf(sheet);
    const heights = rowHeights(sheet);
    const alerts = sheet.cells.filter(({ look = "" }) => look === "alert" || look === "say");
    expect(alerts.length).toBeGreaterThan(4);
    // What the hidden cells of the loads may come to say stands in one line of the pot.
    const loads = sheet.cells.filter(({ column }) => column === AT.loadRemark);
    const over = loads.flatMap(({ content }) =>
      content && "formula" in content ? [...content.formula.matchAll(/"(Over the [^"]*)"/g)] : [],
    );
    expect(over.length).toBeGreaterThan(10);
    for (const cell of alerts) {
      const { content, row, look } = cell;
      const text = content && "text" in content ? content.text : "";
      const literals = look === "say" ? over : [];
      const most = text || literals.map(([, words]) => words).join("");
      const lines = linesOf(most, roomIn(cell, sheet.widths, 0) * 0.9 * 0.9);
      // Excel's rows end at 409 points, and the embedded sheet's at 400 pixels here.
      expect(heights.get(row) ?? 15, most).toBeGreaterThanOrEqual(lines * 15 - 0.001);
      expect(heights.get(row) ?? 15).toBeLessThan(409);
      expect(heightOf(cell, sheet, widths)).toBeGreaterThanOrEqual(lines * 17);
      expect(heightOf(cell, sheet, widths)).toBeLessThan(400);
      // Excel takes no formula over 8192 characters and no text in one over 255.
      if (content && "formula" in content) expect(content.formula.length).toBeLessThan(8192);
      for (const [, words] of literals) expect(words?.length).toBeLessThan(255);
    }
    expect(STYLES.alert.wrap).toBe(true);
  });
});

describe("what the table of scents says twice or in another unit", () => {
  it.each([
    // The same heat in both units: (F - 32) / 1.8 = C. That scents are worked with at 30 to 150 C: common practice, no source.
    [
      "Pour at (C)",
      [85, 149, 93],
      "Forest: Pour at says 149 C, outside 30 to 150 C (86 to 302 F); is it in the other unit?",
      false,
    ],
    [
      "Pour at (C)",
      [85, 185, 93],
      "Forest: Pour at says 185 C, outside 30 to 150 C (86 to 302 F); is it in the other unit?",
      true,
    ],
    [
      "Flash point (C)",
      [85, 65, 200],
      "Forest: Flash point says 200 C, outside 30 to 150 C (86 to 302 F); is it in the other unit?",
      true,
    ],
  ] as const)("%s %j", (_, [add, pour, flash], text, isSaid) => {
    const found = texts({ scents: [["Forest", 0.1, 0.1, add, pour, flash]] });
    expect(found.includes(text)).toBe(isSaid);
  });

  it("is asked about where degrees C stand under a heading in F", () => {
    const headings = HEADINGS.map((heading) => heading.replace("(C)", "(F)"));
    const found = texts({ headings, scents: [["Forest", 0.1, 0.1, 85, 65, 93]] });
    expect(found.filter((text) => text.includes("is it in the other unit?"))).toHaveLength(2);
    expect(texts({ headings, scents: [["Forest", 0.1, 0.1, 185, 149, 200]] })).toEqual([]);
  });

  it("a scent with two rows is a matter of safety: the other row's limits may be the ones that were meant", () => {
    const found = texts({
      scents: [
        ["Forest", 0.2, 0.2, 85, 65, 93],
        ["Forest", 0.01, 0.01, 85, 65, 93],
      ],
    });
    expect(found).toEqual(["Forest stands twice; the first row is taken"]);
  });
});
