import type { Cell, Content, Sheet } from "../sheet/sheet";
import { CAUTIONS } from "./cautions";
import { sheetNameOf } from "./nextLot";
import { nameOf, type PlannedPot, type RunPlan, type ScentRun, totalsOf } from "./planRun";
import type { Settings } from "./settings";

/** What a run sheet says beside its plan. */
export interface RunHead {
  readonly lot: string;
  /** Spreadsheet serial of the day. */
  readonly date: number;
  readonly settings: Settings;
}

const WIDTHS = [30, 10, 13, 14, 14, 20];
const LAST = WIDTHS.length;

/** Cells of the head that the formulas of a live sheet refer to. */
const DIVISION = "$B$3";
const CAPACITY = "$D$3";
const LOSS = "$F$3";

/**
 * The run sheet as a described sheet, in the order of the work: head, cautions, for each scent and pot what to weigh
 * and what to pour, totals, sign-off. Live: the weights are formulas on this sheet's own counts, fills, loads and
 * head; frozen: plain numbers.
 */
export function describeRun(plan: RunPlan, head: RunHead): Sheet {
  const page = new Page();
  const { settings } = head;
  const { unit, live } = settings;
  const weight = decimalsFormat(settings.division);

  page.row([{ text: `Run sheet ${head.lot}`, look: "title", across: LAST }]);
  page.row([
    { text: "Date", look: "label" },
    { number: head.date, format: "yyyy-mm-dd", align: "left" },
    { text: "Made by", look: "label", align: "right" },
    { look: "blank" },
    { text: "Checked by", look: "label", align: "right" },
    { look: "blank" },
  ]);
  page.row([
    { text: `Scale division (${unit})`, look: "label" },
    { number: settings.division, look: live ? "input" : "body" },
    { text: `Pot holds (${unit})`, look: "label", align: "right" },
    { number: settings.potCapacity, look: live ? "input" : "body" },
    { text: "Melted beyond", look: "label", align: "right" },
    { number: settings.loss, format: "0.0%", look: live ? "input" : "body" },
  ]);
  page.row([
    {
      text: live
        ? "Live: change a count, a fill, a load or a figure above and the weights follow."
        : "Frozen: plain numbers. A changed count moves nothing.",
      look: "note",
      across: LAST,
    },
  ]);
  for (const caution of CAUTIONS) page.row([{ text: caution, look: "caution", across: LAST }]);

  const totals = plan.scents.map((scent) => {
    page.skip();
    const at = scent.pots.map((pot, i) => potBlock(page, scent, pot, i + 1, { unit, live, weight }));
    return { scent, at };
  });

  page.skip();
  page.row(
    ["Totals", "Candles", "Pots", `Wax (${unit})`, `Scent (${unit})`, `Melted (${unit})`].map((text) => ({
      text,
      look: "heading" as const,
    })),
  );
  const first = page.next;
  for (const { scent, at } of totals) {
    const sums = totalsOf([scent]);
    const sumOf = (cells: readonly string[], value: number): Content =>
      live && cells.length > 0 ? { formula: `=${cells.join("+")}` } : { number: value };
    const scentCells = at.flatMap(({ scent: cell }) => cell ?? []);
    page.row([
      { text: nameOf(scent) },
      {
        ...sumOf(
          at.map(({ count }) => count),
          sums.candles,
        ),
        format: "0",
      },
      { number: scent.pots.length, format: "0" },
      {
        ...sumOf(
          at.map(({ wax }) => wax),
          sums.wax,
        ),
        format: weight,
      },
      { ...sumOf(scentCells, sums.scent), format: weight },
      {
        ...sumOf(
          at.map(({ melted }) => melted),
          sums.melted,
        ),
        format: weight,
      },
    ]);
  }
  const all = plan.totals;
  const down = (letter: string, value: number): Content =>
    live ? { formula: `=SUM(${letter}${first}:${letter}${page.next - 1})` } : { number: value };
  page.row(
    [
      { text: "Together" },
      { ...down("B", all.candles), format: "0" },
      { ...down("C", all.pots), format: "0" },
      { ...down("D", all.wax), format: weight },
      { ...down("E", all.scent), format: weight },
      { ...down("F", all.melted), format: weight },
    ].map((cell) => ({ ...cell, look: "total" as const })),
  );

  page.skip();
  page.row([
    { text: "Anything out of the ordinary", look: "label" },
    { look: "blank", across: LAST - 1 },
  ]);
  page.row([{}, { look: "blank", across: LAST - 1 }]);
  page.row([
    { text: "Poured by, date", look: "label" },
    { look: "blank", across: 2 },
    { text: "Checked by, date", look: "label", align: "right" },
    { look: "blank", across: 2 },
  ]);
  return {
    name: sheetNameOf(head.lot),
    widths: WIDTHS,
    cells: page.cells,
    print: { paper: settings.paper, repeatRows: [0, 0] },
  };
}

/** Addresses of what the totals add up. */
interface PotCells {
  readonly count: string;
  readonly wax: string;
  readonly scent: string | undefined;
  readonly melted: string;
}

/** One pot: its ingredients to weigh, then the vessels to pour. */
function potBlock(
  page: Page,
  run: ScentRun,
  pot: PlannedPot,
  number: number,
  { unit, live, weight }: { unit: string; live: boolean; weight: string },
): PotCells {
  page.row(
    [
      `${nameOf(run)}: pot ${number} of ${run.pots.length}`,
      "Share",
      "Basis",
      `To weigh (${unit})`,
      `Actual (${unit})`,
      "Temperature, time",
    ].map((text) => ({ text, look: "heading" as const })),
  );
  const top = page.next;
  const ingredients: { name: string; share: number; basis: string; weight: number }[] = [
    { name: "Wax", share: 1, basis: "part", weight: pot.wax },
  ];
  if (run.load > 0) {
    ingredients.push({ name: `Scent: ${nameOf(run)}`, share: run.load, basis: run.basis, weight: pot.scent });
  }
  const bottom = top + ingredients.length - 1;
  // The vessels stand below the ingredients, the sum and one heading.
  const firstLine = bottom + 3 + (run.load > 0 ? 1 : 0);
  const lastLine = firstLine + pot.lines.length - 1;
  const toMelt = `SUM(D${firstLine}:D${lastLine})*(1+${LOSS})`;
  const spill = `=POUR.RECIPESPLIT(${toMelt},B${top}:B${bottom},C${top}:C${bottom},${DIVISION})`;

  for (const [i, { name, share, basis, weight: planned }] of ingredients.entries()) {
    const isPart = basis === "part";
    page.row([
      { text: name },
      { number: share, format: isPart ? "0" : "0.0#%", look: live && !isPart ? "input" : "body" },
      { text: basis },
      // A live sheet holds one formula that spills down over the ingredients.
      { ...(live ? (i === 0 ? { formula: spill } : {}) : { number: planned }), look: "label", format: weight },
      { look: "blank" },
      { look: "blank" },
    ]);
  }
  page.row(
    [
      { text: "Together" },
      {},
      {},
      { ...(live ? { formula: `=SUM(D${top}:D${bottom})` } : { number: pot.melted }), format: weight },
      {},
      live ? { formula: `=IF(SUM(D${top}:D${bottom})>${CAPACITY}+${DIVISION}/2,"more than the pot holds","")` } : {},
    ].map((cell, i) => ({ ...cell, look: i === 5 ? ("alert" as const) : ("total" as const) })),
  );
  if (run.load > 0) {
    page.row([
      { text: "True load after rounding", look: "note" },
      {
        ...(live ? { formula: `=POUR.LOADFROM(D${top},D${bottom},C${bottom})` } : { number: pot.trueLoad }),
        format: "0.00%",
        look: "note",
      },
      { text: run.basis, look: "note" },
    ]);
  }
  page.row(
    ["Pour into", "Count", `Fill each (${unit})`, `Together (${unit})`, "Poured", "Note"].map((text) => ({
      text,
      look: "heading" as const,
    })),
  );
  for (const { vessel, count, fill, poured } of pot.lines) {
    const at = page.next;
    page.row([
      { text: vessel },
      { number: count, format: "0", look: live ? "input" : "body" },
      { number: fill, format: finer(weight), look: live ? "input" : "body" },
      { ...(live ? { formula: `=B${at}*C${at}` } : { number: poured }), format: weight },
      { look: "blank" },
      { look: "blank" },
    ]);
  }
  const wax = `D${top}`;
  return {
    count: `SUM(B${firstLine}:B${lastLine})`,
    wax,
    scent: run.load > 0 ? `D${bottom}` : undefined,
    melted: `D${bottom + 1}`,
  };
}

/** Places cells row by row. */
class Page {
  readonly cells: Cell[] = [];
  private rows = 0;

  /** The number of the next row as formulas count it, from 1. */
  get next(): number {
    return this.rows + 1;
  }

  skip(): void {
    this.rows += 1;
  }

  row(cells: readonly (Partial<Omit<Cell, "row" | "column" | "content">> & Partial<AnyContent>)[]): void {
    let column = 0;
    for (const { text, number, formula, ...rest } of cells) {
      const content = contentOf({ text, number, formula });
      if (content || Object.keys(rest).length > 0) this.cells.push({ row: this.rows, column, ...rest, ...content });
      column += rest.across ?? 1;
    }
    this.rows += 1;
  }
}

interface AnyContent {
  readonly text: string | undefined;
  readonly number: number | undefined;
  readonly formula: string | undefined;
}

function contentOf({ text, number, formula }: AnyContent): { content: Content } | undefined {
  if (text !== undefined) return { content: { text } };
  if (number !== undefined) return { content: { number } };
  return formula === undefined ? undefined : { content: { formula } };
}

/** A number format with the decimals of the scale division: 0.1 shows one. */
function decimalsFormat(division: number): string {
  const [, digits = ""] = /\.(\d+)$/.exec(String(division)) ?? [];
  return digits === "" ? "0" : `0.${"0".repeat(Math.min(digits.length, 6))}`;
}

/** One decimal more, for what is poured by eye against a scale. */
function finer(format: string): string {
  return format === "0" ? "0.0" : `${format}0`;
}
