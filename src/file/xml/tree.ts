import { scan } from "./scan";
import type { Attributes, Handler } from "./translator";

/** An element with all that is in it. */
export interface Element {
  readonly name: string;
  readonly attributes: Attributes;
  readonly children: readonly Element[];
  /** All texts right in it, joined. */
  readonly text: string;
}

interface Growing extends Element {
  children: Growing[];
  text: string;
}

/** Collects one element after the other. */
export class TreeHandler implements Handler {
  readonly #open: Growing[] = [];
  readonly #done: (tree: Element) => void;

  constructor(done: (tree: Element) => void) {
    this.#done = done;
  }

  get isOpen(): boolean {
    return this.#open.length > 0;
  }

  open(name: string, attributes: Attributes): void {
    const element: Growing = { name, attributes, children: [], text: "" };
    this.#open[this.#open.length - 1]?.children.push(element);
    this.#open.push(element);
  }

  text(text: string): void {
    const element = this.#open[this.#open.length - 1];
    if (element) element.text += text;
  }

  close(): void {
    const element = this.#open.pop();
    if (element && this.#open.length === 0) this.#done(element);
  }
}

/** The root of a part of XML, for parts that are small beside the sheets. */
export function readTree(path: string, bytes: Uint8Array): Element {
  let root: Element | undefined;
  scan(path, bytes, new TreeHandler((tree) => (root = tree)));
  return root as Element;
}

/** The first child of this name. */
export const child = (element: Element | undefined, name: string): Element | undefined =>
  element?.children.find((one) => one.name === name);

/** The children of this name. */
export const children = (element: Element | undefined, name: string): Element[] =>
  element?.children.filter((one) => one.name === name) ?? [];

/** Everything of this name within, at any depth. */
export function* within(element: Element | undefined, name: string): Generator<Element> {
  for (const one of element?.children ?? []) {
    if (one.name === name) yield one;
    yield* within(one, name);
  }
}
