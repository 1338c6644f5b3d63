/** What holds of an item by number, as vessels are counted, or by weight. A table need not say which it is. */
export interface ByUse<T> {
  readonly count: T;
  readonly weight: T;
}

export type Use = keyof ByUse<unknown>;
