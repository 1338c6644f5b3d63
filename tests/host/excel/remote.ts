/**
 * How office.js lets a program see Excel: through objects that only queue commands. What is read must be loaded
 * and synced before; whatever the stand-in does not know throws.
 */

import { OfficeError } from "./model";

/** What the objects of one kind can do; M is what they stand for in the workbook. */
export interface Kind<M> {
  readonly read?: { readonly [property: string]: (model: M) => unknown };
  readonly write?: { readonly [property: string]: (model: M, value: unknown) => void };
  /** Objects reached by a property. */
  readonly nav?: { readonly [property: string]: (self: Handle<M>) => object };
  readonly call?: { readonly [method: string]: (self: Handle<M>, ...args: never[]) => unknown };
  /** The members of a collection. */
  readonly items?: (self: Handle<M>, model: M) => object[];
}

/** An object as its own kind sees it. */
export interface Handle<M> {
  readonly context: Context;
  /** What it stands for, found when the commands run; null where there is nothing. */
  readonly find: () => M | null;
  /** Queues a command on it. */
  readonly queue: (run: (model: M) => void, ...sent: unknown[]) => void;
}

interface Command {
  /** Does it; what it returns is done when the whole request has succeeded. */
  readonly run: () => (() => void) | undefined;
  readonly bytes: number;
}

const INSIDE = Symbol("inside");

interface Inside {
  deliver(path: readonly string[]): () => void;
}

/** An object of a kind. `optional`: found by an `...OrNullObject` method. */
export function remote<M>(context: Context, kind: Kind<M>, find: () => M | null, optional = false): object {
  const loaded = new Map<string, unknown>();
  const reached = new Map<string, object>();
  let missing: boolean | undefined;

  const need = (): M => {
    const model = find();
    if (model === null) throw new OfficeError("ItemNotFound");
    return model;
  };
  const handle: Handle<M> = {
    context,
    find,
    queue: (run, ...sent) =>
      context.push(() => {
        run(need());
        return undefined;
      }, sent),
  };
  const navigate = (property: string): object => {
    const known = reached.get(property) ?? kind.nav?.[property]?.(handle);
    if (!known) throw new Error(`The stand-in has no ${property}.`);
    reached.set(property, known);
    return known;
  };

  /** Reads a loaded path now and hands it over later. */
  const deliver = ([first = "", ...rest]: readonly string[]): (() => void) => {
    const model = find();
    if (model === null) {
      if (!optional) throw new OfficeError("ItemNotFound");
      return () => {
        missing = true;
      };
    }
    const now = (): void => {
      missing = false;
    };
    if (first === "items" && kind.items) {
      const old = loaded.get("items") as object[] | undefined;
      const fresh = kind.items(handle, model);
      // Several paths of one load fill the same members.
      const items = old && context.loadingNow.has(old) ? old : fresh;
      context.loadingNow.add(items);
      loaded.set("items", items);
      const parts = rest.length > 0 ? items.map((item) => inside(item).deliver(rest)) : [];
      return () => {
        now();
        loaded.set("items", items);
        for (const part of parts) part();
      };
    }
    if (kind.nav?.[first]) {
      const part = inside(navigate(first)).deliver(rest);
      return () => {
        now();
        part();
      };
    }
    const read = kind.read?.[first];
    if (!read || rest.length > 0) throw new OfficeError("InvalidArgument", `Nothing to load: ${first}.`);
    const value = structuredClone(read(model));
    return () => {
      now();
      loaded.set(first, value);
    };
  };

  const self: object = new Proxy(
    {},
    {
      get(_, property) {
        if (property === INSIDE) return { deliver } satisfies Inside;
        if (typeof property === "symbol" || property === "then") return undefined;
        if (property === "context") return context;
        if (property === "isNullObject") {
          if (missing === undefined) throw new OfficeError("PropertyNotLoaded", "isNullObject was read before a sync.");
          return missing;
        }
        if (property === "load") {
          return (paths: string) => {
            if (!paths) throw new Error("Name what to load.");
            context.load(self, paths);
            return self;
          };
        }
        const call = kind.call?.[property] as ((self: Handle<M>, ...args: unknown[]) => unknown) | undefined;
        if (call) return (...args: unknown[]) => call(handle, ...args);
        if (kind.nav?.[property]) return navigate(property);
        if (property === "items" || kind.read?.[property]) {
          if (!context.delivered(self) || !loaded.has(property)) {
            throw new OfficeError("PropertyNotLoaded", `${property} was read before load and sync.`);
          }
          return loaded.get(property);
        }
        throw new Error(`The stand-in has no ${property}.`);
      },
      set(_, property, value) {
        const write = kind.write?.[String(property)];
        if (!write) throw new Error(`The stand-in cannot set ${String(property)}.`);
        handle.queue((model) => write(model, value), property, value);
        return true;
      },
    },
  );
  return self;
}

const inside = (object: object): Inside => (object as { [INSIDE]: Inside })[INSIDE];

export {};
