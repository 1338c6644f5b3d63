import { netLabel } from "../core/label/netLabel";
import type { Page, PageCell } from "./page";
import { nameOf, type PlannedPot, type ScentRun } from "./planRun";
import type { Ingredient } from "./readRecipes";
import type { Settings } from "./settings";

/** Cells of the head that the formulas of a live sheet refer to. */
export const HEAD = { division: "$B$3", capacity: "$D$3", loss: "$G$3" } as const;

/** How the numbers of a sheet are shown and whether they are formulas. */
export interface Writing {
  readonly settings: Settings;
  /** The number format of a weight on the scale. */
  readonly weight: string;
}

/** What a row of a sheet holds. */
export type RowKind = "pot" | "wax" | "scent" | "additive" | "melted" | "load" | "vessel" | "totals";

/** The keys of the rows of a scent, numbered from 1: what formulas add up and what is read back. */
export const keyOf = (scent: number | "*", what: RowKind): string => `${scent} ${what}`;

/** One pot in the order of the work: what to weigh, at which temperatures, what to pour. */
export function potBlock(
  page: Page,
  [run, scentNumber]: readonly [run: ScentRun, number: number],
  [pot, potNumber]: readonly [pot: PlannedPot, number: number],
  { settings, weight }: Writing,
): void {
  const { unit, live } = settings;
  const isScented = run.ingredients.some(({ isScent, share }) => isScent && share > 0);
  const steps = stepsOf(run);
  page.headings(
    [
      `${nameOf(run)}: pot ${potNumber} of ${run.pots.length}`,
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
  // Below the ingredients: their sum, the two loads, the steps, and the heading of the vessels.
  const first = bottom + 1 + 1 + (isScented ? 2 : 0) + steps.length + 1;
  const last = first + pot.lines.length - 1;

  const toMelt = `SUM(D${first}:D${last})*(1+${HEAD.loss})`;
  const spill = `=POUR.RECIPESPLIT(${toMelt},B${top}:B${bottom},C${top}:C${bottom},${HEAD.division})`;
  const planned = (value: number, formula: string): PageCell => (live ? { formula } : { number: value });
  const input = live ? "input" : "body";

  for (const [i, { name, share, basis, isScent }] of run.ingredients.entries()) {
    const isPart = basis === "part";
    page.row(
      [
        { text: labelOf(name, isPart, isScent) },
        { number: share, format: shareFormat(share, isPart), look: input },
        { text: basis },
        // A live sheet holds one formula that spills down over the ingredients.
        {
          ...(live ? i === 0 && { formula: spill } : { number: pot.weights[i] as number }),
          look: "label",
          format: weight,
        },
        { look: "blank", format: weight },
        { look: "blank", across: 2 },
      ],
      undefined,
      keyOf(scentNumber, isPart ? "wax" : isScent ? "scent" : "additive"),
    );
  }
  const sumOf = (letter: string) => `SUM(${letter}${top}:${letter}${bottom})`;
  page.row(
    [
      { text: "Together" },
      {},
      {},
      { ...planned(pot.melted, `=${sumOf("D")}`), format: weight },
      { formula: `=IF(COUNT(E${top}:E${bottom})=0,"",${sumOf("E")})`, format: weight },
      live
        ? {
            formula: `=IF(${sumOf("D")}>${HEAD.capacity}+${HEAD.division}/2,"more than the pot holds","")`,
            look: "alert",
            across: 2,
          }
        : { across: 2 },
    ],
    "total",
    keyOf(scentNumber, "melted"),
  );
  if (isScented) {
    // All that is scent to all that is wax, or to the two together.
    const loadOf = (letter: string) => {
      const sum = (which: (one: Ingredient) => boolean) =>
        run.ingredients.flatMap((one, i) => (which(one) ? [`${letter}${top + i}`] : [])).join("+");
      const [wax, scent] = [sum(({ basis }) => basis === "part"), sum(({ isScent }) => isScent)];
      return `(${scent})/(${run.basis === "of wax" ? wax : `${wax}+${scent}`})`;
    };
    page.row(
      [{ text: "True load" }, { ...planned(pot.trueLoad, `=${loadOf("D")}`), format: "0.00%" }, { text: run.basis }],
      "note",
      keyOf(scentNumber, "load"),
    );
    const isWeighed = `COUNT(E${top}:E${bottom})=${run.ingredients.length}`;
    page.row(
      [
        { text: "Load as weighed" },
        { formula: `=IF(${isWeighed},${loadOf("E")},"")`, format: "0.00%" },
        { text: run.basis },
      ],
      "note",
    );
  }
  for (const { name, target } of steps) {
    page.row([
      { text: name },
      { text: target, look: "label", across: 2 },
      { text: "as done, time", look: "note", align: "right" },
      { look: "blank" },
      { look: "blank", across: 2 },
    ]);
  }
  page.headings([
    "Pour into",
    "Count",
    `Fill each (${unit})`,
    `Together (${unit})`,
    "Good ones",
    `One, weighed (${unit})`,
    "Net weight to declare",
  ]);
  for (const { vessel, count, fill, poured } of pot.lines) {
    const at = page.next;
    page.row(
      [
        { text: vessel },
        { number: count, format: "0", look: input },
        { number: fill, format: finer(weight), look: input },
        { ...planned(poured, `=B${at}*C${at}`), format: weight },
        { look: "blank", format: "0" },
        { look: "blank", format: finer(weight) },
        live
          ? { formula: `=POUR.NETLABEL(C${at},"${unit}","${settings.label}")`, look: "note" }
          : { text: netLabel(fill, unit, settings.label), look: "note" },
      ],
      undefined,
      keyOf(scentNumber, "vessel"),
    );
  }
}

/** An ingredient's name with what it is, where the name does not say so itself. */
function labelOf(name: string, isWax: boolean, isScent: boolean): string {
  if (isScent) return `Scent: ${name}`;
  return isWax && !/wax/i.test(name) ? `Wax: ${name}` : name;
}

/** The steps of a scent that have a target. */
function stepsOf({ notes, load }: ScentRun): { name: string; target: string }[] {
  if (!notes) return [];
  const steps = [
    { name: "Melt at", target: notes.melt },
    ...(load > 0
      ? [
          {
            name: "Add scent at",
            target: notes.add && notes.flash ? `${notes.add} (flash ${notes.flash})` : notes.add,
          },
          { name: "Stir", target: notes.stir },
        ]
      : []),
    { name: "Pour at", target: notes.pour },
  ];
  return steps.filter(({ target }) => target !== "");
}

function shareFormat(share: number, isPart: boolean): string {
  if (!isPart) return "0.0#%";
  return Number.isInteger(share) ? "0" : "0.0##";
}

/** A number format with the decimals of the scale division: 0.1 shows one. */
export function decimalsFormat(division: number): string {
  const [, digits = ""] = /\.(\d+)$/.exec(String(division)) ?? [];
  return digits === "" ? "0" : `0.${"0".repeat(Math.min(digits.length, 6))}`;
}

/** One decimal more, for what is poured by eye against a scale. */
function finer(format: string): string {
  return format === "0" ? "0.0" : `${format}0`;
}
