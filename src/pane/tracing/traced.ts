import { runCandles } from "../../runsheet/record/runCandles";
import { sameName } from "../../runsheet/sameName";
import type { WeightUnit } from "../../runsheet/settings";
import { type Ledger, ledgerOf } from "../../runsheet/stock/ledger";
import { type Recall, type RunContents, Trace } from "../../runsheet/stock/trace";
import { movesOn } from "../actions/onRecord";
import { type ByHand, logOn } from "../givenTables";
import { amountsOf } from "../receiving/amountsOf";
import { namedItems } from "../receiving/namedItems";
import type { ReadTables } from "../state/useTables";
import { type AmountOf, TRACING } from "../words/tracing";

/** The record of the workbook, sorted so that lots can be followed. */
export interface Traced {
  readonly trace: Trace;
  readonly ledger: Ledger;
  /** The unit of the weights in the moves. */
  readonly unit: WeightUnit;
  readonly amountOf: AmountOf;
  /** The lots of runs, the newest first. */
  readonly runs: readonly string[];
}

/** What is looked for, as it is typed. */
export interface Sought {
  readonly item: string;
  readonly lot: string;
  readonly run: string;
}

/** Rejects a record that cannot be followed, in words. */
export function tracedOn(read: ReadTables, byHand: ByHand, unit: WeightUnit): Traced {
  const moves = movesOn(read, byHand, unit);
  if (!moves) throw new Error(TRACING.noMoves);
  const candles = runCandles(logOn(read, byHand));
  const named = [...candles.map(({ run }) => run), ...moves.read.rows.map(({ run }) => run)];
  const runs = [...new Map(named.filter((run) => run !== "").map((run) => [sameName(run), run])).values()];
  return {
    trace: new Trace(moves.read, candles),
    ledger: ledgerOf(moves.read),
    unit: moves.read.unit,
    amountOf: amountsOf(namedItems(read, byHand, unit), moves.read.unit),
    runs: runs.sort((a, b) => b.localeCompare(a, "en", { numeric: true })),
  };
}

/** The names of the items that have lots, and of the lots of the one that is sought. */
export function namesFor(
  { ledger }: Pick<Traced, "ledger">,
  { item }: Pick<Sought, "item">,
): { items: string[]; lots: string[] } {
  const all = [...ledger.items.values()];
  const lots = ledger.items.get(sameName(item))?.lots ?? [];
  return {
    items: all.map((one) => one.item).sort((a, b) => a.localeCompare(b, "en")),
    lots: lots.map(({ lot }) => lot).filter((lot) => lot !== ""),
  };
}

/** What is found, or what to type. Nothing while nothing is sought. */
export interface Found {
  readonly recall?: Recall;
  readonly contents?: RunContents;
  readonly wrong: Readonly<Partial<Record<keyof Sought, string>>>;
}

export function find({ trace, ledger }: Traced, sought: Sought): Found {
  const [item, lot, run] = [sought.item, sought.lot, sought.run].map((text) => text.trim()) as [string, string, string];
  const isKnown = item === "" || ledger.items.has(sameName(item));
  // Where no lot of an item was ever written, all of it is followed as one.
  const isAsked = item !== "" && (lot !== "" || namesFor({ ledger }, { item }).lots.length === 0);
  const recall = isAsked ? trace.recall(item, lot) : undefined;
  const contents = run !== "" ? trace.contents(run) : undefined;
  return {
    ...(recall && { recall }),
    ...(contents && { contents }),
    wrong: {
      ...(!isKnown && { item: TRACING.noItem(item) }),
      ...(item === "" && lot !== "" && { item: TRACING.whichItem }),
      ...(isKnown && item !== "" && lot !== "" && !recall && { lot: TRACING.noLot(item, lot) }),
      ...(run !== "" && !contents && { run: TRACING.noRun(run) }),
    },
  };
}
