import { isoOfDay } from "../../core/label/isoDay";
import { tidy } from "../../core/tidy";
import type { Cell, Look, Sheet } from "../../sheet/sheet";
import type { Settings, WeightUnit } from "../settings";
import type { Recall, RunCandles, RunContents, RunUse, UnsureUse } from "./trace";

/** How a trace is put down. */
export interface TraceSettings extends Pick<Settings, "paper"> {
  /** The unit of the weights in the table of moves. */
  readonly unit: WeightUnit;
  /** The day it is made. */
  readonly today: number;
}

/** A cell: text, which stays text whatever it begins with, a number, or a day. */
type Value = string | number | { readonly day: number | undefined } | undefined;
interface Row {
  readonly values: readonly Value[];
  readonly look?: Look;
}

const WIDTHS = [20, 12, 20, 20, 10, 10, 18] as const;

/** A recall list: the runs and candles that hold a lot of an item, on a sheet to be printed. */
export function recallSheet(recall: Recall, settings: TraceSettings): Sheet {
  const { item, lot, cameIn, runs, elsewhere, left, among, unsure } = recall;
  const amount = amountHeading(settings);
  const candles = runs.flatMap((run) => run.candles);
  return sheetOf(`Recall ${item} ${lot}`, settings, [
    { values: [`Recall: ${item}, ${lotOf(lot)}`], look: "title" },
    madeOf(settings),
    GAP,
    { values: ["Came in", "Date", "Best before", "Note", "", "", amount], look: "heading" },
    ...cameIn.map(({ date, bestBefore, note, change }) => ({
      values: ["", { day: date }, { day: bestBefore }, note, "", "", change.count],
    })),
    ...(cameIn.length === 0 ? [alert("No move says that it came in.")] : []),
    ...among.map((other) => alert(amongOthers(other))),
    GAP,
    candlesHeading("Candles that hold it", amount),
    ...runs.flatMap(runRows),
    { values: [totalWord(runs), "", "", "", ...sums(candles), totalOf(runs)], look: "total" },
    ...doubtLines(runs).map((line) => ({ values: [line], look: "note" }) as const),
    ...unsureRows(unsure, amount),
    ...elsewhereRows(elsewhere, amount),
    GAP,
    { values: ["Left on the shelf", "", "", "", "", "", left], look: "total" },
    ...(left < 0 && lot !== "" ? [alert(WENT_BEYOND)] : []),
  ]);
}

/** What went into the candles of a run. */
export function contentsSheet({ run, candles, parts }: RunContents, settings: TraceSettings): Sheet {
  return sheetOf(`Made of ${run}`, settings, [
    { values: [`What went into run ${run}`], look: "title" },
    madeOf(settings),
    GAP,
    candlesHeading("Candles", ""),
    ...candles.map((one) => candleRow(one, undefined)),
    ...(candles.length === 0 ? [alert(NOT_LOGGED)] : []),
    GAP,
    { values: ["Item", "Came in", "Lot", "Best before", "", "", amountHeading(settings)], look: "heading" },
    ...parts.map(({ item, lot, used, cameIn, bestBefore }) => ({
      values: [item, { day: cameIn }, lot || "no lot written", { day: bestBefore }, "", "", used],
    })),
    ...(parts.length === 0 ? [alert("No move names this run: what went into it is not known.")] : []),
  ]);
}

/** What is to be said of a lot that may be several, of which this is one. */
export const amongOthers = (lot: string): string =>
  `${lot} stands in the moves as one lot, and this may be one of them: trace that too.`;

/** What is to be said of runs whose candles are named though some may hold nothing of a lot. */
export function doubtLines(runs: readonly RunUse[]): string[] {
  const say = (doubt: RunUse["doubt"], words: (named: string) => string) => {
    const named = runs.filter((one) => one.doubt === doubt).map(({ run }) => run);
    return named.length > 0 ? [words(named.join(", "))] : [];
  };
  return [
    ...say(
      "no pots",
      (named) =>
        `All candles of ${named} are listed: the moves do not say which pots took of it. The run sheet says which lot went into which pot.`,
    ),
    ...say(
      "pots together",
      (named) =>
        `Some of the candles of ${named} are from pots that took another lot: the log counts them together. The run sheet says which.`,
    ),
  ];
}

/** More went out than came in: then some of it was another lot, and is in none of the lists of that one. */
const WENT_BEYOND =
  "More went out than came in of this lot: a receipt is missing, or candles listed here hold another lot. Look at its rows in the moves.";

const GAP: Row = { values: [] };
const NOT_LOGGED = "The log does not know this run: its candles are not known.";

const amountHeading = ({ unit }: TraceSettings): string => `${unit}, or pieces`;
const lotOf = (lot: string): string => (lot === "" ? "what has no lot" : `lot ${lot}`);
const alert = (text: string): Row => ({ values: [text], look: "alert" });
const madeOf = ({ today }: TraceSettings): Row => ({
  values: [`By the table of moves and the runs log as they were on ${isoOfDay(today)}`],
  look: "note",
});
const candlesHeading = (first: string, last: string): Row => ({
  values: [first, "Poured", "Scent", "Vessel", "Candles", "Good", last],
  look: "heading",
});

function runRows({ run, date, used, candles }: RunUse): Row[] {
  if (candles.length === 0) return [{ values: [run, { day: date }, "", "", "", "", used] }, alert(NOT_LOGGED)];
  return candles.map((one, i) => candleRow(one, i === 0 ? used : undefined));
}

const candleRow = ({ run, date, scent, vessel, candles, good }: RunCandles, used: number | undefined): Row => ({
  values: [run, { day: date }, scent, vessel, candles, good, used],
});

const sums = (candles: readonly RunCandles[]): Value[] => [
  candles.reduce((total, one) => total + (one.candles ?? 0), 0),
  // Candles that nobody counted are not known to be good.
  candles.some(({ good }) => good === undefined) ? undefined : candles.reduce((total, { good = 0 }) => total + good, 0),
];
/** A run that the log does not know has candles, too. */
const totalWord = (runs: readonly RunUse[]): string =>
  runs.some(({ candles }) => candles.length === 0) ? "Total, as far as known" : "Total";
const totalOf = (runs: readonly RunUse[]): number => tidy(runs.reduce((total, { used }) => total + used, 0));

function unsureRows(unsure: readonly UnsureUse[], amount: string): Row[] {
  if (unsure.length === 0) return [];
  return [
    GAP,
    alert("These took of the item and name no lot, several as one, or one that had less: they may hold it too."),
    candlesHeading("May hold it", amount),
    ...unsure.flatMap(runRows),
    ...doubtLines(unsure).map((line) => ({ values: [line], look: "note" }) as const),
  ];
}

function elsewhereRows(moves: Recall["elsewhere"], amount: string): Row[] {
  if (moves.length === 0) return [];
  return [
    GAP,
    { values: ["Went elsewhere", "Date", "", "Note", "", "", amount], look: "heading" },
    ...moves.map(({ date, note, change }) => ({ values: ["", { day: date }, "", note, "", "", -change.count] })),
  ];
}

/** Rows that have one text go over the whole width; those with a look have it in each cell. */
function sheetOf(name: string, { paper }: TraceSettings, rows: readonly Row[]): Sheet {
  const cells = rows.flatMap(({ values, look }, row): Cell[] => {
    const [first] = values;
    if (values.length === 1 && typeof first === "string") {
      return [{ row, column: 0, content: { text: first }, across: WIDTHS.length, ...(look && { look }) }];
    }
    return values.flatMap((value, column) => cellOf(value, { row, column, ...(look && { look }) }));
  });
  return { name, widths: WIDTHS, cells, print: { paper, landscape: true, repeatRows: [0, 0] } };
}

function cellOf(value: Value, place: Pick<Cell, "row" | "column" | "look">): Cell[] {
  if (value === undefined || value === "") return place.look ? [place] : [];
  if (typeof value === "string") return [{ ...place, content: { text: value } }];
  if (typeof value === "number") {
    return [{ ...place, content: { number: value }, format: Number.isInteger(value) ? "#,##0" : "#,##0.0##" }];
  }
  const { day } = value;
  return day === undefined
    ? cellOf(undefined, place)
    : [{ ...place, content: { number: day }, format: "yyyy-mm-dd", align: "left" }];
}
