/** How a lot is checked. */
export interface LotPlan {
  /** Grams by which a candle may be short before it counts as short. */
  readonly allowed: number;
  /** Grams by which none may be short. */
  readonly most: number;
  /**
   * What the mean may be short by: `free`, as much as each candle; `whole`, nothing, since every candle is weighed;
   * `sample`, what chance may make of so many.
   */
  readonly mean: "free" | "whole" | "sample";
  /** How sure it must be that the mean of a sample is short, of both sides of Student's t. */
  readonly sure: number;
  /** Weigh so many: pass with up to `accept` short ones, fail from `reject` on, between them weigh the next stage. */
  readonly stages: readonly { readonly weigh: number; readonly accept: number; readonly reject: number }[];
}
