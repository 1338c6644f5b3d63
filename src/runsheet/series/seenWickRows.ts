import { BURN_CAUTIONS, stopAt } from "../burnCautions";
import type { WeightUnit } from "../settings";
import { pictureOf } from "./ratePicture";
import {
  ACROSS,
  type Blocks,
  CANDLE,
  cellAt,
  HOURS,
  headRef,
  MORE_WICKS,
  rangeAt,
  type SheetCells,
  WICK,
} from "./seenPlaces";
import {
  boundOf,
  type CandleRanges,
  countIn,
  countOf,
  highest,
  lifeBy,
  lifeOf,
  lifeWords,
  meanOf,
  passedWords,
  poolWords,
  sootWords,
  surerOf,
  throwOf,
  verdictOf,
  type WickCells,
  wickAtPlace,
} from "./wickFormulas";

/** What the limits are by, and the usual cautions. */
const CAUTIONS = [
  `This says what was seen in so many candles, and nothing of those that were not burnt. ${BURN_CAUTIONS.deciding} Limits: EN 15493 (flame; 30 mm for a tea light), EN 15426 (cycles, 10 mm left, soot; second-hand or from memory); pool and glass temperature by common practice, no source.`,
  `${BURN_CAUTIONS.place} ${stopAt(false)} ${BURN_CAUTIONS.lead}`,
] as const;

const right = { align: "right" } as const;
const center = { align: "center" } as const;

/** Ranges of the candles' rows. */
export const rangesOf = ({ candles, words }: Blocks): CandleRanges => ({
  ...{
    candle: rangeAt(CANDLE.name, candles),
    wick: rangeAt(CANDLE.wick, candles),
    rate: rangeAt(CANDLE.rate, candles),
  },
  ...{
    end: rangeAt(CANDLE.end, candles),
    hours: rangeAt(CANDLE.hours, candles),
    flame: rangeAt(CANDLE.flame, candles),
    words: rangeAt(1, words),
  },
  ...{ state: rangeAt(CANDLE.state, candles), remarks: rangeAt(CANDLE.remarks, candles) },
  ...{ soot: rangeAt(CANDLE.soot, candles), notes: rangeAt(CANDLE.notes, candles) },
  ...{ scores: rangeAt(CANDLE.scores, candles), scored: rangeAt(CANDLE.scored, candles) },
});

/** The picture's formulas, for wicks and candles alike. */
export const pictureFor = ({ candles, figures }: Blocks) =>
  pictureOf(
    { rate: rangeAt(CANDLE.rate, candles), lower: rangeAt(WICK.lower, figures), upper: rangeAt(WICK.upper, figures) },
    cellAt(WICK.block, figures.heading),
    cellAt(WICK.block + 1, figures.heading),
  );

/** The verdicts, the cautions, and the figures by wick. */
export function wickRows(at: SheetCells, blocks: Blocks, unit: WeightUnit): void {
  const { verdicts, cautions, figures, candles } = blocks;
  const { ends } = pictureFor(blocks);
  at.heading(verdicts.heading, "Wick", "What was seen, and what would make it surer");
  for (const [i, text] of CAUTIONS.entries()) at.text(cautions + i, 0, text, "caution", { across: ACROSS });
  at.headings(figures.heading, [
    ...["By wick", "Passed", "Pass rate of all, at least", `Rate (${unit}/h)`, "95 % from", "95 % to"],
    ...["Highest flame (mm)", ...HOURS.map((hour) => `Pool at ${hour} h, of width`)],
    ...["Soot", "Throw", "Burns down in"],
  ]);
  at.formula(figures.heading, WICK.picture, ends.heading(unit), center, "heading");
  at.formula(figures.heading, WICK.block, ends.low);
  at.formula(figures.heading, WICK.block + 1, ends.high);
  for (let place = 0; place < figures.count; place++) wickRow(at, blocks, place);
  // Wicks with one candle have no interval and would fill cells with errors.
  const compared = rangeAt(CANDLE.compared, candles);
  const wicks = rangeAt(CANDLE.wick, candles);
  at.formula(figures.heading + 1, WICK.block, `=IFERROR(POUR.WICKCOMPARE(${wicks},${compared}),"")`);
}

function wickRow(at: SheetCells, blocks: Blocks, place: number): void {
  const ranges = rangesOf(blocks);
  const row = blocks.figures.heading + 1 + place;
  const own = (column: number) => cellAt(column, row);
  const cells: WickCells = {
    ...{ wick: own(WICK.name), count: own(WICK.count), passed: own(WICK.passed), failed: own(WICK.failed) },
    ...{ mean: own(WICK.rate), lower: own(WICK.lower), upper: own(WICK.upper) },
    ...{ lifeBy: own(WICK.lifeBy), alike: own(WICK.alike) },
  };
  at.formula(row, WICK.name, wickAtPlace(ranges, place + 1), {}, "name");
  shownCells(at, row, blocks, ranges, cells);
  hiddenCells(at, row, blocks, ranges, cells);
  verdictRows(at, blocks, place, cells);
}

/** What WICKCOMPARE says of a wick, in one of its columns. */
const compared = ({ figures }: Blocks, { wick }: WickCells, column: number): string =>
  `=IF(${wick}="","",IFERROR(INDEX(${rangeAt(WICK.block + column, figures)},XMATCH(${wick},${rangeAt(WICK.block, figures)})),""))`;

function shownCells(at: SheetCells, row: number, blocks: Blocks, ranges: CandleRanges, cells: WickCells): void {
  const { candles } = blocks;
  const own = (column: number) => cellAt(column, row);
  at.formula(row, WICK.passedWords, passedWords(cells), center);
  at.formula(row, WICK.bound, boundOf(cells), { format: "0%", ...right });
  at.formula(row, WICK.rate, meanOf(ranges, cells), { format: "0.00", ...right });
  at.formula(row, WICK.lower, compared(blocks, cells, 3), { format: "0.00", ...right });
  at.formula(row, WICK.upper, compared(blocks, cells, 4), { format: "0.00", ...right });
  at.formula(row, WICK.flame, highest(ranges.flame, ranges, cells), { format: "0.0", ...right });
  for (const [h] of HOURS.entries()) {
    const [narrowest, widest] = [rangeAt(CANDLE.pool + h, candles), rangeAt(CANDLE.widestPool + h, candles)];
    at.formula(row, WICK.pool + h, poolWords(narrowest, widest, ranges, cells), center);
  }
  at.formula(row, WICK.soot, sootWords(ranges, cells), center, "name");
  at.formula(row, WICK.throw, throwOf(ranges, cells), { format: "0.0", ...center });
  const life = { mean: own(WICK.life), lower: own(WICK.lifeLower), upper: own(WICK.lifeUpper) };
  at.formula(row, WICK.lifeWords, lifeWords(cells, life), center);
  at.formula(row, WICK.picture, pictureFor(blocks).picture(cells.mean, cells.lower, cells.upper));
}

/** What other formulas need of the wick and nobody reads. */
function hiddenCells(at: SheetCells, row: number, blocks: Blocks, ranges: CandleRanges, cells: WickCells): void {
  const fill = headRef("fill");
  at.formula(row, WICK.count, countOf(ranges, cells));
  at.formula(row, WICK.passed, countIn(1, ranges, cells));
  at.formula(row, WICK.failed, countIn(2, ranges, cells));
  at.formula(row, WICK.lifeBy, lifeBy(ranges, cells, fill));
  const life = lifeOf(ranges, cells, fill);
  at.formula(row, WICK.life, life.mean);
  at.formula(row, WICK.lifeLower, life.lower);
  at.formula(row, WICK.lifeUpper, life.upper);
  at.formula(row, WICK.alike, alikeOf(compared(blocks, cells, 5)));
}

/** What was seen, and below it what would make it surer. */
function verdictRows(at: SheetCells, blocks: Blocks, place: number, cells: WickCells): void {
  const row = blocks.verdicts.heading + 1 + 2 * place;
  const verdict = verdictOf(rangesOf(blocks), cells, headRef("fill"));
  const surer = `=IF(${cells.wick}="","","To be surer: "&${surerOf(cells).slice(1)})`;
  const lines = place < blocks.figures.count - MORE_WICKS && { lines: 2 };
  at.formula(row, 0, `=${cells.wick}`, {}, "label");
  at.formula(row, 1, verdict, { across: ACROSS - 1, ...lines }, "name");
  at.formula(row + 1, 1, surer, { across: ACROSS - 1 }, "note");
}

/** Only the names of other wicks; WICKCOMPARE says in words where there are none. */
const alikeOf = (formula: string): string =>
  `=LET(found,${formula.slice(1)},IF(OR(found="none",LEFT(found,8)="no other"),"",found))`;
