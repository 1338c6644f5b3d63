import { ingredientId } from "../plan/fetchList";
import { nameOf, type PlannedPot, type ScentRun } from "../plan/runPlan";
import type { Settings } from "../settings";
import { shareFormat } from "./formats";
import { actualRemark, ingredientRemark } from "./inputChecks";
import { AT, keyed, potTitle, type Rows } from "./layout";
import { type LeftRow, loadRows } from "./loadRows";
import type { Page, PageCell } from "./page";
import { PotFormulas } from "./potFormulas";
import { labelOf, sortOf, stepsOf, stepsTitle } from "./potWords";
import { safetyRows, sayRow } from "./safetyRows";
import { vesselRows } from "./vesselRows";

/** How the numbers of a sheet are shown and whether they are formulas. */
export interface Writing {
  readonly settings: Settings;
  /** The number format of a weight with the decimals of the scale division. */
  readonly weight: string;
  /** The format of a weight that is in whole divisions: on a live sheet the division may change. */
  readonly scale: string;
  /** The approved wick of each vessel by its name. */
  readonly wicks: ReadonlyMap<string, string>;
}

/** A pot with all that its rows are written from. */
export interface Block extends Writing {
  readonly run: ScentRun;
  readonly scentNumber: number;
  readonly pot: PlannedPot;
  readonly formulas: PotFormulas;
  /** Where its kinds of candles stand. */
  readonly candles: Rows;
}

/** One pot in the order of the work: what to weigh and at which temperatures, side by side, and what to pour. */
export function potBlock(
  page: Page,
  [run, scentNumber]: readonly [run: ScentRun, number: number],
  [pot, potNumber]: readonly [pot: PlannedPot, number: number],
  writing: Writing,
): void {
  titleRow(page, run, [potNumber, scentNumber], writing.settings.unit);
  safetyRows(page, run);
  const rows = { first: page.next, last: page.next + run.ingredients.length - 1 };
  const formulas = new PotFormulas(rows, scentNumber);
  const { isWeighed } = formulas;
  const loads = loadRows(run, pot, { scentNumber, rows, isWeighed, live: writing.settings.live });
  const steps = stepsOf(run);
  const height = Math.max(run.ingredients.length + 1 + loads.length, steps.length);
  // Below them: what is to say of the pot, and the heading of its vessels.
  const first = page.next + height + 2;
  const candles = { first, last: first + pot.lines.length - 1 };
  const block: Block = { ...writing, run, scentNumber, pot, formulas, candles };
  const left = [...ingredientRows(page.next, block), totalRow(block), ...loads];
  sideBySide(page, left, steps, scentNumber);
  const total = rows.last + 1;
  sayRow(page, run, isWeighed, { ingredients: rows, total, loads: { first: total + 1, last: total + loads.length } });
  vesselRows(page, block);
}

function titleRow(page: Page, run: ScentRun, [pot, scent]: readonly [pot: number, scent: number], unit: string): void {
  page.headings(
    [
      { text: potTitle(nameOf(run), pot, run.pots.length, run.wax) },
      ...["Share", "Basis", `To weigh (${unit})`, `Actual (${unit})`, "Lot used"].map((text) => ({ text })),
      { text: stepsTitle(run), across: 2 },
      ...["Actual temperature", "Time"].map((text) => ({ text })),
    ],
    keyed(scent, "pot"),
  );
}

/** Rows with the steps beside them, as far as there are any; steps that are left over have rows of their own. */
function sideBySide(page: Page, left: readonly LeftRow[], steps: ReturnType<typeof stepsOf>, scent: number): void {
  for (let i = 0; i < Math.max(left.length, steps.length); i++) {
    const { cells, look, hidden } = left[i] ?? { cells: [{ across: AT.step }], hidden: keyed(scent, "step") };
    const own = look ? cells.map((cell) => ({ look, ...cell })) : cells;
    const step = steps[i];
    const right: PageCell[] = step
      ? [{ text: step.name }, { text: step.target, look: "label" }, { look: "blank" }, { look: "blank" }]
      : [];
    page.row([...own, ...right], undefined, hidden);
  }
}

function ingredientRows(
  first: number,
  { run, scentNumber, pot, formulas, candles, settings, scale }: Block,
): LeftRow[] {
  const { live } = settings;
  return run.ingredients.map((ingredient, i) => {
    const { share, basis } = ingredient;
    // A live sheet holds one formula that spills down over the ingredients.
    const weight = live ? i === 0 && { formula: formulas.weights(candles) } : { number: pot.weights[i] as number };
    return {
      cells: [
        { text: labelOf(ingredient), look: "name" },
        { number: share, format: shareFormat(share, basis === "part"), look: live ? "input" : "body" },
        { text: basis },
        { ...weight, look: "label", format: scale },
        { look: "blank", format: "General" },
        // A lot such as 11-26 is no day.
        { look: "blank", format: "@" },
      ],
      hidden: {
        [AT.remark]: { formula: live ? ingredientRemark(first + i) : actualRemark(first + i) },
        [AT.thing]: { text: ingredientId(ingredient) },
        ...keyed(scentNumber, sortOf(ingredient)),
      },
    };
  });
}

function totalRow({ scentNumber, pot, formulas, candles, settings: { live }, scale }: Block): LeftRow {
  return {
    cells: [
      { text: "Total in the pot" },
      {},
      {},
      { ...(live ? { formula: formulas.total } : { number: pot.melted }), format: scale },
      { formula: formulas.actualTotal, format: "General" },
      {},
    ],
    look: "total",
    hidden: {
      ...(live ? { [AT.potRemark]: { formula: formulas.remark(candles) } } : {}),
      ...keyed(scentNumber, "melted"),
    },
  };
}
