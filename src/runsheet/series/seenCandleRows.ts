import type { WeightUnit } from "../settings";
import { candleFormulas, candleList, LOOK_FIELDS, type LookField, looksAt, looksOf, stateOf } from "./candleFormulas";
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
  const own = (column: number) => cellAt(column, row);
  const [candle, said, from] = [
    own(CANDLE.name),
    cellAt(1, words.heading + 1 + place),
    CANDLE.looks + place * LOOK_FIELDS.length,
  ];
  const formulas = candleFormulas(columns, {
    ...{ candle, width: own(CANDLE.width), at: own(CANDLE.at), first: own(CANDLE.first), rise: own(CANDLE.rise) },
    ...{ looks: fetchLooks(at, columns, candle, from), over: cellAt(from, MOST_LOOKS) },
  });
  at.formula(row, CANDLE.name, `=IF(${own(CANDLE.list)}="","",${own(CANDLE.list)})`, {}, "label");
  at.formula(row, CANDLE.wick, formulas.wick, {}, "name");
  at.formula(row, CANDLE.hours, formulas.hours, { format: "0.0", ...right });
  at.formula(row, CANDLE.rate, formulas.rate, { format: "0.00", ...right });
  at.formula(row, CANDLE.end, formulas.end, { format: "0.0", ...right });
  at.formula(row, CANDLE.width, formulas.width, { format: "0.0", ...right });
  at.formula(row, CANDLE.flame, formulas.flame, { format: "0.0", ...right });
  for (const [h, hour] of HOURS.entries()) {
    at.formula(row, CANDLE.pool + h, formulas.pool(hour, "MIN"), { format: "0%", ...center });
    at.formula(row, CANDLE.widestPool + h, formulas.pool(hour, "MAX"));
  }
  at.formula(row, CANDLE.soot, formulas.soot, center, "name");
  const [scores, scored] = [own(CANDLE.scores), own(CANDLE.scored)];
  at.formula(row, CANDLE.throw, `=IF(N(${scores})=0,"",${scored}/${scores})`, { format: "0.0", ...center });
  at.formula(row, CANDLE.seen, stateWords(candle, own(CANDLE.state), own(CANDLE.notes)), center);
  at.formula(row, CANDLE.picture, pictureFor(blocks).point(own(CANDLE.rate)));
  at.formula(row, CANDLE.at, formulas.at);
  at.formula(row, CANDLE.first, formulas.first);
  at.formula(row, CANDLE.rise, formulas.rise);
  at.formula(row, CANDLE.notes, formulas.notes);
  at.formula(row, CANDLE.scores, formulas.scores("COUNT"));
  at.formula(row, CANDLE.scored, formulas.scores("SUM"));
  at.formula(row, CANDLE.state, stateOf(said));
  at.formula(row, CANDLE.remarks, looksOf(said));
  at.formula(
    row,
    CANDLE.compared,
    comparedOf(own(CANDLE.wick), own(CANDLE.rate), rangeAt(CANDLE.wick, candles), rangeAt(CANDLE.rate, candles)),
  );
  const below = words.heading + 1 + place;
  at.formula(below, 0, `=${candle}`, {}, "label");
  at.formula(
    below,
    1,
    formulas.words(headRef("product")),
    { across: ACROSS - 1, ...(place < candles.count - MORE_CANDLES && { lines: 2 }) },
    "name",
  );
}

/** Puts the readings of a candle into hidden columns from the top of the sheet on; gives where each stands. */
function fetchLooks(at: SheetCells, columns: SeenColumns, candle: string, from: number) {
  const there = LOOK_FIELDS.flatMap((field, i) => {
    const formula = looksAt(columns, field, candle);
    if (formula === undefined) return [];
    at.formula(0, from + i, formula);
    return [[field, `${cellAt(from + i, 0)}:${cellAt(from + i, MOST_LOOKS - 1)}`] as const];
  });
  return (field: LookField): string | undefined => there.find(([one]) => one === field)?.[1];
}

const stateWords = (candle: string, state: string, notes: string): string =>
  `=IF(${candle}="","",IF(${state}=2,"beyond the limits",IF(${state}=1,"nothing beyond","not finished"))&IF(${notes}="","","; remarks"))`;

/** The rate where another candle of the wick has one too. */
const comparedOf = (wick: string, rate: string, wicks: string, rates: string): string =>
  `=IF(${rate}="","",IF(SUMPRODUCT((${wicks}=${wick})*ISNUMBER(${rates}))<2,"",${rate}))`;
