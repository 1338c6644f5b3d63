import type { WeightUnit } from "../settings";
import {
  endOf,
  firstOf,
  flameOf,
  hoursOf,
  notesOf,
  poolOf,
  rateOf,
  riseOf,
  rowOf,
  scoresOf,
  sootOf,
  wickOf,
  widthOf,
} from "./candleFigures";
import {
  type CandleCells,
  type CandleReadings,
  candleReadings,
  LOOK_COLUMNS,
  LOOK_FIELDS,
  type LookField,
  looksAt,
  placedAt,
  refOf,
} from "./candleReadings";
import { isToLookAt, stateOf, wordsOf } from "./candleWords";
import { isFirstOf } from "./firstOfName";
import type { SeenColumns } from "./seenColumns";
import { ownRows } from "./seenHead";
import {
  ACROSS,
  type Blocks,
  CANDLE,
  cellAt,
  HOURS,
  headRef,
  MORE_CANDLES,
  MOST_LOOKS,
  RENAMED,
  rangeAt,
  type SheetCells,
} from "./seenPlaces";
import { pictureFor } from "./seenWickRows";

const right = { align: "right" } as const;
const center = { align: "center" } as const;

/** The figures by candle, and what the readings of each say. */
export function candleRows(at: SheetCells, blocks: Blocks, columns: SeenColumns, unit: WeightUnit): void {
  const { candles, words } = blocks;
  at.headings(candles.heading, [
    ...["By candle", "Wick", "Hours burnt", `Rate (${unit}/h)`, "Hours to 10 mm left", "Inside width (mm)"],
    ...["Highest flame (mm)", ...HOURS.map((hour) => `Least pool at ${hour} h`)],
    ...["Soot", "Throw", "What was seen", "Rate"],
  ]);
  at.heading(words.heading, "Candle", "What its readings say");
  at.formula(candles.heading + 1, CANDLE.list, candleList(columns, ownRows(columns)));
  for (let place = 0; place < candles.count; place++) candleRow(at, blocks, columns, place);
}

function candleRow(at: SheetCells, blocks: Blocks, columns: SeenColumns, place: number): void {
  const { candles, words } = blocks;
  const row = candles.heading + 1 + place;
  const below = words.heading + 1 + place;
  const own = (column: number) => cellAt(column, row);
  const from = CANDLE.looks + place * LOOK_COLUMNS;
  const cells: CandleCells = {
    ...{ candle: own(CANDLE.name), width: own(CANDLE.width), at: own(CANDLE.at), first: own(CANDLE.first) },
    ...{ rise: own(CANDLE.rise), over: cellAt(from, MOST_LOOKS), renamed: cellAt(RENAMED.column, RENAMED.row) },
    ...fetchLooks(at, columns, own(CANDLE.name), from),
  };
  const readings = candleReadings(columns, cells);
  shownCells(at, row, columns, readings);
  at.formula(row, CANDLE.seen, stateWords(cells.candle, own(CANDLE.state), own(CANDLE.notes)), center);
  at.formula(row, CANDLE.picture, pictureFor(blocks).point(own(CANDLE.rate)));
  hiddenCells(at, row, columns, readings);
  const said = cellAt(1, below);
  at.formula(row, CANDLE.state, stateOf(said));
  at.formula(row, CANDLE.remarks, isToLookAt(said));
  const [wicks, rates] = [rangeAt(CANDLE.wick, candles), rangeAt(CANDLE.rate, candles)];
  at.formula(row, CANDLE.compared, comparedOf(own(CANDLE.wick), own(CANDLE.rate), wicks, rates));
  at.formula(below, 0, `=${cells.candle}`, {}, "label");
  const lines = place < candles.count - MORE_CANDLES && { lines: 2 };
  const sentence = wordsOf(readings, columns, headRef("product"));
  at.formula(below, 1, sentence, { across: ACROSS - 1, ...lines }, "name");
}

/** What shows of the candle but what goes by its words and the picture. */
function shownCells(at: SheetCells, row: number, columns: SeenColumns, readings: CandleReadings): void {
  const { cells } = readings;
  const own = (column: number) => cellAt(column, row);
  at.formula(row, CANDLE.name, `=IF(${own(CANDLE.list)}="","",${own(CANDLE.list)})`, {}, "label");
  at.formula(row, CANDLE.wick, wickOf(columns, cells), {}, "name");
  at.formula(row, CANDLE.hours, hoursOf(readings), { format: "0.0", ...right });
  at.formula(row, CANDLE.rate, rateOf(readings), { format: "0.00", ...right });
  at.formula(row, CANDLE.end, endOf(readings), { format: "0.0", ...right });
  at.formula(row, CANDLE.width, widthOf(columns, cells), { format: "0.0", ...right });
  at.formula(row, CANDLE.flame, flameOf(readings), { format: "0.0", ...right });
  for (const [h, hour] of HOURS.entries()) {
    at.formula(row, CANDLE.pool + h, poolOf(readings, hour, "MIN"), { format: "0%", ...center });
  }
  at.formula(row, CANDLE.soot, sootOf(readings), center, "name");
  const [scores, scored] = [own(CANDLE.scores), own(CANDLE.scored)];
  at.formula(row, CANDLE.throw, `=IF(N(${scores})=0,"",${scored}/${scores})`, { format: "0.0", ...center });
}

/** What other formulas need of the candle and nobody reads. */
function hiddenCells(at: SheetCells, row: number, columns: SeenColumns, readings: CandleReadings): void {
  const { cells } = readings;
  for (const [h, hour] of HOURS.entries()) at.formula(row, CANDLE.widestPool + h, poolOf(readings, hour, "MAX"));
  at.formula(row, CANDLE.at, rowOf(columns, cells));
  at.formula(row, CANDLE.first, firstOf(columns, cells));
  at.formula(row, CANDLE.rise, riseOf(readings));
  at.formula(row, CANDLE.notes, notesOf(readings));
  at.formula(row, CANDLE.scores, scoresOf(readings, "COUNT"));
  at.formula(row, CANDLE.scored, scoresOf(readings, "SUM"));
}

/**
 * All candles of the series, each name once, in the order of the table: one formula that fills as many cells.
 * @param own the rows of the series in the table of burn tests, as a product of conditions
 */
function candleList({ test }: SeenColumns, own: string): string {
  const column = refOf(test("test"));
  const names = `TRIM(${column})`;
  return `=IFERROR(FILTER(${names},${own}*(${names}<>"")*${isFirstOf(names, column)}),"")`;
}

/** Puts the readings of a candle into hidden columns from the top of the sheet on; gives where each stands. */
function fetchLooks(at: SheetCells, columns: SeenColumns, candle: string, from: number) {
  const range = (i: number) => `${cellAt(from + i, 0)}:${cellAt(from + i, MOST_LOOKS - 1)}`;
  const there = LOOK_FIELDS.flatMap((field, i) => {
    const formula = looksAt(columns, field, candle);
    if (formula === undefined) return [];
    at.formula(0, from + i, formula);
    return [[field, range(i)] as const];
  });
  const looks = (field: LookField): string | undefined => there.find(([one]) => one === field)?.[1];
  at.formula(0, from + LOOK_FIELDS.length, placedAt(columns, { candle, looks }));
  return { looks, placed: range(LOOK_FIELDS.length) };
}

const stateWords = (candle: string, state: string, notes: string): string => {
  const seen = `IF(${state}=2,"beyond the limits",IF(${state}=1,"nothing beyond","not finished"))`;
  return `=IF(${candle}="","",${seen}&IF(${notes}="","","; remarks"))`;
};

/** The rate where another candle of the wick has one too. */
const comparedOf = (wick: string, rate: string, wicks: string, rates: string): string =>
  `=IF(${rate}="","",IF(SUMPRODUCT((${wicks}=${wick})*ISNUMBER(${rates}))<2,"",${rate}))`;
