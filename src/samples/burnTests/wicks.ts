import type { Cell, CellRange, Chart, Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, headingRow, lookUp } from "../layout";
import { RESULTS } from "./candleFormulas";
import { VESSELS } from "./series";

const right = { align: "right" } as const;
const center = { align: "center" } as const;
const rate = { format: FORMATS.rate, ...right } as const;
const count = { format: FORMATS.count, ...center } as const;

const WIDTHS = [13, 13, 14, 14, 14, 20, 13, 11, 66, 0, 0, 0, 0];
const SHOWN = WIDTHS.filter((width) => width > 0).length;
/** Hidden: the wick's place among those compared, and for the chart the ends of its rate about the mean. */
const [PLACE, DRAWN] = [9, 10];

/** Wicks of one vessel that there is room for. */
const ROOM = 6;
const FIRST_BLOCK = 3;
const CHART_ROWS = 14;
/** A row for the vessel, what was seen and the rates with their headings, the thickness, the chart and an empty row. */
const BLOCK = 1 + 2 * (ROOM + 1) + 3 + CHART_ROWS + 1;

/** A candle whose rate cannot be told spoils no other's. */
const RATES = 'IF(ISNUMBER(BurnTests[Burn rate (g/h)]),BurnTests[Burn rate (g/h)],"")';

/** Rates that are wanted, in grams an hour. */
const WANTED = [5.5, 3.5] as const;

/** Rows of a block, from 0. */
function rowsOf(index: number) {
  const vessel = FIRST_BLOCK + index * BLOCK;
  const seen = vessel + 1;
  const rates = seen + ROOM + 1;
  return { vessel, seen, rates, wanted: rates + ROOM + 1 };
}

/** Headings of two lines, which take no less room where letters are wider. */
const inTwoLines = (one: Cell): Cell => ({ ...one, lines: 2 });

/** What was seen of the wicks of one vessel, their rates, and the thickness at which a wanted rate may be reached. */
function block(index: number): Cell[] {
  const { vessel, wicks } = VESSELS[index] as (typeof VESSELS)[number];
  const rows = rowsOf(index);
  const name = `$B$${rows.vessel + 1}`;
  const of = (column: string): string => `IF(BurnTests[Vessel]=${name},BurnTests[${column}],"")`;
  const compare = `POUR.WICKCOMPARE(${of("Wick")},${RATES})`;
  const sized = [...wicks].sort((a, b) => a.thickness - b.thickness);
  return [
    cell(rows.vessel, 0, "Vessel", { look: "label" }),
    cell(rows.vessel, 1, vessel, { look: "input", across: 2 }),
    ...headingRow(rows.seen, 0, [
      { heading: "Wick" },
      { heading: "Thickness (mm)", ...center },
      { heading: "Highest flame (mm)", ...right },
      { heading: "Mean hours burnt", ...right },
      { heading: "Within the limits", ...center },
      { heading: "Of so many judged", ...center },
      { heading: "So of all at least", ...center },
      { heading: "To look at", ...center },
      { heading: "First finding" },
    ]).map(inTwoLines),
    ...Array.from({ length: ROOM }, (_, i) =>
      seenRow({ row: rows.seen + 1 + i, wick: sized[i]?.wick ?? null, vessel: name, compare }),
    ).flat(),
    ...headingRow(rows.rates, 0, [
      { heading: "Wick" },
      { heading: "Candles", ...center },
      { heading: "Mean (g/h)", ...right },
      { heading: "Lower (g/h)", ...right },
      { heading: "Upper (g/h)", ...right },
      { heading: "Cannot be told from", ...center },
    ]).map(inTwoLines),
    cell(rows.rates + 1, 0, { formula: `=${compare}` }),
    ...Array.from({ length: ROOM }, (_, i) => [
      cell(rows.rates + 1 + i, 1, null, count),
      ...[2, 3, 4].map((column) => cell(rows.rates + 1 + i, column, null, rate)),
      cell(rows.rates + 1 + i, 5, null, center),
    ]).flat(),
    ...headingRow(rows.wanted, 0, [
      { heading: "Wanted (g/h)" },
      { heading: "Thickness (mm)", ...right },
      { heading: "Lower (mm)", ...right },
      { heading: "Upper (mm)", ...right },
    ]).map(inTwoLines),
    cell(rows.wanted + 1, 0, WANTED[index] ?? 0, { look: "input", ...rate }),
    cell(rows.wanted + 1, 1, { formula: `=POUR.WICKAT(${of("Thickness (mm)")},${RATES},$A$${rows.wanted + 2})` }, rate),
    ...[2, 3].map((column) => cell(rows.wanted + 1, column, null, rate)),
  ];
}

interface SeenRow {
  readonly row: number;
  readonly wick: string | null;
  /** The cell that names the vessel. */
  readonly vessel: string;
  readonly compare: string;
}

function seenRow({ row, wick, vessel, compare }: SeenRow): Cell[] {
  const at = (column: string): string => `$${column}${row + 1}`;
  const name = at("A");
  const ofWick = `BurnTests[Vessel],${vessel},BurnTests[Wick],${name}`;
  const counted = (result: string): string => `COUNTIFS(${ofWick},BurnTests[Result],"${result}")`;
  // Where a check gives an error its candle is neither, and no number may look as if it were counted.
  const toLookAt = `SUMIFS(BurnTests[To look at],${ofWick})`;
  const said = (result: string): string => {
    const first = `MATCH(${vessel}&"|"&${name}&"|${result}",BurnTests[Key],0)`;
    const check = `INDEX(BurnTests[Check],${first})`;
    // The first of what there is to say.
    return `INDEX(BurnTests[Test],${first})&": "&LEFT(${check},FIND(";",${check}&";")-1)`;
  };
  const ifAny = (formula: string) => ({ formula: `=IF(LEN(${name})=0,"",${formula})` });
  const mean = (column: string): string => `IFERROR(AVERAGEIFS(BurnTests[${column}],${ofWick}),"")`;
  return [
    cell(row, 0, wick, { look: "input" }),
    cell(row, 1, ifAny(`IFERROR(${lookUp("BurnTests", "Thickness (mm)", "Wick", name)},"not on Burn tests")`), {
      format: FORMATS.length,
      ...center,
    }),
    cell(row, 2, ifAny(`MAXIFS(BurnTests[Highest flame (mm)],${ofWick})`), { format: FORMATS.count, ...right }),
    cell(row, 3, ifAny(mean("Hours burnt")), { format: FORMATS.hours, ...right }),
    cell(row, 4, ifAny(`${counted(RESULTS.within)}+${counted(RESULTS.look)}+0*${toLookAt}`), count),
    cell(row, 5, ifAny(`${at("E")}+${counted(RESULTS.beyond)}`), count),
    cell(row, 6, ifAny(`IF(${at("F")}=0,"",POUR.PASSBOUND(${at("E")},${at("F")}))`), { format: "0%", ...center }),
    cell(row, 7, ifAny(toLookAt), count),
    cell(
      row,
      8,
      ifAny(
        [RESULTS.beyond, RESULTS.fix, RESULTS.open, RESULTS.look].reduceRight(
          (rest, result) => `IFERROR(${said(result)},${rest})`,
          '""',
        ),
      ),
      {
        look: "alert",
        ...(wick !== null && { lines: 2 }),
      },
    ),
    cell(row, PLACE, ifAny(`IFERROR(MATCH(${name},INDEX(${compare},0,1),0),"")`)),
    ...[4, 3, 5].map((column, i) =>
      cell(row, DRAWN + i, {
        // Excel draws a text as 0, and what is #N/A not at all.
        formula: `=IF(COUNT(${at("J")})=0,NA(),IFERROR(INDEX(${compare},${at("J")},${column}),NA()))`,
      }),
    ),
  ];
}

/** The rates wick by wick. */
function chart(index: number): Chart {
  const { seen, wanted } = rowsOf(index);
  const column = (at: number): CellRange => ({
    ...{ sheet: "Wicks", row: seen + 1, column: at, rows: ROOM, columns: 1 },
  });
  return {
    kind: "bars",
    title: `${VESSELS[index]?.vessel}: weight lost an hour, with the 95 % interval of the mean`,
    xTitle: "",
    yTitle: "g/h",
    format: FORMATS.length,
    series: ["Lower", "Mean", "Upper"].map((name, i) => ({ name, x: column(0), y: column(DRAWN + i) })),
    place: { row: wanted + 3, column: 0, rows: CHART_ROWS, columns: 6 },
  };
}

/** What the candles of each vessel show of their wicks. */
export function wicks(): Sheet {
  return {
    name: "Wicks",
    widths: WIDTHS,
    cells: [
      ...heading(
        "Wicks side by side",
        "What was seen in so many candles; it calls no wick safe. So of all at least: the lowest share of all such candles that may be within the limits, at 95 % confidence: three of three leave 37 %. Lower, upper: the 95 % interval of the mean rate (Student); wicks it cannot be told from: Welch, adjusted by Holm. Thickness: where a straight line through all candles gives the wanted rate, with its 95 % interval (Fieller); test the wick that it names.",
        SHOWN,
      ),
      ...VESSELS.flatMap((_, i) => block(i)),
    ],
    charts: VESSELS.map((_, i) => chart(i)),
    print: { paper: "a4", landscape: true, newPages: [rowsOf(1).vessel] },
  };
}
