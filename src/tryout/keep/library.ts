/** What a maker can do with her kept workbooks, besides working in the one that is open. */

import { generateRandomId } from "@univerjs/core";
import { freeName } from "./freeName";
import type { Keeping } from "./keeping";
import type { Listed } from "./store";

/** How a workbook may be treated now. */
export type Openness = "closed" | "here" | "in another tab";

export interface Entry {
  readonly id: string;
  readonly name: string;
  readonly openness: Openness;
  /** In bytes: its cells and the file that it came from. */
  readonly size: number;
  /** Newest first; the first one is the workbook as it is. */
  readonly states: readonly { readonly number: number; readonly time: number }[];
}

const LONGEST_NAME = 100;

export class Library {
  #removed: readonly Entry[] = [];

  constructor(private readonly keeping: Keeping) {}

  async entries(): Promise<Entry[]> {
    await this.keeping.settle();
    const [all, taken] = await Promise.all([this.keeping.store.list(), this.keeping.claims.taken()]);
    return all.map(({ id, name, states, fileSize }) => ({
      id,
      name,
      openness: id === this.keeping.shownId ? "here" : taken.has(id) ? "in another tab" : "closed",
      size: fileSize + Object.values(states[0]?.pieces ?? {}).reduce((sum, [, , length]) => sum + length, 0),
      states: states.map(({ number, time }) => ({ number, time })),
    }));
  }

  async open(id: string): Promise<void> {
    this.#refuseLoss();
    await this.keeping.hooks?.open(await this.keeping.open(id));
  }

  /** Gives the name that it has now: another one's name gets a number behind it. */
  async rename(id: string, wished: string): Promise<string> {
    const tidy = wished.replace(/\s+/g, " ").trim().slice(0, LONGEST_NAME);
    if (!tidy) throw new Error("A workbook needs a name. It keeps the one it had.");
    const others = (await this.keeping.store.list()).filter((one) => one.id !== id);
    const name = freeName(
      tidy,
      others.map((one) => one.name),
    );
    await this.keeping.store.note(id, { name });
    if (id === this.keeping.shownId) {
      this.keeping.renamed(name);
      this.keeping.hooks?.renamed(name);
    }
    return name;
  }

  /** Gives the name of the copy. */
  async duplicate(id: string): Promise<string> {
    await this.keeping.settle();
    const all = await this.keeping.store.list();
    const { states, opened: _, ...workbook } = found(all, id);
    const name = freeName(
      workbook.name,
      all.map((one) => one.name),
    );
    const [last] = states;
    if (last) await this.keeping.store.copy(last, { ...workbook, id: generateRandomId(), name, opened: Date.now() });
    return name;
  }

  /** What can be put back. */
  get removed(): readonly Entry[] {
    return this.#removed;
  }

  /** Until the page is left it can be put back. */
  async remove(entry: Entry): Promise<void> {
    const { id } = entry;
    await this.#refuseElsewhere(id);
    const isOpen = id === this.keeping.shownId;
    if (isOpen) this.#refuseLoss();
    if (isOpen) await this.keeping.stop();
    await this.keeping.store.note(id, { removed: Date.now() });
    this.#removed = [...this.#removed, entry];
    if (isOpen) this.keeping.hooks?.closed();
  }

  async putBack(id: string): Promise<void> {
    this.#removed = this.#removed.filter((one) => one.id !== id);
    if (await this.keeping.store.note(id, { removed: undefined })) return;
    throw new Error("The browser needed the room: this workbook cannot be put back any more.");
  }

  /** Opens an earlier state as a new one: the state before stays to go back to. */
  async goBack(id: string, number: number): Promise<void> {
    this.#refuseLoss();
    await this.#refuseElsewhere(id);
    if (id === this.keeping.shownId) await this.keeping.stop();
    const state = found(await this.keeping.store.list(), id).states.find((one) => one.number === number);
    if (!state) throw new Error("This state is not there any more. Choose another one.");
    await this.keeping.store.goBack(state);
    await this.open(id);
  }

  /** With the open workbook what could not be kept of it would go. */
  #refuseLoss(): void {
    if (this.keeping.mayLeave()) return;
    throw new Error("The last changes of the open workbook are not kept. Save it as a file first.");
  }

  async #refuseElsewhere(id: string): Promise<void> {
    if (id === this.keeping.shownId || !(await this.keeping.claims.taken()).has(id)) return;
    throw new Error("This workbook is open in another tab. Close it there first.");
  }
}

function found(all: readonly Listed[], id: string): Listed {
  const one = all.find((listed) => listed.id === id);
  if (!one) throw new Error("This workbook is not here any more. It may have been removed in another tab.");
  return one;
}
