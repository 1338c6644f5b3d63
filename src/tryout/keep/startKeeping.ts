import type { Keep, MountWorkbooks } from "../parts";
import { Keeping } from "./keeping";
import { mountWorkbooks } from "./mountWorkbooks";
import type { Store } from "./store";

/** The browser's own storage, and the list of what is in it. */
export function startKeeping(store: Store): { readonly keep: Keep; readonly mountWorkbooks: MountWorkbooks } {
  const keeping = new Keeping(store);
  return { keep: keeping, mountWorkbooks: (element, hooks) => mountWorkbooks(keeping, element, hooks) };
}
