import { list } from "../../../core/check/list";
import { largest, least } from "../../../core/longLists";
import { onBasis } from "../../../core/scent/onBasis";
import type { Problem } from "../../problem";
import { sameName } from "../../sameName";
import { isFinished, seenCandle, wasLit } from "../../seenCandle";
import type { Settings } from "../../settings";
import type { BurnTest, BurnTests } from "../../tables/burnTests";
import type { Readings, TestReading } from "../../tables/readings";
import type { Vessel, Vessels } from "../../tables/vessels";
import { isSameWick } from "../../tables/wick";
import { loadText } from "../loadText";
import type { RunPlan, ScentRun } from "../runPlan";

/** What the usual wax is called in a run that names none. */
export const USUAL = "wax";
const SAME = 1e-9;

/** A test whose candle was burnt. */
interface Burnt extends BurnTest {
  readonly ofWax: number | undefined;
  readonly readings: readonly TestReading[];
}

/**
 * Vessels that are poured with another wick, in another wax or at another load than any candle that was burnt for them.
 * Nothing is said where no table of burn tests is kept.
 */
export function untestedCandles(
  { scents }: RunPlan,
  vessels: Vessels,
  tables: { readonly burnTests?: BurnTests | undefined; readonly readings?: Readings | undefined },
  settings: Pick<Settings, "basis">,
): Problem[] {
  if (!tables.burnTests) return [];
  const burnt = [...tables.burnTests.values()].flatMap((test): Burnt[] => {
    const readings = tables.readings?.get(sameName(test.test)) ?? [];
    if (!wasLit(readings)) return [];
    return [{ ...test, ofWax: ofWax(test, settings.basis), readings }];
  });
  return scents.flatMap((scent) => {
    const poured = new Map(scent.pots.flatMap(({ lines }) => lines.map(({ vessel }) => [sameName(vessel), vessel])));
    return [...poured].flatMap(([key, name]): Problem[] => {
      const vessel = vessels.get(key);
      const said = doubtOf(
        name,
        vessel,
        scent,
        burnt.filter((test) => sameName(test.vessel) === key),
      );
      if (said === "") return [];
      return [{ ...(vessel && placeOf(vessel)), severity: "warning", text: said, safety: true }];
    });
  });
}

const placeOf = ({ row }: Vessel) => ({ table: "vessels", row, field: "wick" }) as const;

function doubtOf(name: string, vessel: Vessel | undefined, scent: ScentRun, tests: readonly Burnt[]): string {
  const wick = vessel?.wick ?? "";
  const wax = waxOf(scent);
  const load = scent.loads["of wax"];
  // A candle without scent says nothing of one with it.
  const alike = tests.filter(
    (test) => isSameWick(test.wick, wick) && isWax(test, wax) && (test.ofWax === 0) === (load === 0),
  );
  const around = wick === "" ? [] : testsAround(load, alike);
  const poured = `${name}, ${[wick === "" ? "no approved wick," : `wick ${wick}`, `in ${wax}`, `at ${loadText(scent)}`].join(" ")}`;
  if (around.length > 0) return doubtOfTested(poured, scent, alike, around);
  const nearest = nearestOf(tests, wick, wax, load);
  const words = nearest ? `nearest test ${nearest.test}: ${wordsOf(nearest)}` : "no candle of this vessel was burnt";
  return `not tested: ${poured}; ${words}`;
}

/** The tests at this load, or at the nearest ones below and above it; none where it lies outside of all. */
function testsAround<T extends Pick<Burnt, "ofWax">>(load: number, tests: readonly T[]): T[] {
  const loads = tests.flatMap(({ ofWax }) => ofWax ?? []);
  const below = loads.filter((one) => one <= load + SAME);
  const above = loads.filter((one) => one >= load - SAME);
  if (below.length === 0 || above.length === 0) return [];
  const ends = [largest(below), least(above)];
  return tests.filter(({ ofWax }) => ofWax !== undefined && ends.some((end) => Math.abs(ofWax - end) <= SAME));
}

/** Being tested is not having passed, and what passed at another load says nothing of this one. */
function doubtOfTested(
  poured: string,
  { scent, loads }: ScentRun,
  alike: readonly Burnt[],
  around: readonly Burnt[],
): string {
  const seen = around.map((test) => seenCandle(test, test.readings));
  const failed = seen.find(({ beyond }) => beyond.length > 0);
  if (failed) return `tested, and beyond the limits: ${poured}; ${failed.test.test}: ${failed.beyond[0]}`;
  const finished = testsAround(
    loads["of wax"],
    alike.filter((test) => isFinished(seenCandle(test, test.readings))),
  );
  const open = seen.find((one) => !isFinished(one));
  if (open && finished.length === 0) return `not tested to the end: ${poured}; ${open.test.test}: ${open.lacks[0]}`;
  if (scent === "" || finished.some((test) => sameName(test.scent) === sameName(scent))) return "";
  const scents = [...new Set(finished.map((test) => test.scent || "a scent not named"))];
  return `tested only with ${list(scents, "and")}, not with ${scent}: ${poured}`;
}

/** The wax by the name it is poured under. */
export function waxOf({ wax, ingredients }: ScentRun): string {
  if (wax !== "") return wax;
  const waxes = ingredients.filter(({ basis }) => basis === "part").map(({ name }) => name);
  return waxes.length > 0 ? waxes.join(" and ") : USUAL;
}

/** A test that names no wax was burnt in the usual one. */
export const isWax = (test: BurnTest, wax: string): boolean => sameName(test.wax || USUAL) === sameName(wax);

/** The load of a test of its wax; a candle without a load had no scent. */
export function ofWax({ load, basis, scent, wrong }: BurnTest, usual: Settings["basis"]): number | undefined {
  if (load !== undefined) return onBasis(load, basis ?? usual, "of wax");
  return scent === "" && !wrong.some(({ field }) => field === "load") ? 0 : undefined;
}

function nearestOf(tests: readonly Burnt[], wick: string, wax: string, load: number): Burnt | undefined {
  const far = (test: Burnt) =>
    (isSameWick(test.wick, wick) ? 0 : 4) +
    (isWax(test, wax) ? 0 : 2) +
    (test.ofWax === undefined ? 1 : Math.min(1, Math.abs(test.ofWax - load)));
  return [...tests].sort((a, b) => far(a) - far(b))[0];
}

function wordsOf({ wick, wax, ofWax: load }: Burnt): string {
  const at = load === undefined ? "load not known" : `at ${loadText({ load, basis: "of wax" })}`;
  return `wick ${wick || "not named"} in ${wax || USUAL} ${at}`;
}
