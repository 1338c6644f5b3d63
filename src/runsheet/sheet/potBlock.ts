import { weighOut } from "../../core/weighing/weighOut";
import { nameOf, type PlannedPot, type ScentRun } from "../plan/runPlan";
import type { Settings } from "../settings";
import type { Ingredient } from "../tables/recipes";
import {
  actualRemark,
  FIX,
  FIX_ACTUAL,
  fillFormula,
  IS_CAPACITY,
  IS_DIVISION,
  IS_LOSS,
  ingredientRemark,
  labelFormula,
} from "./inputChecks";
import { HEAD, keyOf, potTitle } from "./layout";
import { loadRows } from "./loadRows";
import type { Page, PageCell } from "./page";

/** How the numbers of a sheet are shown and whether they are formulas. */
export interface Writing {
  readonly settings: Settings;
  /** The number format of a weight with the decimals of the scale division. */
  readonly weight: string;
  /** The format of a weight that is in whole divisions: on a live sheet the division may change. */
  readonly scale: string;
}

/** One pot in the order of the work: what to weigh, at which temperatures, what to pour. */
export function potBlock(
  page: Page,
  [run, scentNumber]: readonly [run: ScentRun, number: number],
  [pot, potNumber]: readonly [pot: PlannedPot, number: number],
  { settings, weight, scale }: Writing,
): void {
  const { unit, live } = settings;
  const steps = stepsOf(run);
  page.headings(
    [
      potTitle(nameOf(run), potNumber, run.pots.length),
      "Share",
      "Basis",
      `To weigh (${unit})`,
      `Actual (${unit})`,
      "Lot used",
    ],
    keyOf(scentNumber, "pot"),
  );
  const top = page.next;
  const bottom = top + run.ingredients.length - 1;
  // Rows that a maker puts in between have no key: nothing is wrong with what they leave blank.
  const keyed = `(${page.keys}${top}:${page.keys}${bottom}<>"")`;
  const remarks = `G${top}:G${bottom}`;
  const areActual = `COUNTIF(${remarks},"${FIX_ACTUAL}")=0`;
  // Until each ingredient of use is weighed there is no load.
  const missing = `SUMPRODUCT(${keyed}*(B${top}:B${bottom}<>0)*(1-ISNUMBER(E${top}:E${bottom})))`;
  const wax = `SUMIF(${page.keys}${top}:${page.keys}${bottom},"${keyOf(scentNumber, "wax")}",E${top}:E${bottom})`;
  const isWeighed = `AND(${missing}=0,${areActual},${wax}>0)`;
  const loads = loadRows(run, scentNumber, pot, { top, bottom, isWeighed, live, widths: page.widths });
  // Below the ingredients: their sum, the loads, the steps with their heading, and the heading of the vessels.
  const first = bottom + 1 + 1 + loads.length + (steps.length > 0 ? 1 + steps.length : 0) + 1;
  const last = first + pot.lines.length - 1;

  const arePoured = `ISNUMBER(SUM(D${first}:D${last}))`;
  const areShares = `SUMPRODUCT(${keyed}*(1-ISNUMBER(B${top}:B${bottom})))=0`;
  // What cannot be must not become a weight, and a blank share not the other ingredients' gain.
  const poured = `SUMPRODUCT(B${first}:B${last},C${first}:C${last})`;
  const toMelt = `IF(AND(${IS_LOSS},${areShares},${arePoured}),${poured}*(1+${HEAD.loss}),NA())`;
  const spill = `=POUR.RECIPESPLIT(${toMelt},B${top}:B${bottom},C${top}:C${bottom},${HEAD.division})`;
  const planned = (value: number, formula: string): PageCell => (live ? { formula } : { number: value });
  const input = live ? "input" : "body";

  for (const [i, ingredient] of run.ingredients.entries()) {
    const { share, basis } = ingredient;
    const isPart = basis === "part";
    page.row(
      [
        { text: labelOf(ingredient) },
        { number: share, format: shareFormat(share, isPart), look: input },
        { text: basis },
        // A live sheet holds one formula that spills down over the ingredients.
        {
          ...(live ? i === 0 && { formula: spill } : { number: pot.weights[i] as number }),
          look: "label",
          format: scale,
        },
        { look: "blank", format: "General" },
        { look: "blank" },
        { formula: live ? ingredientRemark(page.next) : actualRemark(page.next), look: "alert" },
      ],
      undefined,
      keyOf(scentNumber, sortOf(ingredient)),
    );
  }
  const sumOf = (letter: string) => `SUM(${letter}${top}:${letter}${bottom})`;
  page.row(
    [
      { text: "Total in the pot" },
      {},
      {},
      { ...planned(pot.melted, `=${sumOf("D")}`), format: scale },
      {
        formula: `=IF(COUNT(E${top}:E${bottom})=0,"",IF(${areActual},${sumOf("E")},"Fix above"))`,
        format: "General",
      },
      live
        ? {
            formula: `=${[
              [IS_DIVISION, "Fix what the scale reads to"],
              [IS_LOSS, "Fix the extra to melt (loss)"],
              [arePoured, "Fix the counts and fills below"],
              [
                `AND(${areShares},COUNTIF(${remarks},"${FIX}*")=COUNTIF(${remarks},"${FIX_ACTUAL}"))`,
                "Fix the shares above",
              ],
              [`ISNUMBER(${sumOf("D")})`, "Fix the shares: some wax, less scent"],
              [IS_CAPACITY, "Fix what the pot holds"],
              [`${sumOf("D")}<=${HEAD.capacity}+${HEAD.division}/2`, "More than the pot holds"],
            ].reduceRight((then, [holds, remark]) => `IF(${holds},${then},"${remark}")`, '""')}`,
            look: "alert",
            across: 2,
          }
        : { across: 2 },
    ],
    "total",
    keyOf(scentNumber, "melted"),
  );
  for (const row of loads) page.row(...row);
  if (steps.length > 0) {
    page.row(
      [
        { text: "Steps" },
        { text: "Target", across: 2 },
        { text: "Actual temperature", across: 2, align: "right" },
        { text: "Time", across: 2, align: "center" },
      ],
      "heading",
    );
  }
  for (const { name, target } of steps) {
    page.row(
      [{ text: name }, { text: target, look: "label", across: 3 }, { look: "blank" }, { look: "blank", across: 2 }],
      undefined,
      keyOf(scentNumber, "step"),
    );
  }
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
    const shown = shownFill(fill, settings.division);
    page.row(
      [
        { text: vessel },
        // Not rounded: half a candle must not look like one.
        { number: count, format: "General", look: input },
        { number: fill, format: finer(weight), look: input },
        { ...planned(shown, fillFormula(at)), look: "label", format: scale },
        { look: "blank", format: "General" },
        { look: "blank", format: finer(weight) },
        { formula: labelFormula(at, settings, live ? undefined : Math.min(fill, shown)), look: "note" },
      ],
      undefined,
      keyOf(scentNumber, "vessel"),
    );
  }
}

/** What an ingredient is, as the key of its row says it. */
function sortOf({ basis, isScent }: Ingredient): "wax" | "scent" | "additive" {
  if (basis === "part") return "wax";
  return isScent ? "scent" : "additive";
}

/** An ingredient's name with what it is, where the name does not say so itself. */
export function labelOf(ingredient: Ingredient): string {
  const { name } = ingredient;
  const sort = sortOf(ingredient);
  if (sort === "scent") return `Scent: ${name}`;
  return sort === "wax" && !/wax/i.test(name) ? `Wax: ${name}` : name;
}

/** The steps of a scent that have a target. */
export function stepsOf({ notes, load, flash }: ScentRun): { name: string; target: string }[] {
  if (!notes) return [];
  const add = notes.add?.words ?? "";
  const steps = [
    { name: "Melt at", target: notes.melt?.words ?? "" },
    ...(load > 0
      ? [
          { name: "Add scent at", target: add && flash ? `${add} (flash ${flash})` : add },
          { name: "Stir", target: notes.stir },
        ]
      : []),
    { name: "Pour at", target: notes.pour?.words ?? "" },
  ];
  return steps.filter(({ target }) => target !== "");
}

/** A share as it stands: what is typed for a whole number of parts may not be one. */
function shareFormat(share: number, isPart: boolean): string {
  if (!isPart) return "0.0##%";
  return Number.isInteger(share) ? "General" : "0.0##";
}

/** A number format with the decimals of the scale division: 0.1 shows one. */
export function decimalsFormat(division: number): string {
  const [, digits = ""] = /\.(\d+)$/.exec(String(division)) ?? [];
  return digits === "" ? "0" : `0.${"0".repeat(Math.min(digits.length, 6))}`;
}

/** One decimal more, for what the scale does not round. */
function finer(format: string): string {
  return format === "0" ? "0.0" : `${format}0`;
}

/** A fill as the scale shows it. What is less than half a step of it stays as planned: 0 would be no fill. */
const shownFill = (fill: number, division: number): number => weighOut([fill], division)[0] || fill;
