/**
 * How office.js lets a program see Excel: through objects that only queue commands. A property can be read when
 * it was loaded and the load was synced; whatever the stand-in does not know throws.
 */

import { OfficeError } from "./model";

/** What the objects of one kind can do; M is what they stand for in the workbook. */
export interface Kind<M> {
  readonly read?: { readonly [property: string]: (model: M) => unknown };
  readonly write?: { readonly [property: string]: (model: M, value: never) => void };
  /** Objects reached by a property. */
  readonly reach?: { readonly [property: string]: (self: Handle<M>) => object };
  readonly call?: { readonly [method: string]: (self: Handle<M>, ...args: never[]) => unknown };
  /** The members of a collection. */
  readonly items?: (self: Handle<M>, model: M) => object[];
}

/** An object as its own kind sees it. */
export interface Handle<M> {
  readonly queue: Queue;
  /** What it stands for, found when the commands run; null where there is nothing. */
  readonly find: () => M | null;
  /** Queues a command on it; `sent` is what the request carries. */
  readonly send: (run: (model: M) => void, ...sent: unknown[]) => void;
}

/** A queued command: run at the sync, it may give work that waits until the whole request has succeeded. */
interface Command {
  readonly run: () => (() => void) | undefined;
  readonly bytes: number;
}

export class Queue {
  private commands: Command[] = [];

  get length(): number {
    return this.commands.length;
  }

  push(run: Command["run"], sent: unknown): void {
    // About what each command costs around what it carries.
    this.commands.push({ run, bytes: 100 + JSON.stringify(sent).length });
  }

  /** Hands over the commands and starts anew. */
  take(): Command[] {
    const taken = this.commands;
    this.commands = [];
    return taken;
  }
}

/** Properties to load: `{ items: { name: {} } }` for `items/name`. */
interface Tree {
  [property: string]: Tree;
}

const FETCH = Symbol("fetch");
type Fetch = (tree: Tree) => () => void;
const FIND = Symbol("find");
const fetchOf = (object: object): Fetch => (object as { [FETCH]: Fetch })[FETCH];

/** How an object finds what it stands for: for methods that are given objects. */
export const finderOf = <M>(object: object): (() => M | null) => (object as { [FIND]: () => M | null })[FIND];

/** An object of a kind. `optional`: it was asked for by an `...OrNullObject` method. */
export function remote<M>(queue: Queue, kind: Kind<M>, find: () => M | null, optional = false): object {
  const loaded = new Map<string, unknown>();
  const reached = new Map<string, object>();

  const handle: Handle<M> = {
    queue,
    find,
    send: (run, ...sent) =>
      queue.push(() => {
        const model = find();
        if (model === null) throw new OfficeError("ItemNotFound");
        run(model);
        return undefined;
      }, sent),
  };
  const reach = (property: string): object => {
    const object = reached.get(property) ?? (kind.reach?.[property]?.(handle) as object);
    reached.set(property, object);
    return object;
  };
  const fetch: Fetch = (tree) => {
    const model = find();
    if (model === null && !optional) throw new OfficeError("ItemNotFound");
    const deliveries = [() => loaded.set("isNullObject", model === null)];
    for (const [property, below] of model === null ? [] : Object.entries(tree)) {
      if (property === "items" && kind.items) {
        const items = kind.items(handle, model as M);
        const parts = items.map((item) => fetchOf(item)(below));
        deliveries.push(() => {
          for (const part of parts) part();
          return loaded.set("items", items);
        });
      } else if (kind.reach?.[property]) {
        const part = fetchOf(reach(property))(below);
        deliveries.push(() => {
          part();
          return loaded;
        });
      } else if (kind.read?.[property]) {
        const value = structuredClone(kind.read[property](model as M));
        deliveries.push(() => loaded.set(property, value));
      } else {
        throw new OfficeError("InvalidArgument", `There is no ${property} to load.`);
      }
    }
    return () => {
      for (const deliver of deliveries) deliver();
    };
  };

  const self: object = new Proxy(
    {},
    {
      get(_, property) {
        if (property === FETCH) return fetch;
        if (property === FIND) return find;
        if (typeof property === "symbol" || property === "then") return undefined;
        if (property === "load") {
          return (paths: string) => {
            queue.push(() => fetch(treeOf(paths)), paths);
            return self;
          };
        }
        const call = kind.call?.[property] as ((self: Handle<M>, ...args: unknown[]) => unknown) | undefined;
        if (call) return (...args: unknown[]) => call(handle, ...args);
        if (kind.reach?.[property]) return reach(property);
        if (kind.read?.[property] || (property === "items" && kind.items) || property === "isNullObject") {
          if (loaded.has(property)) return loaded.get(property);
          throw new OfficeError("PropertyNotLoaded", `${property} was read without load and sync.`);
        }
        throw new Error(`The stand-in has no ${property}.`);
      },
      set(_, property, value) {
        const write = kind.write?.[String(property)] as ((model: M, value: unknown) => void) | undefined;
        if (!write) throw new Error(`The stand-in cannot set ${String(property)}.`);
        handle.send((model) => write(model, value), property, value);
        return true;
      },
    },
  );
  return self;
}

function treeOf(paths: string): Tree {
  const tree: Tree = {};
  for (const path of paths.split(",")) {
    let at = tree;
    for (const step of path.trim().split("/")) {
      at[step] ??= {};
      at = at[step];
    }
  }
  return tree;
}
