import type { Basis } from "../../core/scent/basis";
import { loadText } from "../plan/loadText";
import type { BurnTest } from "../tables/burnTests";

/** What the candles of a series have in common, in words. */
export function seriesName(
  { vessel, wax, scent, load, basis, cureDays, product }: Omit<BurnTest, "wrong" | "row" | "test" | "wick" | "width">,
  usual: Basis,
): string {
  return [
    vessel || "no vessel named",
    wax || "the usual wax",
    [scent || "no scent", load ? loadText({ load, basis: basis ?? usual }) : ""].filter(Boolean).join(" "),
    ...(cureDays === undefined ? [] : [`cured ${cureDays} ${cureDays === 1 ? "day" : "days"}`]),
    ...(product === "container" ? [] : [product]),
  ].join(", ");
}
