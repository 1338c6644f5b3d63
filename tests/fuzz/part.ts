import type fc from "fast-check";

/** Something that is asked of generated cases by itself. */
export interface Part<T = unknown> {
  readonly name: string;
  readonly cases: fc.Arbitrary<T>;
  /** Throws what does not hold. */
  holds(one: T): Promise<void>;
}
