import { sheetName } from "../../sheet/sheetName";
import { seriesBeside } from "../burning/seriesBeside";
import { draftOf, seriesPlan, shownOf } from "../burning/seriesDraft";
import type { TypedSeries } from "../burning/typedSeries";
import { planOf } from "../planner";
import { LOGGING } from "../words/logging";
import { SERIES } from "../words/series";
import { WRITING } from "../words/writing";
import type { Book } from "./book";

/** Writes a series if it is still what was shown: its tests, its readings and its cards in one step; gives the words. */
export async function writeSeries(
  { host, planner, kept, settings, rowsLeft, refresh, openSheets }: Book,
  typed: TypedSeries,
  shown: string | undefined,
): Promise<{ words: string; isWritten: boolean }> {
  if (!kept) throw new Error(LOGGING.settingsUnread);
  if (!settings) throw new Error(WRITING.fixSettings);
  const read = await refresh();
  const beside = seriesBeside(read, kept, settings, rowsLeft);
  if (beside.refused !== undefined) throw new Error(beside.refused);
  const draft = draftOf(typed, beside);
  const run = draft.given && (await planOf(planner, draft.given, settings, await openSheets(read, kept), kept.counts));
  const plan = run && seriesPlan(draft, run, beside);
  if (!plan?.ready || shownOf(plan) !== shown) return { words: SERIES.changed, isWritten: false };
  const { additions, cards, done } = plan.ready;
  const name = sheetName(cards.name, await host.sheetNames());
  await host.append([...additions, { ...cards, name }]);
  await refresh();
  return { words: done(name), isWritten: true };
}
