import type { Filling } from "./filling";
import type { TightFilling } from "./tightFillings";

/** The fillings that hold candles of one kind, and how many each of them takes. */
interface Holding {
  readonly fillings: number[];
  readonly needs: number[];
}

/** Candles that are poured by fillings of a list: knows at any time which of them the candles left allow, the open ones. */
export class Cover {
  readonly #list: readonly TightFilling[];
  readonly #left: number[];
  readonly #holding: readonly Holding[];
  /** For each filling the kinds that too few are left of; for each kind the fillings without such. */
  readonly #lacking: Int32Array;
  readonly #ways: Int32Array;

  constructor(list: readonly TightFilling[], counts: readonly number[]) {
    this.#list = list;
    this.#left = [...counts];
    this.#holding = counts.map(() => ({ fillings: [], needs: [] }));
    this.#lacking = new Int32Array(list.length);
    this.#ways = new Int32Array(counts.length);
    for (const [f, { kinds, numbers }] of list.entries()) {
      for (const [at, kind] of kinds.entries()) {
        const { fillings, needs } = this.#holding[kind] as Holding;
        fillings.push(f);
        needs.push(numbers[at] as number);
        this.#ways[kind] = (this.#ways[kind] as number) + 1;
      }
    }
  }

  /** The kind of candles left that the fewest fillings are open for; undefined where no candle is left. */
  hardest(): number | undefined {
    let [hardest, fewest] = [undefined as number | undefined, Infinity];
    for (let k = 0; k < this.#ways.length; k++) {
      const ways = this.#ways[k] as number;
      if (ways < fewest && (this.#left[k] as number) > 0) [hardest, fewest] = [k, ways];
    }
    return hardest;
  }

  /** The fillings with candles of a kind that the candles left allow. */
  open(kind: number): number[] {
    return (this.#holding[kind]?.fillings ?? []).filter((f) => this.#lacking[f] === 0);
  }

  /** How many fillings are open for the kinds of this one: few for one that takes what is hard to place. */
  waysOf(f: number): number {
    return (this.#list[f] as TightFilling).kinds.reduce((total, kind) => total + (this.#ways[kind] as number), 0);
  }

  /** Pours one pot of an open filling; gives about the steps it took. */
  pour(f: number): number {
    return this.#change(f, -1);
  }

  takeBack(f: number): void {
    this.#change(f, 1);
  }

  #change(f: number, by: number): number {
    const { kinds, numbers } = this.#list[f] as TightFilling;
    let steps = this.#ways.length / 4;
    for (let at = 0; at < kinds.length; at++) {
      const kind = kinds[at] as number;
      const before = this.#left[kind] as number;
      const after = before + by * (numbers[at] as number);
      this.#left[kind] = after;
      const { fillings, needs } = this.#holding[kind] as Holding;
      steps += fillings.length;
      for (let i = 0; i < fillings.length; i++) {
        const isEnough = (needs[i] as number) <= after;
        if (isEnough !== (needs[i] as number) <= before) this.#mark(fillings[i] as number, isEnough);
      }
    }
    return steps;
  }

  /** Of one of a filling's kinds there is enough again, or no longer. */
  #mark(f: number, isEnough: boolean): void {
    const lacking = (this.#lacking[f] as number) + (isEnough ? -1 : 1);
    this.#lacking[f] = lacking;
    if (lacking > 1 || (lacking === 1 && isEnough)) return;
    const { kinds } = this.#list[f] as TightFilling;
    for (let at = 0; at < kinds.length; at++) {
      const kind = kinds[at] as number;
      this.#ways[kind] = (this.#ways[kind] as number) + (isEnough ? 1 : -1);
    }
  }

  /** How many of each kind a pot of this filling holds. */
  filling(f: number): Filling {
    const counts = this.#left.map(() => 0);
    const { kinds, numbers } = this.#list[f] as TightFilling;
    for (const [at, kind] of kinds.entries()) counts[kind] = numbers[at] as number;
    return counts;
  }
}
