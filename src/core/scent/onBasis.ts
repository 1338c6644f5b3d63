import type { Basis } from "./basis";

/** A share on one basis as the same share on another: scent / wax, and scent / (wax + scent). */
export function onBasis(share: number, from: Basis, to: Basis): number {
  if (from === to) return share;
  return from === "of wax" ? share / (1 + share) : share / (1 - share);
}
