/** Keeps what is done in the open workbook: soon after each edit, and at once when the page goes or is out of sight. */

import type { Spreadsheet } from "../../host/univer/start";
import { Collector, OtherWorkbook } from "./collector";
import { type KeepFault, keepFault } from "./keepFault";
import type { Slot } from "./slots";
import type { NewState, State, Store } from "./store";

/** Edits that come closer than this are kept together. */
const SOON = 300;

/** After a failure it is tried again with the next edit, and without one after this. */
const AGAIN = 15_000;

/** So many states are put down before those that are not worth going back to are thrown away. */
const TIDY = 8;

export interface Recorded {
  readonly workbook: string;
  /** How it is kept; null for a workbook that is not. */
  readonly kept: { readonly state: State; readonly pieces: ReadonlyMap<Slot, string> } | null;
  /** The greatest number that one of its states has. */
  readonly lastNumber: number;
  /** What puts the workbook itself down, with its first state and whenever the storage was lost. */
  readonly first: () => NonNullable<NewState["first"]>;
  /** Whether it is kept before it was changed. */
  readonly atOnce: boolean;
}

export type Recording =
  | { readonly is: "untouched" | "waiting" }
  | { readonly is: "kept"; readonly time: number }
  | { readonly is: "failed"; readonly fault: KeepFault };

export class Recorder {
  readonly #collector: Collector;
  readonly #leave: (() => void)[] = [];
  #epoch: number;
  #number: number;
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** How long the timer waits in all. */
  #wait = 0;
  #saving: Promise<void> | null = null;
  #flushed: Promise<void> = Promise.resolve();
  /** Whether there is something that no state holds or is about to hold. */
  #isDue: boolean;
  /** Whether there is something of the maker's doing that is nowhere but here. */
  #isOnlyHere = false;
  #recording: Recording;

  constructor(
    private readonly store: Pick<Store, "save" | "tidy" | "purge" | "epoch">,
    private readonly source: Pick<Spreadsheet, "snapshot" | "onDataChange" | "finishTyping">,
    private readonly of: Recorded,
    private readonly onRecording: () => void,
  ) {
    this.#collector = new Collector(source);
    if (of.kept) this.#collector.stands(of.kept.state, of.kept.pieces);
    this.#epoch = store.epoch;
    this.#number = of.lastNumber;
    this.#isDue = of.atOnce;
    this.#recording = of.kept ? { is: "kept", time: of.kept.state.time } : { is: "untouched" };
    this.#leave.push(
      source.onDataChange((change) => {
        this.#collector.note(change);
        if (change.isEdit) this.#edited();
      }),
      listen(document, "visibilitychange", () => document.visibilityState === "hidden" && this.#outOfSight()),
      listen(document, "freeze", () => this.leave()),
      listen(window, "pagehide", () => this.leave()),
    );
    if (of.atOnce) this.#soon(0);
  }

  get recording(): Recording {
    return this.#recording;
  }

  /** Whether work would be lost with the page. */
  get isAtRisk(): boolean {
    return this.#isOnlyHere && this.#recording.is === "failed";
  }

  /** Notes that all of it was saved as a file. */
  savedAsFile(): void {
    this.#isOnlyHere = false;
  }

  /** Keeps at once all that was done, also what is being typed, as the page goes. */
  leave(): void {
    // Its cell has it when this returns.
    void this.source.finishTyping();
    this.flush();
  }

  /** Phones and tablets end a page that is out of sight without a word. Elsewhere it can be typed to its end later. */
  #outOfSight(): void {
    if (matchMedia("(pointer: coarse)").matches) this.leave();
    else this.flush();
  }

  /** Keeps at once what is not kept yet: all of it is on its way when this returns. */
  flush(): void {
    if (!this.#isDue) return;
    this.#stopTimer();
    this.#forgetLost();
    try {
      this.#flushed = this.#put(this.#collector.takeNow());
    } catch (fault) {
      this.#fail(fault);
    }
  }

  /** Keeps what is not kept yet, if it can. */
  async settle(): Promise<void> {
    await this.#saving;
    await this.#flushed;
    this.#stopTimer();
    if (this.#isDue) await this.#save();
  }

  /** Keeps what is not kept yet, if it can, and follows the workbook no longer. */
  async stop(): Promise<void> {
    this.drop();
    await this.settle();
  }

  /** Follows the workbook no longer. */
  drop(): void {
    for (const leave of this.#leave.splice(0)) leave();
    this.#stopTimer();
  }

  #edited(): void {
    this.#isDue = true;
    this.#isOnlyHere = true;
    if (this.#recording.is !== "failed") this.#say({ is: "waiting" });
    this.#soon(SOON);
  }

  /** The first of some edits sets the time, so that none waits longer; an edit does not wait for a late new try. */
  #soon(after: number): void {
    if (this.#timer !== undefined && this.#wait <= after) return;
    this.#stopTimer();
    this.#wait = after;
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      void this.#save();
    }, after);
  }

  #stopTimer(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
  }

  /** What is edited while this goes on is kept by the next one. */
  #save(): Promise<void> {
    this.#forgetLost();
    this.#saving ??= this.#collector
      .takeInTurns()
      .then((slots) => this.#put(slots))
      .catch((fault) => this.#fail(fault))
      .finally(() => {
        this.#saving = null;
        if (this.#isDue && this.#leave.length > 0) this.#soon(this.#recording.is === "failed" ? AGAIN : SOON);
      });
    return this.#saving;
  }

  /** The browser may have thrown away all that was kept. */
  #forgetLost(): void {
    if (this.store.epoch !== this.#epoch) this.#collector.forget();
    this.#epoch = this.store.epoch;
  }

  async #put(slots: readonly Slot[]): Promise<void> {
    this.#isDue = false;
    try {
      await this.#putDown(slots).catch(async (fault) => {
        // What was removed may be put back as long as there is room for it.
        if (keepFault(fault).reason !== "full") throw fault;
        await this.store.purge();
        await this.#putDown(slots);
      });
    } catch (fault) {
      this.#fail(fault);
    }
  }

  #fail(fault: unknown): void {
    if (fault instanceof OtherWorkbook) {
      this.#isDue = false;
      this.drop();
      return;
    }
    this.#isDue = true;
    this.#say({ is: "failed", fault: keepFault(fault) });
  }

  async #putDown(slots: readonly Slot[]): Promise<void> {
    const { base } = this.#collector;
    const changed = new Map(this.#collector.pieces);
    if (base && changed.size === 0 && slots.length === Object.keys(base.pieces).length) {
      this.#say({ is: "kept", time: base.time });
      return;
    }
    const number = ++this.#number;
    const first = base ? undefined : this.of.first();
    const { state, done } = this.store.save({ workbook: this.of.workbook, number, base, slots, changed, first });
    await done;
    this.#collector.stands(state, changed);
    if (!this.#isDue) {
      this.#isOnlyHere = false;
      this.#say({ is: "kept", time: state.time });
    }
    if (number % TIDY === 0) await this.store.tidy(this.of.workbook).catch(() => undefined);
  }

  #say(recording: Recording): void {
    this.#recording = recording;
    this.onRecording();
  }
}

function listen(target: EventTarget, event: string, callback: () => void): () => void {
  target.addEventListener(event, callback);
  return () => target.removeEventListener(event, callback);
}
