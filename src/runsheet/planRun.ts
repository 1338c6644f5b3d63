import { potPlan } from "../core/batch/potPlan";
import { plain } from "../core/check/plain";
import type { Basis } from "../core/scent/basis";
import { loadFrom } from "../core/scent/loadFrom";
import { recipeSplit } from "../core/scent/recipeSplit";
import { sum } from "../core/statistics/sum";
import type { PourRow, Problem } from "./readRows";
import type { Settings } from "./settings";

/** Candles of one kind in one pot. */
export interface PotLine {
  readonly vessel: string;
  readonly count: number;
  /** Fill of one candle, and of all of them. */
  readonly fill: number;
  readonly poured: number;
}

/** One pot: what to weigh, in whole scale divisions, and what is poured from it. */
export interface PlannedPot {
  readonly lines: readonly PotLine[];
  readonly melted: number;
  readonly wax: number;
  readonly scent: number;
  /** The load after rounding, on the basis of the scent. */
  readonly trueLoad: number;
}

/** All pots of one scent at one load. */
export interface ScentRun {
  /** Empty when the candles have no scent. */
  readonly scent: string;
  readonly load: number;
  readonly basis: Basis;
  readonly pots: readonly PlannedPot[];
  /** No plan needs fewer pots than this. */
  readonly bound: number;
}

export interface Totals {
  readonly candles: number;
  readonly pots: number;
  readonly wax: number;
  readonly scent: number;
  readonly melted: number;
  readonly poured: number;
}

export interface RunPlan {
  readonly scents: readonly ScentRun[];
  readonly totals: Totals;
}

/**
 * Groups the rows by scent, load and basis, packs each group into the fewest pots and weighs every pot out.
 * Problems: candles that no pot holds (they stop), and what deserves a look.
 */
export function planRun(rows: readonly PourRow[], settings: Settings): { plan: RunPlan; problems: Problem[] } {
  const problems: Problem[] = [...lookTwice(rows)];
  const scents = groupsOf(rows).map((group) => {
    const [first] = group as [PourRow];
    const orders = group.map(({ vessel, fill, quantity }) => ({ vessel, fill, quantity }));
    const { pots, refused, bound } = potPlan(orders, settings.potCapacity, settings.loss);
    for (const { order, fault } of refused) {
      problems.push({ row: (group[order] as PourRow).row, role: "fill", text: fault.message, stops: true });
    }
    const planned = pots.map((pot): PlannedPot => {
      const lines = pot.rows.map(({ order, vessel, count }) => {
        const { fill } = group[order] as PourRow;
        return { vessel, count, fill, poured: count * fill };
      });
      const [wax, scent] = recipeSplit(
        pot.weight,
        [
          { share: 1, basis: "part" },
          { share: first.load, basis: first.basis },
        ],
        settings.division,
      ) as [number, number];
      return { lines, melted: wax + scent, wax, scent, trueLoad: wax > 0 ? loadFrom(wax, scent, first.basis) : 0 };
    });
    problems.push(...tooSmall(group, planned, settings));
    if (pots.length > bound) {
      problems.push({
        text: `${nameOf(first)}: ${pots.length} pots; as few as ${bound} could not be ruled out`,
        stops: false,
      });
    }
    return { scent: first.scent, load: first.load, basis: first.basis, pots: planned, bound };
  });
  return { plan: { scents, totals: totalsOf(scents) }, problems };
}

/** The scent's name in front of a person. */
export function nameOf({ scent }: { readonly scent: string }): string {
  return scent === "" ? "Unscented" : scent;
}

/** Sums over the pots of one or several scents. */
export function totalsOf(scents: readonly ScentRun[]): Totals {
  const pots = scents.flatMap((scent) => scent.pots);
  const lines = pots.flatMap((pot) => pot.lines);
  return {
    candles: sum(lines.map(({ count }) => count)),
    pots: pots.length,
    wax: sum(pots.map(({ wax }) => wax)),
    scent: sum(pots.map(({ scent }) => scent)),
    melted: sum(pots.map(({ melted }) => melted)),
    poured: sum(lines.map(({ poured }) => poured)),
  };
}

/** Rows that share a pot: the same scent at the same load, in the order they first appear. */
function groupsOf(rows: readonly PourRow[]): PourRow[][] {
  const groups = new Map<string, PourRow[]>();
  for (const row of rows) {
    const key = JSON.stringify([row.scent.toLowerCase(), row.load, row.load === 0 ? "" : row.basis]);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return [...groups.values()];
}

function lookTwice(rows: readonly PourRow[]): Problem[] {
  const seen = new Map<string, PourRow>();
  const loads = new Map<string, PourRow>();
  const problems: Problem[] = [];
  for (const row of rows) {
    const key = JSON.stringify([row.vessel.toLowerCase(), row.scent.toLowerCase(), row.load, row.basis]);
    if (seen.has(key)) {
      problems.push({
        row: row.row,
        role: "vessel",
        text: `${row.vessel} stands twice with the same scent; both rows are poured`,
        stops: false,
      });
    }
    seen.set(key, row);
    const scent = row.scent.toLowerCase();
    const other = loads.get(scent) ?? row;
    loads.set(scent, other);
    if (scent !== "" && (other.load !== row.load || other.basis !== row.basis)) {
      problems.push({
        row: row.row,
        role: "load",
        text: `${row.scent} is here at ${plain(row.load * 100)} % ${row.basis} and elsewhere at ${plain(other.load * 100)} % ${other.basis}; they are melted apart`,
        stops: false,
      });
    }
  }
  return problems;
}

/** Under twenty divisions half a division is more than 2.5 % of the weight. NIST Handbook 44, from memory. */
const FEWEST_DIVISIONS = 20;

function tooSmall(group: readonly PourRow[], pots: readonly PlannedPot[], settings: Settings): Problem[] {
  const [first] = group as [PourRow];
  if (first.load === 0) return [];
  const least = Math.min(...pots.map(({ scent }) => scent));
  if (least >= FEWEST_DIVISIONS * settings.division) return [];
  return [
    {
      row: first.row,
      role: "load",
      text: `${nameOf(first)}: ${plain(least)} ${settings.unit} of scent is under ${FEWEST_DIVISIONS} scale divisions; a finer scale weighs it truer`,
      stops: false,
    },
  ];
}
