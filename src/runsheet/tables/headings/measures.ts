import type { Reads } from "./field";
import type { HeadingUnit } from "./headingUnit";
import type { HeadingWords } from "./headingWords";

/** How far the unit of a heading lets it be such a measure: 1, less where it is to be asked about, 0 where it does not. */
export function measureFits(reads: Reads, unit: HeadingUnit | undefined, { words }: HeadingWords): number {
  const isPercent = words.includes("%");
  const is = unit && ("weight" in unit ? "weight" : "other" in unit ? unit.other : undefined);
  if (reads === "parts" || reads === "money" || reads === "words") return 1;
  if (reads === "weight") return isPercent ? 0 : is === undefined || is === "weight" ? 1 : 0.25;
  if (reads === "amount") return isPercent || is === "a temperature" || is === "a time" ? 0 : 1;
  if (reads === "days" && unit && "other" in unit && !/^d(ays?)?\.?$/i.test(unit.words)) return 0;
  if (reads === "time" || reads === "days") return is === undefined || is === "a time" ? 1 : 0;
  if (reads === "temperature") return is === undefined || is === "a temperature" ? 1 : 0;
  if (reads === "length") return isPercent || (is !== undefined && is !== "a length") ? 0 : 1;
  if (reads === "date") return isPercent || is !== undefined ? 0 : 1;
  if (reads === "factor") return is === "weight" ? 0 : 1;
  if (is === "a temperature" || is === "a time" || is === "a length") return 0;
  return is === "weight" || is === "a volume" || (reads === "count" && (isPercent || is !== undefined)) ? 0 : 1;
}
