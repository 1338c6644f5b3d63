import { plain } from "../../core/check/plain";
import { nameOf, type RunPlan } from "../plan/runPlan";
import { sameName } from "../sameName";
import { labelOf, stepsOf } from "../sheet/potWords";
import type { PouredRun } from "./poured";

/** What differs between a run sheet as it stands and a plan made now, a sentence for each thing. */
export function compareRuns(old: PouredRun, plan: RunPlan): string[] {
  const before = factsOf(old.pots, old.cure);
  const after = factsOf(...plannedPots(plan));
  const isOnBoth = (key: string | undefined) => key === undefined || (before.has(key) && after.has(key));
  return [...new Set([...after.keys(), ...before.keys()])].flatMap((key) => {
    const [was, now] = [before.get(key), after.get(key)];
    const { name, of } = (now ?? was) as Fact;
    if (was?.value === now?.value || !isOnBoth(of)) return [];
    if (!was) return [`${name} new, ${now?.value}`];
    return [now ? `${name} ${was.value} before, ${now.value} now` : `${name} left out, was ${was.value}`];
  });
}

/** One thing that a run sheet says. */
interface Fact {
  readonly name: string;
  readonly value: string;
  /** The fact without which this one is not worth a sentence: the fill of a candle that is new goes without saying. */
  readonly of?: string;
}

/** A pot as far as it is compared. */
interface ComparedPot {
  readonly scent: string;
  readonly parts: readonly { readonly label: string; readonly planned: number }[];
  readonly steps: ReadonlyMap<string, string>;
  readonly lines: readonly { readonly vessel: string; readonly count: number; readonly fill: number }[];
}

function plannedPots({ scents }: RunPlan): [ComparedPot[], Map<string, number>] {
  const pots = scents.flatMap((run) =>
    run.pots.map(({ weights, lines }) => ({
      scent: nameOf(run),
      parts: run.ingredients.map((one, i) => ({ label: labelOf(one), planned: weights[i] as number })),
      steps: new Map(stepsOf(run).map(({ name, target }) => [name, target])),
      lines,
    })),
  );
  const cure = scents.flatMap((run): [string, number][] =>
    run.notes?.cureDays === undefined ? [] : [[nameOf(run), run.notes.cureDays]],
  );
  return [pots, new Map(cure)];
}

/** What pots hold, candle by candle, and for each scent its ingredients, steps, pots and cure. */
function factsOf(pots: readonly ComparedPot[], cure: ReadonlyMap<string, number>): Map<string, Fact> {
  const facts = new Map<string, Fact>();
  const totals = new Map<string, number>();
  const fills = new Map<string, Set<string>>();
  const add = (key: string, amount: number): string => {
    totals.set(key, (totals.get(key) ?? 0) + amount);
    return shown(totals.get(key) as number);
  };
  for (const { scent, lines } of pots) {
    for (const { vessel, count, fill } of lines) {
      const key = JSON.stringify([sameName(scent), sameName(vessel)]);
      const name = `${vessel}, ${scent}:`;
      facts.set(key, { name, value: add(key, count) });
      fills.set(key, (fills.get(key) ?? new Set()).add(shown(fill)));
      const value = [...(fills.get(key) ?? [])].sort().join(" and ");
      facts.set(`fill ${key}`, { name: `${name} fill`, value, of: key });
    }
  }
  for (const { scent, parts, steps } of pots) {
    const own = (what: string) => `${what} ${sameName(scent)}`;
    const of = own("pots");
    facts.set(of, { name: `${scent}: pots`, value: add(of, 1), of });
    for (const { label, planned } of parts) {
      const key = own(label);
      facts.set(key, { name: `${scent}: ${label}`, value: add(key, planned), of });
    }
    for (const [step, target] of steps)
      if (target !== "") facts.set(own(step), { name: `${scent}: ${step}`, value: target, of });
  }
  for (const [scent, days] of cure) {
    const of = `pots ${sameName(scent)}`;
    facts.set(`cure ${of}`, { name: `${scent}: cure days`, value: plain(days), of });
  }
  return facts;
}

const shown = (weight: number): string => plain(Number(weight.toPrecision(6)));
