import { BEYOND, TO_LOOK_AT } from "../../core/burn/openings";
import { COLDEST, ODD } from "../seenCandle";
import type { ReadingField, SeenColumn, SeenColumns } from "./seenColumns";

/** Formulas of a candle's row on the sheet of a series, by the cells of that row. */

/** Text that stands before what is still to be done, in what BURNCHECK says. */
const OPEN = "not finished: ";
const NOTHING_BEYOND = "nothing beyond the limits seen";
const NOTHING_READ = `${OPEN}nothing is read yet; burn a first cycle`;

/** Cells of the candle's own row. */
export interface CandleCells {
  readonly candle: string;
  /** Its row in the table of burn tests, and the first of its readings, counted from 1. */
  readonly at: string;
  readonly first: string;
  readonly width: string;
  /** Its readings, as `looksAt` fetches them; undefined for a column that the table does not have. */
  readonly looks: (field: LookField) => string | undefined;
  /** Whether one of its weights is above an earlier one: 1 or 0. */
  readonly rise: string;
  /** The cell below the last of them that there is room for. */
  readonly over: string;
}

/** What was seen: 2 beyond the limits, 1 read to its end without, 0 neither yet. */
export const stateOf = (words: string): string =>
  ofWords(words, (head) => `IF(${anyOf(BEYOND, head)},2,IF(ISNUMBER(FIND("${OPEN}",${words})),0,1))`);

/** 1 where there is something to look at. */
export const looksOf = (words: string): string => ofWords(words, (head) => `IF(${anyOf(TO_LOOK_AT, head)},1,0)`);

const ofWords = (words: string, work: (head: string) => string): string =>
  `=IF(${words}="","",LET(head,LEFT(${words},FIND("${OPEN}",${words}&"${OPEN}")-1),${work("head")}))`;
const anyOf = (says: Readonly<Record<string, string>>, head: string): string =>
  `OR(${Object.values(says)
    .map((one) => `ISNUMBER(SEARCH("min: ${one}",${head}))`)
    .join(",")})`;

const isFilled = ({ ref }: SeenColumn): string => `(TRIM(${ref})<>"")`;
const isNumber = ({ ref }: SeenColumn): string => `ISNUMBER(${ref})`;
const NOT_SAID = '=""';

/**
 * All candles of the series, each name once, in the order of the table: one formula that fills as many cells.
 * @param own the rows of the series in the table of burn tests, as a product of conditions
 */
export function candleList({ test }: SeenColumns, own: string): string {
  const names = `TRIM(${refOf(test("test"))})`;
  return `=IFERROR(FILTER(${names},${own}*(${names}<>"")*${isFirstOf(names, refOf(test("test")))}),"")`;
}

/** Of rows with the same name the first one. */
export const isFirstOf = (names: string, column: string): string =>
  `(XMATCH(${names},${names})=ROW(${column})-MIN(ROW(${column}))+1)`;

const refOf = (column: SeenColumn | undefined): string => (column as SeenColumn).ref;

/** The columns of readings that formulas look at. */
export const LOOK_FIELDS = [
  ...(["cycle", "minutes", "weight", "flame", "pool", "poolDepth"] as const),
  ...(["depth", "soot", "glass", "throw", "remarks"] as const),
] as const satisfies readonly ReadingField[];
export type LookField = (typeof LOOK_FIELDS)[number];

/** Fetches a column of a candle's readings, a blank as an empty text: one formula that fills as many cells. */
export function looksAt({ reading }: SeenColumns, field: LookField, candle: string): string | undefined {
  const column = reading(field);
  const own = `TRIM(${refOf(reading("test"))})=${candle}`;
  return column && `=IF(${candle}="","",IFERROR(FILTER(IF(${column.ref}="","",${column.ref}),${own}),""))`;
}

/** Formulas that need no column are an empty text. */
export function candleFormulas({ test, reading, heatUnit }: SeenColumns, cells: CandleCells) {
  const { candle, at, first, width, looks, over, rise } = cells;
  const unless = (formula: string): string => `=IF(${candle}="","",${formula})`;
  const ifRead = (formula: string, none = '""'): string => unless(`IF(${first}="",${none},${formula})`);
  const within = (field: LookField): SeenColumn | undefined => {
    const [column, ref] = [reading(field), looks(field)];
    return column && ref !== undefined ? { ...column, ref } : undefined;
  };
  const some = (fields: readonly LookField[]) => fields.flatMap((field) => within(field) ?? []);
  const [cycle, minutes] = some(["cycle", "minutes"]) as [SeenColumn, SeenColumn];
  const judged = some(["flame", "pool", "depth", "soot", "glass"]);
  const taken = [...judged, ...some(["weight", "poolDepth", "throw", "remarks"])];
  const numbers = [cycle, minutes, ...some(["weight", "flame", "pool", "poolDepth", "depth", "glass", "throw"])];
  const any = (columns: readonly SeenColumn[]): string =>
    columns.length > 0 ? `(${columns.map(isFilled).join("+")}>0)` : "0";
  const placed = `${isNumber(cycle)}*${isNumber(minutes)}`;
  const value = ({ ref, times }: SeenColumn, and = ""): string =>
    `IF(${placed}*ISNUMBER(${ref})${and},${ref}${times},"")`;

  /** How long it had burnt at each of its looks, in hours, under the name `burnt`; a column beside them as `beside`. */
  const burnt = (work: string, beside?: SeenColumn): string => {
    const kept = (column: SeenColumn) => `FILTER(IF(ISNUMBER(${column.ref}),${column.ref}${column.times},""),mine)`;
    const names = [
      `mine,${placed}*${any(taken)}`,
      `turn,${kept(cycle)},spent,${kept(minutes)},ones,SIGN(turn)`,
      ...(beside ? [`beside,${kept(beside)}`] : []),
      // Of each cycle its longest look counts, shared by those that are as long.
      "longest,(MMULT((turn=TRANSPOSE(turn))*(TRANSPOSE(spent)>spent),ones)=0)*spent/MMULT((turn=TRANSPOSE(turn))*(TRANSPOSE(spent)=spent),ones)",
      "burnt,(spent+MMULT((turn>TRANSPOSE(turn))*1,longest))/60",
    ];
    return `LET(${names.join(",")},${work})`;
  };
  // A cycle that was burnt and not looked at: how long it burnt nobody knows.
  const unlessGap = (work: string): string =>
    `IF(COUNT(UNIQUE(FILTER(turn,(spent>0)*(turn<MAX(turn)),"")))<MAX(turn)-1,"",${work})`;
  /** Whether a number of the column beside is above an earlier one, and by more than this. */
  const rises = (order: string, by: number): string =>
    `SUM(LET(when,FILTER(${order},ISNUMBER(beside)),what,FILTER(beside,ISNUMBER(beside)),(when<TRANSPOSE(when))*(ROUND(what+${by},9)<ROUND(TRANSPOSE(what),9))))>0`;
  const ofColumn = (field: LookField, formula: (column: SeenColumn) => string): string => {
    const column = within(field);
    return column ? ifRead(formula(column)) : NOT_SAID;
  };

  return {
    at: unless(`XMATCH(${candle},TRIM(${refOf(test("test"))}))`),
    first: unless(`IFERROR(XMATCH(${candle},TRIM(${refOf(reading("test"))})),"")`),
    wick: unless(
      `IF(TRIM(INDEX(${refOf(test("wick"))},${at}))="","no wick named",TRIM(INDEX(${refOf(test("wick"))},${at})))`,
    ),
    width: widthOf(test("width"), at, unless),
    hours: ifRead(`IFERROR(${burnt("MAX(burnt)")},0)`, "0"),
    rate: ofColumn("weight", (weight) => {
      const lost = burnt(unlessGap("POUR.BURNRATE(burnt,beside)"), weight);
      return `IF(${rise}=1,"",IFERROR(LET(lost,${lost},IF(lost="","",IF(lost>0,lost,""))),""))`;
    }),
    rise: ofColumn("weight", (weight) => `IFERROR(${burnt(`IF(${rises("burnt", 0)},1,0)`, weight)},0)`),
    /** Hours it had burnt when 10 mm of wax were left. */
    end: ofColumn("depth", (depth) => {
      const ends = 'IF(ISNUMBER(beside),IF(ROUND(beside,9)<=10,burnt,""),"")';
      return `IFERROR(${burnt(unlessGap(`IF(${rises("turn*100000+spent", 1)},"",LET(ends,${ends},IF(COUNT(ends)=0,"",MIN(ends))))`), depth)},"")`;
    }),
    flame: ofColumn("flame", (flame) => `LET(seen,${value(flame)},IF(COUNT(seen)=0,"",MAX(seen)))`),
    /** Its narrowest pool at a full hour, or its widest, as a share of the width. */
    pool: (hour: number, which: "MIN" | "MAX"): string =>
      ofColumn("pool", (pool) => {
        const atHour = `*(ROUND(IF(${isNumber(minutes)},${minutes.ref}${minutes.times},0)/60,0)=${hour})`;
        return `IF(${width}="","",LET(seen,${value(pool, atHour)},IF(COUNT(seen)=0,"",${which}(seen)/${width})))`;
      }),
    soot: ofColumn("soot", (soot) => {
      const read = `FILTER(TRIM(${soot.ref}),${isFilled(soot)}*${placed})`;
      return `IFERROR(LET(read,${read},TEXTJOIN(", ",TRUE,UNIQUE(read))),"")`;
    }),
    /** What the maker remarked. */
    notes: ofColumn("remarks", (remarks) => `TEXTJOIN("; ",TRUE,TRIM(${remarks.ref}))`),
    /** How many scores of its throw there are, and their sum. */
    scores: (which: "COUNT" | "SUM"): string => ofColumn("throw", (scores) => `${which}(${value(scores)})`),
    /** What BURNCHECK says, with what it is not given. */
    words: (product: string): string => {
      const none = 'IF(mine,"","")';
      const lengths = (field: "flame" | "pool" | "depth") => {
        const column = within(field);
        return column ? value(column) : none;
      };
      const [soot, glass] = [within("soot"), within("glass")];
      const check = [
        `IF(mine,${cycle.ref},""),IF(mine,${minutes.ref}${minutes.times},"")`,
        // A pool is judged against its vessel; without a width nobody can.
        `${lengths("flame")},IF(${width}="",${none},${lengths("pool")}),IF(${width}="",100,${width}),"mm"`,
        lengths("depth"),
        soot ? `IF(mine*${isFilled(soot)},${soot.ref},"")` : none,
        glass ? value(glass) : none,
        `"${heatUnit}",${product}`,
      ].join(",");
      const oddWords = (field: "flame" | "glass", is: string, says: string): string => {
        const column = within(field);
        if (!column) return '""';
        const lit = `mine*${isNumber(column)}*(${column.ref}${is})*IF(mine,${minutes.ref}>0,0)`;
        const places = `FILTER("cycle "&${cycle.ref}&" at "&IF(mine,${minutes.ref}${minutes.times},"")&" min: ${says}",${lit})`;
        const many = `IF(ROWS(places)>1," (and "&(ROWS(places)-1)&" more)","")`;
        return `IFERROR(LET(places,${places},INDEX(places,1)&${many}),"")`;
      };
      const unread = numbers.map((column) => `${isFilled(column)}*(1-${isNumber(column)})`).join("+");
      const names = [
        `mine,${placed}`,
        `unread,SUM(${unread})+SUM(${any(taken)}*(1-${placed}))`,
        `said,IF(SUM(mine*${any(judged)})=0,"${NOTHING_READ}",POUR.BURNCHECK(${check}))`,
        `risen,IF(${rise}=1,"${OPEN}a weight is above an earlier one; check both","")`,
        `out,${oddWords("flame", "=0", ODD.out)}`,
        `cold,${oddWords("glass", `<${heatUnit === "F" ? COLDEST * 1.8 + 32 : COLDEST}`, ODD.cold)}`,
        `lacks,IF(unread>0,"${OPEN}"&unread&IF(unread=1," cell"," cells")&" of its readings cannot be read","")`,
        `wall,IF(${width}="","${OPEN}the inside width of its vessel is not known","")`,
        `more,IF(${over}="","","${OPEN}it has more readings than this sheet has room for")`,
        'every,TEXTJOIN("; ",TRUE,out,cold,said,risen,lacks,wall,more)',
      ];
      const broken = `"${OPEN}something of it cannot be read; look at its rows"`;
      const words = `IFERROR(LET(${names.join(",")},IF(every="","${NOTHING_BEYOND}",every)),${broken})`;
      return ifRead(words, `"${NOTHING_READ}"`);
    },
  };
}

const widthOf = (column: SeenColumn | undefined, at: string, unless: (formula: string) => string): string => {
  if (!column) return NOT_SAID;
  const cell = `INDEX(${column.ref},${at})`;
  return unless(`IF(ISNUMBER(${cell}),IF(${cell}>0,${cell}${column.times},""),"")`);
};
