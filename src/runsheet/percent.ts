import { plain } from "../core/check/plain";

/** A share as a percentage of so many digits. */
export const percent = (share: number, digits = 4): string => plain(Number((share * 100).toPrecision(digits)));
