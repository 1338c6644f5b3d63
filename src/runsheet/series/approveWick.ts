import { passBound } from "../../core/burn/passBound";
import { list } from "../../core/check/list";
import type { CellValue } from "../../sheet/sheet";
import { atMost, percent } from "../percent";
import { isWax, ofWax, USUAL } from "../plan/checks/untested";
import { sameName } from "../sameName";
import { isFinished, type SeenCandle, seenCandle } from "../seenCandle";
import type { Settings } from "../settings";
import type { BurnTest, BurnTests } from "../tables/burnTests";
import type { Readings } from "../tables/readings";
import { fieldName } from "../tables/registry";
import type { TableRows } from "../tables/tableRows";
import { wickIn } from "../tables/vessels";
import { alikeWicks, isSameWick, oneWickOrTwo, wickOf } from "../tables/wick";
import { FEW } from "./planSeries";
import { noteWords, readSeries, seriesOf } from "./readSeries";

/** What an approval is made by. */
export interface ApprovalTables {
  readonly burnTests: BurnTests;
  readonly readings: Readings;
  /** Wax and scent of one candle in a vessel, in the unit of the weights; undefined where nobody knows. */
  readonly fillOf: (vessel: string) => number | undefined;
  /** As it stands, under its name; undefined where there is none. */
  readonly vessels: (TableRows<"vessels"> & { readonly name: string }) | undefined;
}

/**
 * Why a wick may not be approved, by what was seen or by the table; that it is already; or the one cell that it goes
 * into. One that is not approved and stands in the table all the same is said to be `unfit`.
 */
export type ApprovalPlan =
  | { readonly kind: "unseen" | "unfit" | "barred" | "standing"; readonly says: string }
  | {
      readonly kind: "ready";
      /** Of the table of vessels, from 0 below the heading. */
      readonly cell: { readonly row: number; readonly column: number; readonly text: string };
      /** What is asked about before it is written; none where all candles were finished and nothing was beyond. */
      readonly doubts: readonly string[];
      /** What is said once it is written. */
      readonly done: string;
    };

type Said = Extract<ApprovalPlan, { says: string }>;
const said = (kind: Said["kind"], says: string): Said => ({ kind, says });

/**
 * Approves the wick of a test for its vessel, by all candles of its series with that wick: what is approved is what was
 * seen. The wax and the loads that it holds for are those of the tests; the vessel's row names the wick alone.
 */
export function planApproval(test: string, tables: ApprovalTables, settings: Pick<Settings, "basis">): ApprovalPlan {
  const named = tables.burnTests.get(sameName(test));
  if (!named) return said("unseen", `${test} is not among the burn tests any more.`);
  const { vessel, wick } = named;
  if (vessel === "" || wick === "") {
    return said("unseen", `${test} names no ${vessel === "" ? "vessel" : "wick"}; write it.`);
  }
  const { candles, elsewhere } = seenOf(named, tables);
  const place = placeOf(vessel, tables.vessels);
  const standing = typeof place !== "string" && isSameWick(place.old, wick) ? standsIn(place, vessel) : "";
  const failed = candles.find(({ beyond }) => beyond.length > 0);
  if (failed) {
    const why = `${failed.test.test}, ${failed.beyond[0]}.`;
    return standing === ""
      ? said("unseen", `${wick} cannot be approved for ${vessel}: ${why}`)
      : said("unfit", `${standing}, and was beyond the limits: ${why} Name another one there.`);
  }
  if (standing !== "") return said("standing", `${standing}.`);
  if (!candles.some(isFinished)) {
    const why = `no candle is finished. ${openWords(candles)}.`;
    return said("unseen", `${wick} cannot be approved for ${vessel} yet: ${why}`);
  }
  if (typeof place === "string") return said("barred", place);
  const { name, row, column, old } = place;
  const burnt = alikeOf(named, [...candles, ...elsewhere], settings);
  const [counted, holds] = [`${burnt.length} ${burnt.length === 1 ? "candle" : "candles"}`, holdsFor(burnt, settings)];
  return {
    kind: "ready",
    cell: { row, column, text: wick },
    doubts: [
      ...doubtsOf(candles, settings),
      ...contradictionsOf(named, tables),
      ...failedElsewhere(elsewhere, settings),
      ...otherSpellings(named, tables),
      ...replaced(old, vessel),
    ],
    done: `${wick} stands in ${name} as the wick of ${vessel}, for what was burnt: ${counted} ${holds}. Poured in another way, Check says so. A burn-test laboratory has the last word.`,
  };
}

/** All tests of the series that a test belongs to. */
const seriesWith = (named: BurnTest, burnTests: BurnTests): readonly BurnTest[] =>
  seriesOf(burnTests).find((one) => one.includes(named)) ?? [named];

/** What was seen of the wick of a test in its vessel: in its own series, and in others. */
function seenOf(named: BurnTest, { burnTests, readings }: ApprovalTables) {
  const series = seriesWith(named, burnTests);
  const ofWick = [...burnTests.values()].filter(
    ({ vessel, wick }) => sameName(vessel) === sameName(named.vessel) && isSameWick(wick, named.wick),
  );
  const seen = (isOwn: boolean) =>
    ofWick
      .filter((one) => series.includes(one) === isOwn)
      .map((one) => seenCandle(one, readings.get(sameName(one.test)) ?? []));
  return { candles: seen(true), elsewhere: seen(false) };
}

/** The tests without a fault that say something of candles like this one: in its wax, and with a scent as it has. */
function alikeOf(named: BurnTest, candles: readonly SeenCandle[], { basis }: Pick<Settings, "basis">): BurnTest[] {
  const isScented = (test: BurnTest) => ofWax(test, basis) !== 0;
  return candles
    .filter((one) => isFinished(one) && one.beyond.length === 0)
    .map(({ test }) => test)
    .filter((test) => isWax(test, named.wax || USUAL) && isScented(test) === isScented(named));
}

/** A cell of the table of vessels, and the wick that it holds. */
interface Place {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  readonly old: string;
}

const standsIn = ({ name, old }: Place, vessel: string): string => `${old} stands in ${name} as the wick of ${vessel}`;

/** The cell of the vessel's wick and what it holds, or why there is none. */
function placeOf(vessel: string, table: ApprovalTables["vessels"]): Place | string {
  if (!table)
    return `There is no table of vessels to approve a wick in. Under Plan add starter tables, or choose yours under More tables; write ${vessel} there, then try again.`;
  const { name, columns, rows } = table;
  const { vessel: names, wick: column } = columns;
  if (names === undefined) return `${name} has no column for ${fieldName("vessels", "vessel")}; fix its heading.`;
  if (column === undefined) {
    return `${name} has no column for the wick. Write the heading Wick beside its last one, then try again.`;
  }
  const found = rows.flatMap((row, i) => (sameName(textIn(row[names])) === sameName(vessel) ? [i] : []));
  const [row, second] = found;
  if (row === undefined) return `${name} has no row for ${vessel}. Write one, then try again.`;
  if (second !== undefined)
    return `${vessel} stands ${found.length} times in ${name}. Leave one row of it, then try again.`;
  const cell = rows[row]?.[column];
  if (typeof cell === "object" && cell !== null) {
    return `The cell of the wick of ${vessel} in ${name} shows ${cell.error}; fix it first.`;
  }
  return { name, row, column, old: wickIn(textIn(cell)) };
}

const textIn = (cell: CellValue | undefined): string =>
  typeof cell === "string" || typeof cell === "number" ? String(cell).trim() : "";

/** What of its own candles leaves the wick in doubt. */
function doubtsOf(candles: readonly SeenCandle[], settings: Pick<Settings, "basis">): string[] {
  const finished = candles.filter(isFinished);
  const count = finished.length;
  const looked = candles.filter(({ remarks }) => remarks.length > 0);
  const unsure = candles.flatMap(({ test, wrong }) => wrong.map(({ text }) => `${test.test}: ${text}`));
  const without = finished.find(({ test }) => ofWax(test, settings.basis) === undefined)?.test;
  return [
    ...(count < candles.length ? [openWords(candles)] : []),
    ...(count < FEW
      ? [
          `only ${count} ${count === 1 ? "candle is" : "candles are"} finished: a fault in up to ${atMost(1 - passBound(count, count))} % of all is still possible; ${FEW} or more are advised`,
        ]
      : []),
    ...(looked[0] ? [`to look at in ${looked.length}: ${looked[0].test.test}, ${looked[0].remarks[0]}`] : []),
    ...noteWords(candles),
    ...(without ? [`${without.test} names no load: which loads it holds for is not known`] : []),
    ...(count === candles.length ? unsure.slice(0, 1) : []),
  ];
}

/** What does not agree in the figures of the wick's own series. */
function contradictionsOf(named: BurnTest, { burnTests, readings, fillOf }: ApprovalTables): readonly string[] {
  const wicks = readSeries(seriesWith(named, burnTests), readings, fillOf(named.vessel));
  return wicks.find(({ wick }) => sameName(wick) === sameName(named.wick))?.contradictions ?? [];
}

function openWords(candles: readonly SeenCandle[]): string {
  const open = candles.filter((one) => !isFinished(one));
  const of = `${open.length} of ${candles.length} ${candles.length === 1 ? "candle" : "candles"}`;
  return `${of} ${open.length === 1 ? "is" : "are"} not finished: ${open[0]?.test.test}, ${open[0]?.lacks[0]}`;
}

/** The vessel names one wick, whatever is poured into it. */
function failedElsewhere(candles: readonly SeenCandle[], settings: Pick<Settings, "basis">): string[] {
  const failed = candles.filter(({ beyond }) => beyond.length > 0);
  const [first] = failed;
  if (!first) return [];
  const more = failed.length > 1 ? ` (and ${failed.length - 1} more)` : "";
  return [
    `in another series it was beyond the limits, ${holdsFor([first.test], settings)}: ${first.test.test}, ${first.beyond[0]}${more}`,
  ];
}

/** Candles of the vessel whose wick may be this one under another spelling: they are not among those counted. */
function otherSpellings(named: BurnTest, { burnTests, readings }: ApprovalTables): string[] {
  const tests = [...burnTests.values()].filter(({ vessel }) => sameName(vessel) === sameName(named.vessel));
  const key = sameName(wickOf(named.wick).name);
  const isOwn = (name: string) => sameName(name) === key;
  const names = alikeWicks([named.wick, ...tests.map(({ wick }) => wick)]).find((group) => group.some(isOwn));
  if (!names) return [];
  const spelt = new Set(names.filter((name) => !isOwn(name)).map(sameName));
  const left = tests.filter(({ wick }) => spelt.has(sameName(wickOf(wick).name)));
  const seen = left.map((test) => seenCandle(test, readings.get(sameName(test.test)) ?? []));
  const failed = seen.find(({ beyond }) => beyond.length > 0);
  const tail = failed ? `, and ${failed.test.test} was beyond the limits: ${failed.beyond[0]}` : "";
  return [
    `${oneWickOrTwo(names)} ${list(
      left.map(({ test }) => test),
      "and",
    )} not counted here${tail}`,
  ];
}

const replaced = (old: string, vessel: string): string[] =>
  old === "" ? [] : [`${old} stands there as the wick of ${vessel}, and would be replaced`];

/** The wax, the scents and the loads of candles, in words. */
function holdsFor(tests: readonly BurnTest[], { basis }: Pick<Settings, "basis">): string {
  const loads = tests.flatMap((test) => ofWax(test, basis) ?? []);
  const [least, most] = [Math.min(...loads), Math.max(...loads)].map((load) => percent(load, 8));
  const scents = [...new Map(tests.map(({ scent }) => [sameName(scent), scent])).values()].filter((one) => one !== "");
  const at =
    loads.length === 0 ? "at a load not known" : `at ${least === most ? least : `${least} to ${most}`} % of wax`;
  const wax = tests[0]?.wax || "the usual wax";
  return `in ${wax} ${at}${scents.length > 0 ? ` with ${list(scents, "and")}` : ", without scent"}`;
}
