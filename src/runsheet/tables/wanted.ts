import type { WeightUnit } from "../settings";
import type { Reads } from "./headings/field";
import { headingUnit } from "./headings/headingUnit";
import { saysHours } from "./readings";
import { lengthUnitIn } from "./readLength";

/** The number that a cell is to hold: of which sort, and in which unit. */
export interface Wanted {
  readonly reads: Reads;
  /** Empty where it has none, or where it is not known. */
  readonly unit: string;
  /** Whether the heading names the unit; else it is that of all such numbers. */
  readonly isInHeading: boolean;
}

/** The number that a field wants below a heading. */
export function wantedIn(reads: Reads, heading: string, weights: WeightUnit): Wanted {
  const from = (unit: string | undefined, usual = ""): Wanted => ({
    ...{ reads, unit: unit ?? usual, isInHeading: unit !== undefined },
  });
  if (reads === "weight" || reads === "amount") {
    const unit = headingUnit(heading);
    // What is no weight is spoken of with its heading.
    return unit && !("weight" in unit) ? from("") : from(unit?.weight, weights);
  }
  if (reads === "length") return from(lengthUnitIn(heading));
  if (reads === "days") return from(undefined, "days");
  if (reads === "time") return saysHours(heading) ? from("hours") : from(undefined, "minutes");
  return from("");
}
