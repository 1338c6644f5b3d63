import type { Basis } from "../../core/scent/basis";
import { percent } from "../percent";

/** A load with its basis. */
export const loadText = ({ load, basis }: { readonly load: number; readonly basis: Basis }): string =>
  `${percent(load, 8)} % ${basis}`;
