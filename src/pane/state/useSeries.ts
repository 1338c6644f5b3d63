import { useMemo, useRef, useState } from "react";
import { sameName } from "../../runsheet/sameName";
import { inOrderOfName, wickOf } from "../../runsheet/tables/wick";
import type { Book } from "../actions/book";
import { writeSeries } from "../actions/writeSeries";
import { seriesBeside } from "../burning/seriesBeside";
import { draftOf, type SeriesPlan, seriesPlan, shownOf } from "../burning/seriesDraft";
import { type SeriesField, type TypedSeries, wicksIn, withUsual } from "../burning/typedSeries";
import type { OpenSheets } from "../openSheets";
import { SERIES } from "../words/series";
import { WRITING } from "../words/writing";
import { usePlan } from "./usePlan";
import type { ReadTables } from "./useTables";
import type { RunTask } from "./useTask";

/** What is typed of a burn-test series, what it takes, and the press that writes it. Read only while somebody looks. */
export function useSeries(
  book: Book,
  read: ReadTables,
  isShown: boolean,
  open: OpenSheets,
  run: RunTask,
  onError: (error: unknown) => void,
) {
  const { kept, settings, rowsLeft, planner } = book;
  const [isPressed, setPressed] = useState(false);
  const [given, setGiven] = useState<Partial<TypedSeries>>({});
  const beside = useMemo(
    () => (isShown && kept && settings ? seriesBeside(read, kept, settings, rowsLeft) : undefined),
    [isShown, read, kept, settings, rowsLeft],
  );
  const typed = useMemo(() => withUsual(given, beside), [given, beside]);
  const draft = useMemo(() => beside && draftOf(typed, beside), [typed, beside]);
  const planned = usePlan(planner, draft?.given, settings, open, kept?.counts, onError);
  const isWorking = draft?.given !== undefined && planned?.given !== draft.given;
  const plan = useMemo(
    () =>
      draft && beside && planned && planned.given === draft.given ? seriesPlan(draft, planned.run, beside) : undefined,
    [draft, beside, planned],
  );
  // What was worked out last stays until the next has come: else all would jump at each letter.
  const last = useRef<SeriesPlan | undefined>(undefined);
  if (!isWorking) last.current = plan;
  const shownPlan = plan ?? last.current;
  const refused = kept && !settings ? WRITING.fixSettings : beside?.refused;
  const write = async () => {
    setPressed(true);
    if (!plan?.ready || refused !== undefined) return;
    const shown = shownOf(plan);
    await run(SERIES.write, async () => {
      const { words, isWritten } = await writeSeries(book, typed, shown);
      if (isWritten) {
        // The next series is another one: of another vessel, or of other wicks.
        setGiven(({ vessel, width, wicks, code, ...rest }) => rest);
        setPressed(false);
      }
      return words;
    });
  };
  return {
    typed,
    type: (field: SeriesField, text: string) => setGiven((before) => ({ ...before, [field]: text })),
    names: beside?.names,
    basis: settings?.basis ?? "of wax",
    knownWicks: knownWicks(typed.wicks, [...(beside?.names.wick.values() ?? [])]),
    addWick: (wick: string) =>
      setGiven((before) => ({ ...before, wicks: [...wicksIn(before.wicks ?? ""), wick].join("\n") })),
    refused,
    isWorking,
    fixes: shownPlan?.fixes ?? [],
    ready: shownPlan?.ready,
    wrong: { ...(isPressed && draft?.blank), ...draft?.wrong, ...plan?.wrong },
    write,
  } as const;
}

/** The known wicks, and which of them are typed. */
function knownWicks(typed: string, known: readonly string[]): { wick: string; isChosen: boolean }[] {
  const nameOf = (wick: string) => sameName(wickOf(wick).name);
  const chosen = wicksIn(typed).map(nameOf);
  const inOrder = [...known].sort(inOrderOfName);
  return inOrder.map((wick) => ({ wick, isChosen: chosen.includes(nameOf(wick)) }));
}

export type SeriesState = ReturnType<typeof useSeries>;
