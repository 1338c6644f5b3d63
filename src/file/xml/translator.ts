import { isKnown, prefixOf } from "./namespaces";

export type Attributes = Readonly<Record<string, string | undefined>>;

/** Told what a document holds, in its order. Names begin with the prefixes of namespaces.ts. */
export interface Handler {
  open(name: string, attributes: Attributes): void;
  text(text: string): void;
  close(name: string): void;
}

interface Scope {
  /** Namespaces by the file's own prefix. */
  readonly namespaces: ReadonlyMap<string, string>;
  /** Names of elements that were translated already. */
  readonly names: Map<string, string>;
}

/** No part of a workbook is nested as deep. */
const DEEPEST = 200;
const ALTERNATE = "mc:AlternateContent";

/**
 * Passes a document on with prefixes of ours in place of the file's. Of what stands in several forms for older and
 * younger programs it passes the first form that is known here.
 */
export class Translator {
  readonly #handler: Handler;
  readonly #tooDeep: () => Error;
  readonly #scopes: Scope[] = [
    { namespaces: new Map([["xml", "http://www.w3.org/XML/1998/namespace"]]), names: new Map() },
  ];
  /** The open elements: what they are told as, null for those that are not told; whether they began a scope. */
  readonly #open: { readonly name: string; readonly told: boolean; readonly scoped: boolean }[] = [];
  /** For each open set of alternatives, whether one was taken. */
  readonly #taken: boolean[] = [];
  /** Elements open within what is passed over. */
  #passed = 0;

  constructor(handler: Handler, tooDeep: () => Error) {
    this.#handler = handler;
    this.#tooDeep = tooDeep;
  }

  open(rawName: string, rawAttributes: Record<string, string>): void {
    if (this.#open.length + this.#passed >= DEEPEST) throw this.#tooDeep();
    if (this.#passed > 0) {
      this.#passed++;
      return;
    }
    const scoped = this.#enter(rawAttributes);
    const scope = this.#scopes[this.#scopes.length - 1] as Scope;
    const name = elementName(rawName, scope);
    if (name.startsWith("mc:") && this.#isPassedOver(name, rawAttributes, scope)) {
      if (scoped) this.#scopes.pop();
      this.#passed = 1;
      return;
    }
    const told = !name.startsWith("mc:");
    this.#open.push({ name, told, scoped });
    if (told) this.#handler.open(name, attributeNames(rawAttributes, scope));
  }

  text(text: string): void {
    if (this.#passed === 0) this.#handler.text(text);
  }

  close(): void {
    if (this.#passed > 0) {
      this.#passed--;
      return;
    }
    const closed = this.#open.pop();
    if (!closed) return;
    if (closed.scoped) this.#scopes.pop();
    if (closed.name === ALTERNATE) this.#taken.pop();
    if (closed.told) this.#handler.close(closed.name);
  }

  /** Begins a scope where an element names namespaces. */
  #enter(attributes: Record<string, string>): boolean {
    let namespaces: Map<string, string> | undefined;
    for (const name in attributes) {
      if (!name.startsWith("xmlns") || (name.length > 5 && name[5] !== ":")) continue;
      namespaces ??= new Map(this.#scopes[this.#scopes.length - 1]?.namespaces);
      namespaces.set(name.slice(6), attributes[name] as string);
    }
    if (namespaces) this.#scopes.push({ namespaces, names: new Map() });
    return namespaces !== undefined;
  }

  #isPassedOver(name: string, attributes: Record<string, string>, { namespaces }: Scope): boolean {
    const last = this.#taken.length - 1;
    if (name === ALTERNATE) this.#taken.push(false);
    else if (name === "mc:Choice" || name === "mc:Fallback") {
      const needed = (attributes.Requires ?? "").split(/\s+/).filter(Boolean);
      if (this.#taken[last] || !needed.every((prefix) => isKnown(namespaces.get(prefix) ?? ""))) return true;
      this.#taken[last] = true;
    }
    return false;
  }
}

function elementName(raw: string, { namespaces, names }: Scope): string {
  const known = names.get(raw);
  if (known !== undefined) return known;
  const colon = raw.indexOf(":");
  const name = prefixOf(namespaces.get(raw.slice(0, Math.max(0, colon))) ?? "") + raw.slice(colon + 1);
  names.set(raw, name);
  return name;
}

/** The same object where no name has a prefix, as with nearly all cells. */
function attributeNames(attributes: Record<string, string>, { namespaces }: Scope): Attributes {
  let translated: Record<string, string> | undefined;
  for (const name in attributes) {
    const colon = name.indexOf(":");
    if (colon < 0 || name.startsWith("xmlns:")) continue;
    translated ??= { ...attributes };
    translated[prefixOf(namespaces.get(name.slice(0, colon)) ?? "") + name.slice(colon + 1)] = attributes[
      name
    ] as string;
  }
  return translated ?? attributes;
}
