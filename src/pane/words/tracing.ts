/** The words of tracing lots. */

import { dayText } from "../../runsheet/dayText";
import { sameName } from "../../runsheet/sameName";
import type { Recall, RunContents, RunUse, UnsureUse } from "../../runsheet/stock/trace";
import { amongOthers, doubtLines } from "../../runsheet/stock/traceSheets";

export const TRACING = {
  heading: "Tracing",
  hint: "By the moves and the runs log: where a lot of wax or oil went, or what went into a run. Both can be written on a sheet, to be printed and kept.",
  item: "Item",
  lot: "Lot of the item",
  run: "Lot of a run",
  writeRecall: "Write recall list",
  writeContents: "Write what went in",
  noMoves:
    "This workbook has no table of moves yet, so no lot can be followed. It begins with what came in, under Receiving, or with the next pour that is logged.",
  noItem: (item: string) => `no move names ${item}`,
  whichItem: "write whose lot it is",
  noLot: (item: string, lot: string) => `no move names lot ${lot} of ${item}`,
  noRun: (run: string) => `neither the log nor a move names run ${run}`,
  written: (sheet: string) => `Written: ${sheet}`,
  gone: "The tables have changed: what was found is not there any more. Look again.",
} as const;

const runsIn = (count: number): string => `${count} ${count === 1 ? "run" : "runs"}`;

/** An amount of an item in words: the moves do not say what is weighed and what is counted. */
export type AmountOf = (item: string, amount: number) => string;

/** What is told of a lot, a line each. */
export function recallLines(recall: Recall, amountOf: AmountOf): string[] {
  const { item, lot, cameIn, runs, elsewhere, left, among, unsure } = recall;
  const what = lot === "" ? `${item}, no lot written,` : `${item}, lot ${lot},`;
  const came = cameIn.flatMap(({ date }) => (date === undefined ? [] : [dayText(date)]));
  return [
    came.length > 0 ? `${what} came in on ${came.join(", ")}.` : `${what} never came in by the moves.`,
    runs.length === 0
      ? unsure.length > 0
        ? "No run is known to have taken of it."
        : "No run took of it."
      : `In ${runsIn(runs.length)}: ${runs.map(runLine).join("; ")}.`,
    ...doubtLines([...runs, ...unsure]),
    ...(elsewhere.length > 0 ? [`${elsewhere.length} more rows took of it without naming a run.`] : []),
    ...unsureLines(unsure, runs),
    ...among.map(amongOthers),
    left < 0
      ? `${amountOf(item, -left)} more went out than came in: look at its rows.`
      : `Left on the shelf: ${amountOf(item, left)}.`,
  ];
}

/** Runs that may hold a lot, and candles that may of those that do. */
function unsureLines(unsure: readonly UnsureUse[], runs: readonly RunUse[]): string[] {
  const isKnown = ({ run }: UnsureUse) => runs.some((one) => sameName(one.run) === sameName(run));
  const more = unsure.filter((one) => !isKnown(one));
  const lotless = [...new Set(more.filter(({ lot }) => lot === "").map(({ run }) => run))];
  const several = more.filter(({ lot }) => lot !== "");
  const others = unsure.filter(isKnown);
  return [
    ...(lotless.length > 0
      ? [
          `May be in ${runsIn(lotless.length)}${runs.length > 0 ? " more" : ""}, which ${lotless.length === 1 ? "names" : "name"} no lot of it: ${lotless.join(", ")}.`,
        ]
      : []),
    ...several.map((use) => `May be in ${runLine(use)}, which names ${use.lot}.`),
    ...others.map(
      (use) =>
        `Of ${use.run} these may hold it too, for ${use.lot === "" ? "no lot is written" : `${use.lot} is written`}: ${candlesOf(use)}.`,
    ),
  ];
}

function runLine({ run, candles }: RunUse): string {
  if (candles.length === 0) return `${run} (not in the log: candles not known)`;
  return `${run} (${candlesOf({ candles })})`;
}

const candlesOf = ({ candles }: Pick<RunUse, "candles">): string =>
  candles
    .map(({ candles, vessel, scent }) => `${candles ?? "?"} ${vessel}${scent === "" ? "" : `, ${scent}`}`)
    .join("; ");

/** What is told of a run, a line each. */
export function contentsLines({ run, parts }: RunContents, amountOf: AmountOf): string[] {
  if (parts.length === 0) return [`No move names ${run}: what went into it is not known.`];
  return parts.map(({ item, lot, used }) => {
    return `${item}, ${lot === "" ? "no lot written" : `lot ${lot}`}: ${amountOf(item, used)}`;
  });
}
