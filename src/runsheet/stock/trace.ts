import { sameName } from "../sameName";
import type { Move, Moves } from "../tables/moves";
import { remembered } from "./ledger";
import { fromMillionths, toMillionths } from "./millionths";
import { isAmong } from "./severalLots";
import { holding, type TraceDoubt, takingPots } from "./tracePots";

/** Candles as the log names them: of one vessel and scent, from one run. */
export interface RunCandles {
  /** The lot of the run. */
  readonly run: string;
  readonly date: number | undefined;
  readonly scent: string;
  readonly vessel: string;
  /** The pots that they were poured from; undefined where the log does not say. */
  readonly pots: readonly string[] | undefined;
  readonly candles: number | undefined;
  readonly good: number | undefined;
}

/** A run that took of a lot. */
export interface RunUse {
  readonly run: string;
  readonly date: number | undefined;
  /** What corrections gave back is not in it. As the table of moves counts. */
  readonly used: number;
  /** Those of the pots that took of it, as far as these are known; none where the log does not know the run. */
  readonly candles: readonly RunCandles[];
  /** Whether candles may be among them that hold nothing of it, and why. */
  readonly doubt: TraceDoubt | undefined;
}

/** Where a lot of an item went: for a recall. */
export interface Recall {
  readonly item: string;
  readonly lot: string;
  readonly cameIn: readonly Move[];
  /** The oldest first. */
  readonly runs: readonly RunUse[];
  /** What went out and into no run. */
  readonly elsewhere: readonly Move[];
  readonly left: number;
  /** Lots of the item that may be several in one, this one among them: `S-1, S-2`. */
  readonly among: readonly string[];
  /**
   * Runs that may hold it: they took of the item and name no lot, one of those, or a lot that had less than was taken.
   * Without candles that do hold it.
   */
  readonly unsure: readonly UnsureUse[];
}

/** A run that may have taken of a lot, and the lot that it names; empty where it names none. */
export interface UnsureUse extends RunUse {
  readonly lot: string;
}

/** What went into a run. */
export interface RunPart {
  readonly item: string;
  /** Empty where none is written. */
  readonly lot: string;
  readonly used: number;
  /** The day the lot first came in. */
  readonly cameIn: number | undefined;
  readonly bestBefore: number | undefined;
}
export interface RunContents {
  readonly run: string;
  readonly candles: readonly RunCandles[];
  readonly parts: readonly RunPart[];
}

/** The moves and the log, sorted once for both ways of a trace. */
export class Trace {
  private readonly ofItem = new Map<string, Map<string, Move[]>>();
  private readonly ofRun = new Map<string, Move[]>();
  private readonly candles = new Map<string, RunCandles[]>();
  private readonly key = remembered(sameName);

  constructor({ rows }: Pick<Moves, "rows">, log: readonly RunCandles[]) {
    for (const move of rows) {
      const lots = this.ofItem.get(this.key(move.item)) ?? new Map<string, Move[]>();
      this.ofItem.set(this.key(move.item), lots);
      put(lots, this.key(move.lot), move);
      if (move.run !== "") put(this.ofRun, this.key(move.run), move);
    }
    for (const one of log) put(this.candles, this.key(one.run), one);
  }

  /** From a lot of an item to the runs and candles that hold it; undefined where no move names it, not even among others. */
  recall(item: string, lot: string): Recall | undefined {
    const lots = this.ofItem.get(this.key(item));
    const moves = lots?.get(this.key(lot)) ?? [];
    const among = [...(lots ?? [])].flatMap(([key, [move]]) => (move && isAmong(lot, key) ? [move] : []));
    const first = moves[0] ?? among[0];
    if (!lots || !first) return undefined;
    const isLotless = this.key(lot) === "";
    const runs = this.runsOf(moves);
    const mayBe = isLotless ? [] : ["", ...among.map((move) => move.lot), ...overdrawnBeside(lots, this.key(lot))];
    return {
      item: first.item,
      lot: moves[0]?.lot ?? lot.trim(),
      cameIn: moves.filter(({ run, change }) => run === "" && change.count > 0),
      runs,
      elsewhere: moves.filter(({ run, change }) => run === "" && change.count < 0),
      left: sumOf(moves),
      among: among.map((move) => move.lot),
      unsure: mayBe.flatMap((text) =>
        this.runsOf(lots.get(this.key(text)) ?? []).flatMap((use) =>
          beyond(use, runs).map((one) => ({ ...one, lot: text })),
        ),
      ),
    };
  }

  /** From the lot of a run to what went in; undefined where neither a move nor the log names it. */
  contents(run: string): RunContents | undefined {
    const [moves, candles] = [this.ofRun.get(this.key(run)) ?? [], this.candles.get(this.key(run)) ?? []];
    if (moves.length + candles.length === 0) return undefined;
    const parts = new Map<string, Move[]>();
    for (const move of moves) put(parts, JSON.stringify([this.key(move.item), this.key(move.lot)]), move);
    return {
      run: moves[0]?.run ?? candles[0]?.run ?? run,
      candles,
      parts: [...parts.values()].flatMap((own): RunPart[] => {
        const [{ item, lot }] = own as [Move];
        const all = this.ofItem.get(this.key(item))?.get(this.key(lot)) ?? [];
        const received = all.filter((move) => move.run === "" && move.change.count > 0);
        const used = 0 - sumOf(own);
        if (used === 0) return [];
        const [cameIn, bestBefore] = [earliest(received), lastBestBefore(all)];
        return [{ item, lot, used, cameIn, bestBefore }];
      }),
    };
  }

  private runsOf(moves: readonly Move[]): RunUse[] {
    const runs = new Map<string, Move[]>();
    for (const move of moves) if (move.run !== "") put(runs, this.key(move.run), move);
    const uses = [...runs].map(([key, own]): RunUse => {
      const all = this.candles.get(key) ?? [];
      const date = all[0]?.date ?? earliest(own);
      return { run: own[0]?.run ?? "", date, used: 0 - sumOf(own), ...holding(all, takingPots(own)) };
    });
    // A run whose use was taken back as a whole took nothing.
    return uses.filter(({ used }) => used !== 0).sort((a, b) => (a.date ?? 0) - (b.date ?? 0));
  }
}

/** Other lots of an item of which more went out than came in: some of that was another lot, and may have been this one. */
const overdrawnBeside = (lots: ReadonlyMap<string, readonly Move[]>, key: string): string[] =>
  [...lots].flatMap(([other, moves]) =>
    other !== "" && other !== key && !isAmong(key, other) && sumOf(moves) < 0 ? (moves[0]?.lot ?? []) : [],
  );

/** What a run may hold beside the candles that are known to; none where these are all of it. */
function beyond(use: RunUse, sure: readonly RunUse[]): RunUse[] {
  const same = sure.filter(({ run }) => sameName(run) === sameName(use.run));
  if (same.length === 0) return [use];
  const candles = use.candles.filter((one) => !same.some((other) => other.candles.includes(one)));
  return candles.length > 0 ? [{ ...use, candles }] : [];
}

function put<T>(map: Map<string, T[]>, key: string, value: T): void {
  const all = map.get(key);
  if (all) all.push(value);
  else map.set(key, [value]);
}

const sumOf = (moves: readonly Move[]): number =>
  fromMillionths(moves.reduce((total, { change }) => total + toMillionths(change.count), 0));

const earliest = (moves: readonly Move[]): number | undefined =>
  moves.reduce<number | undefined>(
    (first, { date }) => (date !== undefined && (first === undefined || date < first) ? date : first),
    undefined,
  );

/** The best before that was written last. */
const lastBestBefore = (moves: readonly Move[]): number | undefined =>
  moves.reduce<Move | undefined>(
    (last, move) =>
      move.bestBefore !== undefined && (move.date ?? 0) >= (last?.date ?? Number.NEGATIVE_INFINITY) ? move : last,
    undefined,
  )?.bestBefore;
