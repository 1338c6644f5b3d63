import { oneOf } from "../check/oneOf";

/** What a load is a share of: the wax alone (the trade's usual), or wax and scent together. */
export type Basis = "of wax" | "of total";

const BASES: readonly Basis[] = ["of wax", "of total"];

/** The basis a text names; `of wax` when left out. A basis is never guessed. */
export function basisOf(name: string, text = "of wax"): Basis {
  return oneOf(name, text, BASES);
}
