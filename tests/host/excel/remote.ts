/** The objects of a workbook as requests reach them: by property and by method, each of a kind that says what it can do. */

import { OfficeError } from "./model";

/** What the objects of one kind can do; M is what they stand for in the workbook. */
export interface Kind<M> {
  readonly read?: { readonly [property: string]: (model: M) => unknown };
  readonly write?: { readonly [property: string]: (model: M, value: never) => void };
  /** Objects reached by a property. */
  readonly reach?: { readonly [property: string]: (self: Handle<M>) => object };
  /** What a method leads to or gives. */
  readonly call?: { readonly [method: string]: (self: Handle<M>, ...args: never[]) => unknown };
  /** The members of a collection. */
  readonly items?: (self: Handle<M>, model: M) => object[];
}

/** An object as its own kind sees it. */
export interface Handle<M> {
  /** What it stands for; null where there is nothing. */
  readonly find: () => M | null;
  /** Does something with what it stands for; refuses where there is nothing. */
  readonly send: <T>(work: (model: M) => T) => T;
}

/** Properties to read: `{ worksheet: { name: {} } }` for `worksheet/name`. */
export interface Tree {
  [property: string]: Tree;
}

/** An object of a kind, as a request sees it. */
export class Remote {
  private readonly handle: Handle<unknown>;

  constructor(
    private readonly kind: Kind<unknown>,
    readonly find: () => unknown,
    private readonly isOptional: boolean,
  ) {
    this.handle = {
      find,
      send: (work) => {
        const model = find();
        if (model === null) throw new OfficeError("ItemNotFound");
        return work(model);
      },
    };
  }

  /** Whether it is missing, which only what an `...OrNullObject` method gave may be. */
  isNull(): boolean {
    const isNull = this.find() === null;
    if (isNull && !this.isOptional) throw new OfficeError("ItemNotFound");
    return isNull;
  }

  /** The same object, which stays what it is now. */
  pinned(): Remote {
    const model = this.find();
    return new Remote(this.kind, () => model, this.isOptional);
  }

  reach(property: string): Remote {
    const reach = this.kind.reach?.[property];
    if (!reach) throw new Error(`The stand-in does not reach ${property}.`);
    return reach(this.handle) as Remote;
  }

  call(method: string, args: readonly unknown[]): unknown {
    if (method === "getItemAt" && this.kind.items) return this.members()[Number(args[0])];
    const call = this.kind.call?.[method] as ((self: Handle<unknown>, ...args: unknown[]) => unknown) | undefined;
    if (!call) throw new Error(`The stand-in has no method ${method}.`);
    return call(this.handle, ...args);
  }

  write(property: string, value: unknown): void {
    const write = this.kind.write?.[property] as ((model: unknown, value: unknown) => void) | undefined;
    if (!write) throw new Error(`The stand-in cannot set ${property}.`);
    this.handle.send((model) => write(model, value));
  }

  /** Its properties as the answer to a request has them; null where it is missing. */
  read(tree: Tree): object | null {
    if (this.isNull()) return null;
    const entries = Object.entries(tree);
    const isOwn = ([property]: [string, Tree]): boolean => !this.kind.items || property in (this.kind.read ?? {});
    const own = entries.filter(isOwn).map(([property, below]) => [pascal(property), this.value(property, below)]);
    if (!this.kind.items) return Object.fromEntries([...this.id(), ...own]);
    // Of a collection the properties that are not its own are those of its members.
    const ofMembers = Object.fromEntries(entries.filter((entry) => !isOwn(entry)));
    return { ...Object.fromEntries(own), _Items: this.members().map((member) => member.read(ofMembers)) };
  }

  /** What the answer always tells of an object that has an id. */
  id(): [string, unknown][] {
    const id = this.kind.read?.id;
    return id ? [["Id", this.handle.send(id)]] : [];
  }

  private value(property: string, below: Tree): unknown {
    if (this.kind.reach?.[property]) return this.reach(property).read(below);
    const read = this.kind.read?.[property];
    if (!read) throw new Error(`There is no ${property} to load.`);
    return structuredClone(this.handle.send(read));
  }

  private members(): Remote[] {
    return this.handle.send((model) => this.kind.items?.(this.handle, model) as Remote[]);
  }
}

/** An object of a kind. `isOptional`: it was asked for by an `...OrNullObject` method. */
export const remote = <M>(kind: Kind<M>, find: () => M | null, isOptional = false): object =>
  new Remote(kind as Kind<unknown>, find, isOptional);

/** How an object finds what it stands for: for methods that are given objects. */
export const finderOf = <M>(object: object): (() => M | null) => (object as Remote).find as () => M | null;

/** A name as requests have it. */
const pascal = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
