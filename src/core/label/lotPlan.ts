/** How a lot is checked. */
export interface LotPlan {
  /** Grams by which a candle may be short before it counts as short. */
  readonly allowed: number;
  /** Grams by which none may be short. */
  readonly most: number;
  /** How sure it must be that the mean is short, of both sides of Student's t; 0 where the mean itself decides. */
  readonly sure: number;
  /** Weigh so many: pass with up to `accept` short ones, fail from `reject` on, between them weigh the next stage. */
  readonly stages: readonly { readonly weigh: number; readonly accept: number; readonly reject: number }[];
}
