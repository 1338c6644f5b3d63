/** Workbooks in the browser's own storage: for each some states, made of pieces that the states share. */

import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from "idb";
import { keepFault } from "./keepFault";
import type { Slot } from "./slots";
import { superfluous } from "./thin";

/** The number of the layout below. With another layout comes another number, and a step in `upgrade`. */
const LAYOUT = 1;

export interface Workbook {
  readonly id: string;
  readonly name: string;
  /** When it was opened last, as all times here in milliseconds. */
  readonly opened: number;
  /** Of a sample's copy, which sample. */
  readonly sample?: string;
  /** How many bytes the file has that it came from or was saved as. */
  readonly fileSize: number;
  /** When it was removed: until the page is left it can be put back. */
  readonly removed?: number;
}

export interface State {
  readonly workbook: string;
  /** Later states have greater numbers. */
  readonly number: number;
  readonly time: number;
  /** Whether it is one to go back to, such as the last one before an earlier one was taken. */
  readonly isMarked?: boolean;
  /** The piece that each slot has: the number of the state that brought it, its place there, its length. */
  readonly pieces: Readonly<Record<Slot, readonly [number: number, place: number, length: number]>>;
}

export interface FileOf {
  readonly bytes?: Uint8Array;
  readonly handle?: FileSystemFileHandle;
}

export interface Listed extends Workbook {
  /** Newest first; the first one is the workbook as it is. */
  readonly states: readonly State[];
}

interface Layout extends DBSchema {
  workbooks: { key: string; value: Workbook };
  states: { key: [workbook: string, number: number]; value: State };
  pieces: { key: [workbook: string, number: number, place: number]; value: string };
  files: { key: string; value: FileOf };
}

type Database = IDBPDatabase<Layout>;
type Stores = ("workbooks" | "states" | "pieces" | "files")[];
type Writing = IDBPTransaction<Layout, Stores, "readwrite">;

/** A new state of a workbook. */
export interface NewState {
  readonly workbook: string;
  readonly number: number;
  /** The state that the pieces which did not change are taken from; null for none. */
  readonly base: State | null;
  /** All slots that the workbook fills. */
  readonly slots: readonly Slot[];
  /** The pieces that are not those of the base. */
  readonly changed: ReadonlyMap<Slot, string>;
  /** With its first state a workbook is put down itself. */
  readonly first?: { readonly workbook: Workbook; readonly file: FileOf | null };
}

export class Store {
  #database: Promise<Database> | null = null;
  #open: Database | null = null;
  /** Grows when the browser may have thrown away what was kept. */
  epoch = 0;

  constructor(readonly name = "pourwright") {}

  /** Rejects with a KeepFault where the browser keeps nothing. */
  ready(): Promise<Database> {
    this.#database ??= this.#connect().catch((fault) => {
      this.#database = null;
      throw keepFault(fault);
    });
    return this.#database;
  }

  async #connect(): Promise<Database> {
    const forget = () => {
      this.epoch++;
      this.#open = null;
      this.#database = null;
    };
    const database = await openDB<Layout>(this.name, LAYOUT, {
      upgrade(database, before) {
        if (before < 1) {
          database.createObjectStore("workbooks", { keyPath: "id" });
          database.createObjectStore("states", { keyPath: ["workbook", "number"] });
          database.createObjectStore("pieces");
          database.createObjectStore("files");
        }
      },
      // A page of a newer layout waits for this.
      blocking: () => {
        this.#open?.close();
        forget();
      },
      terminated: forget,
    });
    this.#open = database;
    return database;
  }

  /**
   * Puts down a state, wholly or not at all, and gives it before it stands, so that the next one can build on it.
   * Where the storage is open already all of it is under way when this returns: the page may be closing.
   */
  save(wanted: NewState): { readonly state: State; readonly done: Promise<void> } {
    const changed = wanted.slots.filter((slot) => wanted.changed.has(slot));
    const place = new Map(changed.map((slot, i) => [slot, i]));
    const pieces: Record<Slot, readonly [number, number, number]> = {};
    for (const slot of wanted.slots) {
      const i = place.get(slot);
      const old = wanted.base?.pieces[slot];
      if (i !== undefined) pieces[slot] = [wanted.number, i, wanted.changed.get(slot)?.length ?? 0];
      else if (old) pieces[slot] = old;
      else throw new Error(`nothing to put into ${slot}`);
    }
    const state: State = { workbook: wanted.workbook, number: wanted.number, time: Date.now(), pieces };
    const write = (database: Database) =>
      writing(database, async (all) => {
        const puts: Promise<unknown>[] = [];
        // First: of all that is put only a file's handle may be refused at once, with nothing under way yet.
        if (wanted.first?.file) puts.push(all.objectStore("files").put(wanted.first.file, state.workbook));
        if (wanted.first) puts.push(all.objectStore("workbooks").put(wanted.first.workbook));
        // No state is written over: a number that is taken means that another tab was here.
        puts.push(all.objectStore("states").add(state));
        for (const [slot, i] of place) {
          const piece = wanted.changed.get(slot) ?? "";
          puts.push(all.objectStore("pieces").put(piece, [state.workbook, state.number, i]));
        }
        all.commit();
        await Promise.all(puts);
      });
    return { state, done: this.#open ? write(this.#open) : this.ready().then(write) };
  }

  /** The workbooks that were not removed, those opened last first. */
  async list(): Promise<Listed[]> {
    const database = await this.ready();
    const [workbooks, states] = await Promise.all([database.getAll("workbooks"), database.getAll("states")]);
    const of = new Map<string, State[]>();
    for (const state of states) of.set(state.workbook, [state, ...(of.get(state.workbook) ?? [])]);
    return workbooks
      .filter(({ removed }) => removed === undefined)
      .map((workbook) => ({ ...workbook, states: of.get(workbook.id) ?? [] }))
      .filter(({ states }) => states.length > 0)
      .sort((a, b) => b.opened - a.opened);
  }

  /** The pieces of a state; null when one is missing or was cut. */
  async read({ workbook, pieces }: State): Promise<Map<Slot, string> | null> {
    const all = (await this.ready()).transaction("pieces").store;
    const read = await Promise.all(
      Object.entries(pieces).map(async ([slot, [number, place, length]]) => {
        const piece = await all.get([workbook, number, place]);
        return piece?.length === length ? ([slot, piece] as const) : null;
      }),
    );
    return read.every((one) => one !== null) ? new Map(read) : null;
  }

  async file(workbook: string): Promise<FileOf | null> {
    return (await (await this.ready()).get("files", workbook)) ?? null;
  }

  /** Changes what is noted of a workbook; gives false where it is gone. */
  async note(workbook: string, changes: Partial<Omit<Workbook, "id">>): Promise<boolean> {
    let isThere = false;
    await writing(await this.ready(), async (all) => {
      const before = await all.objectStore("workbooks").get(workbook);
      isThere = before !== undefined;
      if (before) await all.objectStore("workbooks").put({ ...before, ...changes });
    });
    return isThere;
  }

  async setFile(workbook: string, file: FileOf): Promise<void> {
    await writing(await this.ready(), async (all) => {
      const before = await all.objectStore("workbooks").get(workbook);
      if (!before) return;
      await all.objectStore("workbooks").put({ ...before, fileSize: file.bytes?.length ?? 0 });
      await all.objectStore("files").put(file, workbook);
    });
  }

  /** Makes the state of one workbook the first one of another, with the file that it came from. */
  async copy(state: State, to: Workbook): Promise<void> {
    const pieces = await this.read(state);
    if (!pieces) throw new Error("The workbook cannot be read any more, so it cannot be duplicated.");
    const slots = [...pieces.keys()];
    const first = { workbook: to, file: await this.file(state.workbook) };
    await this.save({ workbook: to.id, number: 1, base: null, slots, changed: pieces, first }).done;
  }

  /** Makes an earlier state the newest one, and marks the one before as one to go back to. */
  async goBack({ workbook, pieces }: State): Promise<void> {
    await writing(await this.ready(), async (all) => {
      const states = all.objectStore("states");
      const last = (await states.openCursor(ofWorkbook(workbook), "prev"))?.value;
      if (!last) return;
      await states.put({ ...last, isMarked: true });
      await states.add({ workbook, number: last.number + 1, time: Date.now(), pieces });
    });
  }

  /** Throws away the states that are not worth going back to, and the pieces that only they have. */
  async tidy(workbook: string, choose = superfluous<State>): Promise<void> {
    await writing(await this.ready(), async (all) => {
      const states = await all.objectStore("states").getAll(ofWorkbook(workbook));
      const away = new Set(choose(states, Date.now()));
      if (away.size === 0) return;
      const kept = states.filter((state) => !away.has(state));
      const used = new Set(kept.flatMap((state) => Object.values(state.pieces).map(pieceKey)));
      const unused = [...away]
        .flatMap(({ pieces }) => Object.values(pieces))
        .filter((piece) => !used.has(pieceKey(piece)));
      await Promise.all([
        ...[...away].map(({ number }) => all.objectStore("states").delete([workbook, number])),
        ...unused.map(([number, place]) => all.objectStore("pieces").delete([workbook, number, place])),
      ]);
    });
  }

  /** Throws away for good what was removed. */
  async purge(): Promise<void> {
    await writing(await this.ready(), async (all) => {
      for (const { id, removed } of await all.objectStore("workbooks").getAll()) {
        if (removed === undefined) continue;
        await all.objectStore("workbooks").delete(id);
        await all.objectStore("files").delete(id);
        await all.objectStore("states").delete(ofWorkbook(id));
        await all.objectStore("pieces").delete(ofWorkbook(id));
      }
    });
  }
}

/** All in one go or nothing of it; on the disk when it resolves. Rejects with a KeepFault. */
async function writing(database: Database, write: (all: Writing) => Promise<void>): Promise<void> {
  try {
    const all = database.transaction(["workbooks", "states", "pieces", "files"], "readwrite", { durability: "strict" });
    const ended = all.done.then(
      () => null,
      (fault: unknown) => fault,
    );
    const failed = await write(all).then(
      () => null,
      (fault: unknown) => {
        abort(all);
        return fault;
      },
    );
    // The step that failed says more than the whole that failed with it.
    const fault = failed ?? (await ended);
    if (fault) throw fault;
  } catch (fault) {
    throw keepFault(fault);
  }
}

/** One that has ended already cannot be given up any more, and need not be. */
function abort(all: Writing): void {
  try {
    all.abort();
  } catch {}
}

/** A list is greater than any number. */
const ofWorkbook = (id: string) => IDBKeyRange.bound([id], [id, []]);

const pieceKey = ([number, place]: readonly [number, number, number]) => `${number}/${place}`;
