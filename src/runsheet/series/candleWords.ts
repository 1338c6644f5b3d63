import { BEYOND, NO_WIDTH, NOTHING_READ, NOT_FINISHED as OPEN, TO_LOOK_AT } from "../../core/burn/openings";
import { type CandleReadings, ifRead, isAnyFilled, isFilled, isNumber, numbersIn } from "./candleReadings";
import type { SeenColumns } from "./seenColumns";

/** Formulas of what a candle's readings say, in words, and of what these words come to. */

type Units = Pick<SeenColumns, "heatUnit" | "weightUnit">;
const NOTHING_BEYOND = "nothing beyond the limits seen";
const UNREAD = `${OPEN}${NOTHING_READ}`;

/** What BURNCHECK says, with what it is not given. */
export function wordsOf(own: CandleReadings, units: Units, product: string): string {
  const { judged, taken, cells } = own;
  const broken = `"${OPEN}something of it cannot be read; look at its rows"`;
  const checked = `IF(SUM(mine*${isAnyFilled(judged)})=0,"${UNREAD}",${burnCheckOf(own, units, product)})`;
  const open = (condition: string, words: string) => `IF(${condition},"${OPEN}${words}","")`;
  const names = [
    // Rows that were made for looks not yet taken do not say how long it burnt.
    `mine,${cells.placed}*${isAnyFilled(taken)}`,
    `unread,${unreadIn(own)}`,
    // What it refuses to judge hides nothing else.
    `said,IFERROR(${checked},${broken})`,
    `risen,${open(`${cells.rise}=1`, "a weight is above an earlier one; check both")}`,
    `lacks,IF(unread>0,"${OPEN}"&unread&IF(unread=1," cell"," cells")&" of its readings cannot be read","")`,
    `wall,${open(`${cells.width}=""`, NO_WIDTH)}`,
    `more,IF(${cells.over}="","","${OPEN}it has more readings than this sheet has room for")`,
    'every,TEXTJOIN("; ",TRUE,said,risen,lacks,wall,more)',
  ];
  const words = `IFERROR(LET(${names.join(",")},IF(every="","${NOTHING_BEYOND}",every)),${broken})`;
  return ifRead(cells, `IF(${cells.renamed}<>"","${OPEN}"&${cells.renamed},${words})`, `"${UNREAD}"`);
}

/** Cells that hold no number where one is needed, and readings that say something and lack their place. */
function unreadIn({ cells, cycle, minutes, columns, taken }: CandleReadings): string {
  const numbers = [cycle, minutes, ...columns(["weight", "flame", "pool", "poolDepth", "depth", "glass", "throw"])];
  const texts = numbers.map((column) => `${isFilled(column)}*(1-${isNumber(column)})`).join("+");
  return `SUM(${texts})+SUM(${isAnyFilled(taken)}*(1-${cells.placed}))`;
}

function burnCheckOf(own: CandleReadings, { heatUnit, weightUnit }: Units, product: string): string {
  const { cycle, minutes, cells } = own;
  const none = 'IF(mine,"","")';
  const numbers = (field: "flame" | "pool" | "depth" | "glass" | "weight") => {
    const column = own.column(field);
    return column ? numbersIn(own, column) : none;
  };
  const soot = own.column("soot");
  const given = [
    `IF(mine,${cycle.ref},""),IF(mine,${minutes.ref}${minutes.times},"")`,
    // A pool, and what burnt by weight, is judged against its vessel; without a width nobody can.
    `${numbers("flame")},IF(${cells.width}="",${none},${numbers("pool")}),IF(${cells.width}="",100,${cells.width}),"mm"`,
    numbers("depth"),
    soot ? `IF(mine*${isFilled(soot)},${soot.ref},"")` : none,
    numbers("glass"),
    `"${heatUnit}",${product},IF(${cells.width}="",${none},${numbers("weight")}),"${weightUnit}"`,
  ];
  return `POUR.BURNCHECK(${given.join(",")})`;
}

/** What was seen: 2 beyond the limits, 1 read to its end without, 0 neither yet. */
export const stateOf = (words: string): string =>
  ofFindings(words, (head) => `IF(${holdsAny(BEYOND, head)},2,IF(ISNUMBER(FIND("${OPEN}",${words})),0,1))`);

/** 1 where there is something to look at. */
export const isToLookAt = (words: string): string =>
  ofFindings(words, (head) => `IF(${holdsAny(TO_LOOK_AT, head)},1,0)`);

/** Findings stand before what is still to be done. */
const ofFindings = (words: string, work: (head: string) => string): string =>
  `=IF(${words}="","",LET(head,LEFT(${words},FIND("${OPEN}",${words}&"${OPEN}")-1),${work("head")}))`;
const holdsAny = (openings: Readonly<Record<string, string>>, head: string): string =>
  `OR(${Object.values(openings)
    .map((one) => `ISNUMBER(SEARCH("min: ${one}",${head}))`)
    .join(",")})`;
