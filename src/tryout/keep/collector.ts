/** Knows which pieces of the open workbook are not kept yet. */

import type { Change } from "../../host/univer/changes";
import type { Spreadsheet } from "../../host/univer/start";
import { isAmong, isOfBook, pieceOf, type Slot, slotsOf, slotsOfChange } from "./slots";
import type { State } from "./store";

/** Nothing is worked at for longer than this before the page may answer. */
const TURN = 12;

/** The spreadsheet shows another workbook now. */
export class OtherWorkbook extends Error {}

export class Collector {
  /** Slots whose pieces may have changed since they were taken. */
  #due = new Set<Slot>();
  /** Pieces that are not certainly put down. */
  readonly pieces = new Map<Slot, string>();
  /** The small pieces that were put down last, to see which ones have changed. */
  readonly #book = new Map<Slot, string>();
  /** The last state that certainly stands. */
  base: State | null = null;
  /** How many changes there were. */
  #changes = 0;
  readonly #unit: string;

  constructor(private readonly source: Pick<Spreadsheet, "snapshot">) {
    this.#unit = source.snapshot().id;
  }

  note(change: Change): void {
    this.#changes++;
    for (const slot of slotsOfChange(change)) this.#due.add(slot);
  }

  /** Notes that a state stands that was made of the base and these pieces. */
  stands(state: State, pieces: ReadonlyMap<Slot, string>): void {
    if (this.base && this.base.number > state.number) return;
    this.base = state;
    for (const [slot, piece] of pieces) {
      if (this.pieces.get(slot) === piece) this.pieces.delete(slot);
      if (isOfBook(slot)) this.#book.set(slot, piece);
    }
  }

  /** From now on nothing is taken to stand. */
  forget(): void {
    this.base = null;
    this.#book.clear();
  }

  /** Takes all pieces that are due, in turns between which the page answers, and gives the slots of the workbook. */
  async takeInTurns(): Promise<Slot[]> {
    const steps = this.#take();
    let began = performance.now();
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) return step.value;
      if (performance.now() - began < TURN) continue;
      await new Promise((next) => setTimeout(next));
      began = performance.now();
    }
  }

  /** The same at once. */
  takeNow(): Slot[] {
    const steps = this.#take();
    let step = steps.next();
    while (!step.done) step = steps.next();
    return step.value;
  }

  /** What changes between two steps is taken once more: a state is never of two moments. */
  *#take(): Generator<undefined, Slot[]> {
    for (;;) {
      const changes = this.#changes;
      const data = this.source.snapshot();
      if (data.id !== this.#unit) throw new OtherWorkbook();
      const slots = slotsOf(data);
      this.#due = new Set(slots.filter((slot) => isOfBook(slot) || isAmong(this.#due, slot) || !this.#isKnown(slot)));
      for (const slot of this.#due) {
        this.#due.delete(slot);
        const piece = pieceOf(data, slot);
        if (this.#book.get(slot) === piece) this.pieces.delete(slot);
        else this.pieces.set(slot, piece);
        yield;
        if (changes !== this.#changes) break;
      }
      if (changes === this.#changes) return slots;
    }
  }

  #isKnown(slot: Slot): boolean {
    return this.pieces.has(slot) || this.base?.pieces[slot] !== undefined;
  }
}
