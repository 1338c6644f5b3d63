import type { Run } from "../../runsheet/plan/makeRun";
import { nearName } from "../../runsheet/plan/nearName";
import { isError, type Problem } from "../../runsheet/problem";
import { sameName } from "../../runsheet/sameName";
import { cardSheet } from "../../runsheet/series/cardSheet";
import { FEW, planSeries } from "../../runsheet/series/planSeries";
import { seriesAdditions } from "../../runsheet/series/seriesAdditions";
import { plannedLoad, plannedWax, seriesTables } from "../../runsheet/series/seriesNeeds";
import { TABLE_TYPES, type TableTypeId, tableName } from "../../runsheet/tables/registry";
import { alikeWicks, wickOf } from "../../runsheet/tables/wick";
import type { Addition } from "../../sheet/addition";
import type { Sheet } from "../../sheet/sheet";
import type { GivenTables } from "../givenTables";
import { serialOf, today } from "../today";
import { candlesLine, SERIES, shelfLines, timeLines, weightsLine } from "../words/series";
import type { SeriesBeside } from "./seriesBeside";
import { type ParsedSeries, parseSeries, type SaidOfFields, type SeriesField, type TypedSeries } from "./typedSeries";

/** A series as far as it is typed, with the tables by which it is worked out what it takes. */
export interface SeriesDraft {
  readonly wrong: SaidOfFields;
  readonly blank: SaidOfFields;
  readonly series: ParsedSeries | undefined;
  readonly given: GivenTables | undefined;
  readonly isFillKnown: boolean;
}

export function draftOf(typed: TypedSeries, beside: SeriesBeside): SeriesDraft {
  const { series, wrong, blank } = parseSeries(typed, beside);
  if (!series) return { wrong, blank, series, given: undefined, isFillKnown: false };
  const { order, wax, scent, load } = series;
  const { vessel, wicks, candles } = order;
  const pour = { vessel, wicks, candles: wicks.length * candles, wax, scent, load };
  const { tables, isFillKnown } = seriesTables(pour, beside.tables, beside.settings);
  return {
    wrong,
    blank,
    series,
    given: { read: beside.read, tables, lost: [], openFittings: beside.fittings },
    isFillKnown,
  };
}

/** What a series takes and will write; what is to be fixed before it is written. */
export interface SeriesPlan {
  readonly wrong: SaidOfFields;
  readonly fixes: readonly string[];
  readonly ready: ReadySeries | undefined;
}

export interface ReadySeries {
  readonly lines: readonly string[];
  readonly doubts: readonly string[];
  readonly additions: readonly Addition[];
  readonly cards: Sheet;
  /** What is said once it is written on a sheet of cards. */
  done(cards: string): string;
}

export function seriesPlan(
  { series, isFillKnown }: SeriesDraft,
  run: Run,
  beside: SeriesBeside,
): SeriesPlan | undefined {
  if (!series) return undefined;
  const errors = run.problems.filter(isError);
  if (errors.length > 0) return saidOf(errors);
  const { order, scent, width, product } = series;
  if (product === "tea light" && beside.columnless.includes("product")) {
    return { wrong: {}, fixes: [SERIES.teaLight(beside.standing.burnTests?.name ?? "")], ready: undefined };
  }
  const { vessel, cureDays, wicks, code } = order;
  const { settings, standing } = beside;
  const planned = planSeries(order);
  const load = plannedLoad(run.plan);
  const common = { vessel, width, wax: plannedWax(run.plan), scent, load, cureDays, product };
  const [tests, readings] = [
    standing.burnTests?.name ?? tableName("burnTests"),
    standing.readings?.name ?? tableName("readings"),
  ];
  const lacks = (run.shelf?.lacks ?? []).filter(({ isCounted }) => isFillKnown || isCounted);
  return {
    wrong: {},
    fixes: [],
    ready: {
      lines: [
        candlesLine(planned, wicks.length),
        weightsLine(isFillKnown ? run.plan.totals : undefined, { vessel, load, unit: settings.unit }),
        ...timeLines(planned, order.pouredOn),
        ...shelfLines(run.shelf, lacks, settings.unit),
      ],
      doubts: [...doubtsOf(series, planned.firstDay, beside), ...run.problems.filter(isDoubt).map(wordsOf)],
      additions: seriesAdditions(planned, common, standing, settings),
      cards: cardSheet(planned, common, { code, ...settings }),
      done: (cards) => SERIES.done(code, tests, planned.candles.length, readings, planned.looks.length, cards),
    },
  };
}

/** What of a plan was shown: the same must hold when it is written. */
export const shownOf = ({ ready }: SeriesPlan): string | undefined =>
  ready && JSON.stringify([ready.lines, ready.doubts]);

const FIELDS: readonly string[] = ["vessel", "wax", "scent", "load"] satisfies SeriesField[];

/** Errors of the row that was made up stand beside what was typed; those of other tables are listed. */
function saidOf(errors: readonly Problem[]): SeriesPlan {
  const wrong: Record<string, string> = {};
  const fixes: string[] = [];
  for (const one of errors) {
    const { table = "pour", field = "", text } = one;
    if (table === "pour" && FIELDS.includes(field) && wrong[field] === undefined) wrong[field] = text;
    else fixes.push(wordsOf(one));
  }
  return { wrong, fixes, ready: undefined };
}

/** Safety is never left out, nor a vessel's weights or a load that may be wrong; the cost is not asked for here. */
const isDoubt = ({ table, field, safety }: Problem): boolean =>
  safety === true || table === "vessels" || field === "load";

function wordsOf({ table = "pour", text }: Problem): string {
  const kind: TableTypeId = table;
  return kind === "pour" ? text : `${TABLE_TYPES[kind].name}: ${text}`;
}

/** Inside widths of vessels for candles in mm: beyond them lies a slip of the unit. Common practice, no source. */
const WIDTHS = { least: 15, most: 500 } as const;

function doubtsOf(
  { order, width, wax, scent, product }: ParsedSeries,
  firstDay: number,
  beside: SeriesBeside,
): string[] {
  const { vessel, wicks, candles } = order;
  const before = beside.widthOf(vessel);
  const given = { width, wax, scent, load: scent, product: product !== "container" };
  const isKnown = (what: keyof SeriesBeside["names"], name: string) => {
    const names = beside.names[what];
    const spellings = what === "wick" ? [name, wickOf(name).name] : [name];
    return name === "" || names.size === 0 || spellings.some((one) => names.has(sameName(one)));
  };
  const named = [
    ["vessel", vessel],
    ["wax", wax],
    ["scent", scent],
    ...wicks.map((wick) => ["wick", wick] as const),
  ] as const;
  const unknown = named.flatMap(([what, name]) =>
    isKnown(what, name) ? [] : [{ name, near: nearName(name, [...beside.names[what].values()]) }],
  );
  const lost = beside.columnless.filter((field) => given[field]);
  return [
    ...(lost.length > 0 ? [SERIES.columnless(beside.standing.burnTests?.name ?? "", lost)] : []),
    ...(candles < FEW ? [SERIES.few(candles)] : []),
    ...(width === undefined ? [SERIES.noWidth] : []),
    ...(width !== undefined && (width < WIDTHS.least || width > WIDTHS.most) ? [SERIES.oddWidth(width)] : []),
    ...(width !== undefined && before !== undefined && Math.abs(width - before) > 0.05 * before
      ? [SERIES.otherWidth(vessel, before)]
      : []),
    ...SERIES.unknown(unknown),
    ...alikeWicks([...wicks, ...beside.names.wick.values()]).flatMap((names) =>
      wicks.some((wick) => names.includes(wickOf(wick).name)) ? [SERIES.alike(names)] : [],
    ),
    ...(firstDay < (serialOf(today()) ?? 0) ? [SERIES.past(firstDay)] : []),
  ];
}
