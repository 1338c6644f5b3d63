import { isoOfDay } from "../../core/label/isoDay";
import { amountWords } from "../amountWords";
import type { Problem } from "../problem";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import type { FittingTables } from "../tables/fittings";
import type { Beside, CandleCount, OpenRun, Use } from "./beside";
import { nameOf, type RunPlan } from "./runPlan";
import { keyOf, knownUses, type Uses, usesWith } from "./uses";

/**
 * Whether what a run takes counts as planned beside the batch: it does, but for the sheet of this very batch, and for
 * those that the maker left out.
 */
export type OpenRunState = "counted" | "of this batch" | "left out";

/** A run that is written and not logged, as the plan looks at it. */
export interface OpenRunBeside extends Pick<OpenRun, "lot" | "date">, Uses {
  readonly state: OpenRunState;
}

/**
 * Looks at the runs that are written and not logged. Of those with the candles of the batch the newest is its sheet;
 * another one of the same day is the same written twice, one of another day is a run of its own.
 */
export function openRunsBeside(
  plan: RunPlan,
  tables: FittingTables,
  { openRuns = [], openFittings }: Pick<Beside, "openRuns" | "openFittings">,
): OpenRunBeside[] {
  const batch = batchKey(candlesOf(plan), ingredientsOf(plan));
  const isBatch = openFittings === undefined;
  const same = openRuns.filter(
    (one) => isBatch && one.counts === undefined && batchKey(one.candles, one.ingredients) === batch,
  );
  return openRuns.map((one) => ({
    lot: one.lot,
    date: one.date,
    state: stateOf(one, same.includes(one) && one.date === same.at(-1)?.date),
    ...usesWith(one, openFittings ?? tables),
  }));
}

function stateOf({ counts }: OpenRun, isOwn: boolean): OpenRunState {
  if (counts !== undefined) return counts ? "counted" : "left out";
  return isOwn ? "of this batch" : "counted";
}

const candlesOf = ({ scents }: RunPlan): CandleCount[] =>
  scents.flatMap((run) =>
    run.pots.flatMap(({ lines }) => lines.map(({ vessel, count }) => ({ scent: nameOf(run), vessel, count }))),
  );
const ingredientsOf = ({ scents }: RunPlan): string[] =>
  scents.flatMap(({ ingredients, pots }) =>
    ingredients.flatMap(({ name }, i) => (pots.some(({ weights }) => (weights[i] ?? 0) > 0) ? name : [])),
  );

/** The same for two runs of the same candles, made of the same things. */
function batchKey(candles: readonly CandleCount[], ingredients: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const { scent, vessel, count } of candles) {
    const key = JSON.stringify([sameName(scent), sameName(vessel)]);
    if (count > 0) counts.set(key, (counts.get(key) ?? 0) + count);
  }
  return JSON.stringify([[...counts].sort(), [...new Set(ingredients.map(sameName))].sort()]);
}

/** How much of an item each of the runs that count will take. */
export const takenOf = (
  runs: readonly OpenRunBeside[],
  item: Omit<Use, "amount">,
): { readonly lot: string; readonly amount: number }[] =>
  runs.flatMap(({ lot, state, uses }) =>
    state === "counted" ? uses.filter((use) => keyOf(use) === keyOf(item)).map(({ amount }) => ({ lot, amount })) : [],
  );

/** What runs will take of an item, in words: `run 2026-330-01, 1200 g; run 2026-331-01, 500 g`. */
export const takenWords = (taken: ReturnType<typeof takenOf>, isCounted: boolean, unit: WeightUnit): string =>
  taken.map(({ lot, amount }) => `run ${lot}, ${wordsOf({ amount, isCounted }, unit)}`).join("; ");

const wordsOf = ({ amount, isCounted }: Omit<Use, "item">, unit: WeightUnit): string =>
  amountWords(amount, isCounted ? "count" : "weight", unit);

/** `Soy wax 1200 g, Tin 10, Lid (how many is not known)`. */
export const usesWords = (all: Uses, unit: WeightUnit): string =>
  [
    ...knownUses(all).map((use) => `${use.item} ${wordsOf(use, unit)}`),
    ...all.unknown.map((item) => `${item} (how many is not known)`),
  ].join(", ");

/** What a run that counts takes of the things that the plan uses: a line for the paper; none where it takes none. */
export function sharedLines(runs: readonly OpenRunBeside[], used: readonly Use[], unit: WeightUnit): string[] {
  const keys = new Set(used.map(keyOf));
  return runs.flatMap(({ lot, state, uses, unknown }) => {
    if (state !== "counted") return [];
    const shared = {
      uses: uses.filter((use) => keys.has(keyOf(use))),
      unknown: unknown.filter((item) => keys.has(keyOf({ item, isCounted: true }))),
    };
    const words = usesWords(shared, unit);
    return words === "" ? [] : [`Also planned, taken off what is on hand: run ${lot}, ${words}`];
  });
}

/** What is to be looked at: runs of days before that nobody logged, and those of which not all is known. */
export function openRunProblems(
  runs: readonly OpenRunBeside[],
  { today, unread = [] }: Pick<Beside, "today" | "unread">,
): Problem[] {
  const old = runs.filter(({ state, date }) => state === "counted" && today !== undefined && date < today);
  return [
    ...old.map(({ lot, date }) =>
      warning(
        `Run ${lot} of ${isoOfDay(date)} is not logged, so what it takes still counts as planned. Log it, or leave it out under Also planned`,
      ),
    ),
    ...runs.flatMap(({ lot, state, unknown }) =>
      state === "counted" && unknown.length > 0
        ? warning(
            `Run ${lot}: how many of ${unknown.join(", ")} its candles take is not known, so what it takes is counted short. Write it in the table of components`,
          )
        : [],
    ),
    ...unread.map((sheet) =>
      warning(`${sheet}: not all of it can be read, so what it takes is counted short. Look at its sheet`),
    ),
  ];
}

const warning = (text: string): Problem => ({ text, severity: "warning" });
