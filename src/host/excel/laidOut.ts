import type { Sheet } from "../../sheet/sheet";
import { layOut } from "./layOut";
import { type Step, stepsOf } from "./writeSheet";

/** A sheet and how it is written. */
export interface LaidOut {
  readonly sheet: Sheet;
  readonly steps: readonly Step[];
}

/** Throws what `layOut` and `stepsOf` do. */
export const laidOut = (sheet: Sheet): LaidOut => ({ sheet, steps: stepsOf(sheet, layOut(sheet)) });
