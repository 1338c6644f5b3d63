import { plain } from "../core/check/plain";
import { nameOf, type RunPlan } from "./planRun";
import type { PouredRun } from "./readBack";
import { sameName } from "./tableReader";

/** What differs between a run sheet as it stands and a plan made now, a sentence for each candle and for the pots. */
export function compareRuns(old: PouredRun, plan: RunPlan): string[] {
  const before = gather(old.pots.flatMap(({ scent, lines }) => lines.map((line) => ({ ...line, scent }))));
  const after = gather(
    plan.scents.flatMap((run) =>
      run.pots.flatMap(({ lines }) => lines.map((line) => ({ ...line, scent: nameOf(run) }))),
    ),
  );
  const changes: string[] = [];
  for (const [key, { name, count, fill }] of after) {
    const was = before.get(key);
    if (!was) changes.push(`${name}: new, ${count}`);
    else if (was.count !== count) changes.push(`${name}: ${was.count} before, ${count} now`);
    if (was && fill !== undefined && was.fill !== undefined && Math.abs(was.fill - fill) > 1e-9 * fill) {
      changes.push(`${name}: fill ${shown(was.fill)} before, ${shown(fill)} now`);
    }
  }
  for (const [key, { name, count }] of before) if (!after.has(key)) changes.push(`${name}: left out, was ${count}`);
  const pots = plan.totals.pots;
  if (old.pots.length !== pots) changes.push(`Pots: ${old.pots.length} before, ${pots} now`);
  const weights = [
    ["Wax", old.pots.reduce((sum, pot) => sum + pot.wax.planned, 0), plan.totals.wax],
    ["Scent", old.pots.reduce((sum, pot) => sum + pot.scentWeight.planned, 0), plan.totals.scent],
  ] as const;
  for (const [name, was, now] of weights) {
    if (Math.abs(was - now) > 1e-9 * Math.max(was, now))
      changes.push(`${name}: ${shown(was)} before, ${shown(now)} now`);
  }
  return changes;
}

const shown = (weight: number): string => plain(Number(weight.toPrecision(6)));

interface Kind {
  readonly name: string;
  readonly count: number;
  /** Undefined where rows of the same name have different fills. */
  readonly fill: number | undefined;
}

function gather(
  lines: readonly { readonly vessel: string; readonly scent: string; readonly count: number; readonly fill: number }[],
): Map<string, Kind> {
  const found = new Map<string, Kind>();
  for (const { vessel, scent, count, fill } of lines) {
    const key = JSON.stringify([sameName(vessel), sameName(scent)]);
    const same = found.get(key);
    found.set(key, {
      name: `${vessel}, ${scent}`,
      count: (same?.count ?? 0) + count,
      fill: same === undefined || same.fill === fill ? fill : undefined,
    });
  }
  return found;
}
