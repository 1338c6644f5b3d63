import { weighOut } from "../../core/weighing/weighOut";
import { nameOf, type PlannedPot, type ScentRun } from "../plan/runPlan";
import type { Settings } from "../settings";
import { finer, shareFormat } from "./formats";
import { actualRemark, fillFormula, ingredientRemark, labelFormula } from "./inputChecks";
import { keyOf, potTitle } from "./layout";
import { loadRows } from "./loadRows";
import type { Page, PageCell } from "./page";
import { PotFormulas, type Rows } from "./potFormulas";
import { labelOf, sortOf, stepsOf } from "./potWords";

/** How the numbers of a sheet are shown and whether they are formulas. */
export interface Writing {
  readonly settings: Settings;
  /** The number format of a weight with the decimals of the scale division. */
  readonly weight: string;
  /** The format of a weight that is in whole divisions: on a live sheet the division may change. */
  readonly scale: string;
}

/** A pot with all that its rows are written from. */
interface Block extends Writing {
  readonly run: ScentRun;
  readonly scentNumber: number;
  readonly pot: PlannedPot;
  readonly formulas: PotFormulas;
  /** Where its kinds of candles stand. */
  readonly candles: Rows;
}

/** One pot in the order of the work: what to weigh, at which temperatures, what to pour. */
export function potBlock(
  page: Page,
  [run, scentNumber]: readonly [run: ScentRun, number: number],
  [pot, potNumber]: readonly [pot: PlannedPot, number: number],
  writing: Writing,
): void {
  const { unit, live } = writing.settings;
  const title = potTitle(nameOf(run), potNumber, run.pots.length);
  page.headings(
    [title, "Share", "Basis", `To weigh (${unit})`, `Actual (${unit})`, "Lot used"],
    keyOf(scentNumber, "pot"),
  );
  const rows = { first: page.next, last: page.next + run.ingredients.length - 1 };
  const formulas = new PotFormulas(rows, scentNumber);
  const loads = loadRows(run, pot, { scentNumber, rows, isWeighed: formulas.isWeighed, live, widths: page.widths });
  const steps = stepsOf(run);
  // Below the ingredients: their sum, the loads, the steps with their heading, and the heading of the vessels.
  const first = rows.last + 1 + 1 + loads.length + (steps.length > 0 ? 1 + steps.length : 0) + 1;
  const candles = { first, last: first + pot.lines.length - 1 };
  const block = { ...writing, run, scentNumber, pot, formulas, candles };
  ingredientRows(page, block);
  totalRow(page, block);
  for (const row of loads) page.row(...row);
  stepRows(page, steps, scentNumber);
  vesselRows(page, block);
}

function ingredientRows(page: Page, { run, scentNumber, pot, formulas, candles, settings, scale }: Block): void {
  const { live } = settings;
  for (const [i, ingredient] of run.ingredients.entries()) {
    const { share, basis } = ingredient;
    // A live sheet holds one formula that spills down over the ingredients.
    const weight = live ? i === 0 && { formula: formulas.weights(candles) } : { number: pot.weights[i] as number };
    page.row(
      [
        { text: labelOf(ingredient) },
        { number: share, format: shareFormat(share, basis === "part"), look: live ? "input" : "body" },
        { text: basis },
        { ...weight, look: "label", format: scale },
        { look: "blank", format: "General" },
        { look: "blank" },
        { formula: live ? ingredientRemark(page.next) : actualRemark(page.next), look: "alert" },
      ],
      undefined,
      keyOf(scentNumber, sortOf(ingredient)),
    );
  }
}

function totalRow(page: Page, { scentNumber, pot, formulas, candles, settings: { live }, scale }: Block): void {
  const remark: PageCell = live ? { formula: formulas.remark(candles), look: "alert", across: 2 } : { across: 2 };
  page.row(
    [
      { text: "Total in the pot" },
      {},
      {},
      { ...(live ? { formula: formulas.total } : { number: pot.melted }), format: scale },
      { formula: formulas.actualTotal, format: "General" },
      remark,
    ],
    "total",
    keyOf(scentNumber, "melted"),
  );
}

function stepRows(page: Page, steps: ReturnType<typeof stepsOf>, scentNumber: number): void {
  if (steps.length === 0) return;
  page.row(
    [
      { text: "Steps" },
      { text: "Target", across: 2 },
      { text: "Actual temperature", across: 2, align: "right" },
      { text: "Time", across: 2, align: "center" },
    ],
    "heading",
  );
  for (const { name, target } of steps) {
    page.row(
      [{ text: name }, { text: target, look: "label", across: 3 }, { look: "blank" }, { look: "blank", across: 2 }],
      undefined,
      keyOf(scentNumber, "step"),
    );
  }
}

function vesselRows(page: Page, { pot, scentNumber, settings, weight, scale }: Block): void {
  const { unit, live, division } = settings;
  const input = live ? "input" : "body";
  page.headings([
    "Pour into",
    "Count",
    `Planned fill (${unit})`,
    `Fill each (${unit})`,
    "Good candles",
    `Weight of one, without vessel (${unit})`,
    "Net weight to declare",
  ]);
  for (const { vessel, count, fill } of pot.lines) {
    const at = page.next;
    const shown = shownFill(fill, division);
    page.row(
      [
        { text: vessel },
        // Not rounded: half a candle must not look like one.
        { number: count, format: "General", look: input },
        { number: fill, format: finer(weight), look: input },
        { ...(live ? { formula: fillFormula(at) } : { number: shown }), look: "label", format: scale },
        { look: "blank", format: "General" },
        { look: "blank", format: finer(weight) },
        { formula: labelFormula(at, settings, live ? undefined : Math.min(fill, shown)), look: "note" },
      ],
      undefined,
      keyOf(scentNumber, "vessel"),
    );
  }
}

/** A fill as the scale shows it. What is less than half a step of it stays as planned: 0 would be no fill. */
const shownFill = (fill: number, division: number): number => weighOut([fill], division)[0] || fill;
