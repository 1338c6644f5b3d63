/** The words of runs that are written and not logged yet. */

import { dayText } from "../../runsheet/dayText";
import { type OpenRunBeside, usesWords } from "../../runsheet/plan/openRuns";
import type { WeightUnit } from "../../runsheet/settings";

export const OPEN_RUNS = {
  heading: "Also planned",
  hint: "Run sheets that are written and not logged. What those that count will take is not free for this batch.",
  says: ({ lot, date, state, ...uses }: OpenRunBeside, unit: WeightUnit) => {
    const run = `Run ${lot}, ${dayText(date)}`;
    if (state === "of this batch") {
      return `${run}: has the candles of this batch, so it is taken as its sheet and does not count on top.`;
    }
    return state === "counted" ? `${run} counts: ${usesWords(uses, unit)}.` : `${run} is left out.`;
  },
  press: ({ lot, state }: Pick<OpenRunBeside, "lot" | "state">) =>
    state === "counted" ? `Leave ${lot} out` : state === "left out" ? `Count ${lot}` : `Count ${lot} on top`,
} as const;
