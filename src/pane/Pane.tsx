import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { type Host, type SourceRows, StillCalculating } from "../host/host";
import { buildRun } from "../runsheet/buildRun";
import { CAUTIONS } from "../runsheet/cautions";
import type { Run } from "../runsheet/plan/makeRun";
import { isError, type Problem } from "../runsheet/problem";
import type { NewFactor } from "../runsheet/record/newFactors";
import { nextLot, withLot } from "../runsheet/record/nextLot";
import { loggedLots } from "../runsheet/record/runsLog";
import { sameName } from "../runsheet/sameName";
import type { Settings, WeightUnit } from "../runsheet/settings";
import { describeRun } from "../runsheet/sheet/describeRun";
import { starterSheet } from "../runsheet/sheet/starterSheets";
import { readTable } from "../runsheet/tables/readTables";
import {
  FURTHER_TYPE_IDS,
  type FurtherTypeId,
  TABLE_TYPE_IDS,
  TABLE_TYPES,
  type TableTypeId,
} from "../runsheet/tables/registry";
import type { Tables } from "../runsheet/tables/tableRows";
import type { Vessels } from "../runsheet/tables/vessels";
import { AfterPour } from "./AfterPour";
import { Button } from "./Button";
import { choosing, columnsOf, keyOf, leavingOut } from "./columns";
import { FirstUse } from "./FirstUse";
import { groupProblems } from "./groupProblems";
import { Preview } from "./Preview";
import { type Decisions, Problems } from "./Problems";
import { SettingFields } from "./SettingFields";
import { TableChoice } from "./TableChoice";
import { serialOf, today } from "./today";
import { useRunSheets } from "./useRunSheets";
import { type Kept, useSettings } from "./useSettings";
import { type ReadTables, useTables } from "./useTables";
import { useWork } from "./useWork";

/** The side pane: from a table of vessels and quantities to a run sheet. */
export function Pane({ host }: { host: Host }) {
  const [message, setMessage] = useState<{ text: string; bad: boolean }>();
  const onError = useCallback((error: unknown) => {
    setMessage({ text: error instanceof Error ? error.message : String(error), bad: true });
  }, []);
  const say = useCallback((text: string) => setMessage({ text, bad: false }), []);
  const clear = useCallback(() => setMessage(undefined), []);
  const { busy, run: doing } = useWork(clear, onError);
  /** Writing under way: the share that is done, and the way to stop it. */
  const [writing, setWriting] = useState<{ share: number; stop: AbortController }>();
  const [date, setDate] = useState(today);
  const { kept, keep, wrong, settings } = useSettings(host, onError);
  const { sources, tables, refresh, choose } = useTables(host, onError);
  const written = useRunSheets(host, sources, writing !== undefined, onError);
  /** How many rows below a table the maker said to leave out; asked again when there are more. */
  const [rowsLeft, setRowsLeft] = useState<ReadonlyMap<string, number>>(new Map());

  const run = useMemo(
    () => kept && settings && runOf(tables, kept, settings, rowsLeft),
    [tables, kept, settings, rowsLeft],
  );
  const groups = useMemo(() => groupProblems(run?.problems ?? []), [run]);
  const vessels = useMemo(() => vesselsOf(tables, kept), [tables, kept]);
  const serial = serialOf(date);
  const stops = groups.filter(({ problem }) => isError(problem)).length;
  const isReady = run !== undefined && serial !== undefined && stops === 0;

  /** The tables as they are now, and the run they make: what is written is what stands there, not what was drawn. */
  const fresh = async (): Promise<{ read: ReadTables; run: Run }> => {
    const read = await refresh();
    const now = kept && settings && runOf(read, kept, settings, rowsLeft);
    if (!now || now.problems.some(isError)) {
      throw new Error("The table has changed; fix what is listed first.");
    }
    return { read, run: now };
  };

  const write = async (): Promise<{ name: string; run: Run } | undefined> => {
    if (!kept || !settings || serial === undefined) return undefined;
    const stop = new AbortController();
    setWriting({ share: 0, stop });
    try {
      const { read, run } = await fresh();
      const lot = nextLot(serial, [
        ...kept.lots,
        ...(await textsWithLots(host)),
        ...(read.log ? loggedLots(read.log) : []),
      ]);
      const name = await host.addSheet(describeRun(run, { lot, date: serial, settings }), {
        signal: stop.signal,
        onProgress: (share) => setWriting({ share, stop }),
      });
      keep((before) => ({ ...before, lots: withLot(before.lots, lot) }));
      say(await wordsForNew(name, host));
      return { name, run };
    } catch (error) {
      if (!stop.signal.aborted || error !== stop.signal.reason) throw error;
      say("Stopped. Nothing was written.");
      return undefined;
    } finally {
      setWriting(undefined);
    }
  };

  // On a narrow page the footer may stand below what is seen.
  const footer = useRef<HTMLElement>(null);
  const { sheets } = written;
  useEffect(() => {
    if (message && sheets) footer.current?.scrollIntoView({ block: "nearest" });
  }, [message, sheets]);

  /** Changes a factor in the vessel table: found anew by its name, for the rows may have been sorted. */
  const changeFactor = async ({ vessel, old, factor }: NewFactor) => {
    const read = await refresh();
    const known = vesselsOf(read, kept).get(sameName(vessel));
    const column = kept && tableOf("vessels", read, kept)?.columns.factor;
    const place = read.vessels?.place;
    if (!place || !known || column === undefined) {
      throw new Error(`No row of a vessel table gives ${vessel} and its wax factor any more.`);
    }
    if (known.factor !== old) throw new Error(`${vessel} has another wax factor now. Check it, then press again.`);
    const value = Number(factor.toFixed(4));
    await host.write(place.sheet, [
      { row: place.row + 1 + known.row, column: place.column + column, content: { number: value } },
    ]);
    await refresh();
    say(`${vessel} has the wax factor ${value} in ${read.vessels?.name} now.`);
  };

  /** The log and the vessels as they are now, their water in the unit of a run. */
  const readLog = async (unit: WeightUnit) => {
    const read = await refresh();
    return { log: read.log, vessels: vesselsOf(read, kept, unit) };
  };

  const takeSelection = () =>
    doing(async () => {
      await choose("pour", await host.selection());
      say("The first row that is selected is read as headings.");
    });

  const addTable = (kind: FurtherTypeId) =>
    doing(async () => {
      if (kept) await host.addSheet(starterSheet(kind, kept.choices.unit));
      await choose(kind, undefined);
    });

  const decisions: Decisions = {
    onTakeIn: (table, kind, rows) =>
      doing(async () => {
        if (table.name !== "") await host.takeInRows(table.name, rows);
        const { place } = table;
        if (table.name !== "") await refresh();
        else await choose(kind, { ...table, place: { ...place, rows: place.rows + rows } });
        say(`${table.name || "The selection"} has ${rows} more ${rows === 1 ? "row" : "rows"} now.`);
      }),
    onLeaveRows: (table, rows) => setRowsLeft((before) => new Map(before).set(keyOfRows(table), rows)),
    onLeaveColumn: (kind, table, heading) =>
      keep((before) => ({ ...before, leftOut: leavingOut(before.leftOut, kind, table, heading) })),
  };

  const tableChoice = (kind: TableTypeId) => {
    const rows = tables[kind];
    const isNamed = sources?.some(({ name }) => sameName(name) === sameName(TABLE_TYPES[kind].name));
    return (
      <TableChoice
        key={kind}
        kind={kind}
        sources={sources ?? []}
        rows={rows}
        columns={rows && kept ? columnsOf(kind, rows, kept.columns).columns : {}}
        onChoose={(name) => choose(kind, name).catch(onError)}
        leftOut={kept?.leftOut[keyOf(kind, rows?.name ?? "")] ?? []}
        onAskAgain={() =>
          keep((before) => ({ ...before, leftOut: { ...before.leftOut, [keyOf(kind, rows?.name ?? "")]: [] } }))
        }
        onAdd={kind === "pour" || isNamed ? undefined : () => addTable(kind)}
        onColumn={(role, column) =>
          keep((before) => ({
            ...before,
            columns: choosing(before.columns, kind, rows?.name ?? "", role, column),
          }))
        }
      />
    );
  };

  // A good word from before says nothing beside what is wrong now.
  const shown = message && (message.bad || stops === 0) ? message : undefined;
  return (
    <div className="pourwright-pane">
      <h1>Run sheet</h1>
      <a href="help/run-sheet.html" target="_blank" rel="noreferrer">
        How a run sheet is made
      </a>
      <section aria-labelledby="pane-table">
        <h2 id="pane-table">Table</h2>
        {sources === undefined || kept === undefined ? (
          <p>Reading the workbook…</p>
        ) : (
          <>
            {tables.pour ? (
              tableChoice("pour")
            ) : (
              <>
                <FirstUse
                  host={host}
                  unit={kept.choices.unit}
                  onDone={() => choose("pour", undefined)}
                  busy={busy}
                  doing={doing}
                />
                {sources.length > 0 && tableChoice("pour")}
              </>
            )}
            <Button onPress={takeSelection}>Use the selected cells</Button>
            {tables.pour && (
              <details>
                <summary>
                  More tables:{" "}
                  {FURTHER_TYPE_IDS.filter((kind) => tables[kind])
                    .map((kind) => TABLE_TYPES[kind].name)
                    .join(", ") || "none"}
                </summary>
                <p className="hint">
                  Found by these names, or choose one.{" "}
                  {FURTHER_TYPE_IDS.map((kind) => TABLE_TYPES[kind].gives).join(" ")}
                </p>
                {FURTHER_TYPE_IDS.map(tableChoice)}
              </details>
            )}
          </>
        )}
      </section>

      {kept && (
        <section aria-labelledby="pane-settings">
          <h2 id="pane-settings">Settings</h2>
          <SettingFields kept={kept} keep={keep} wrong={wrong} usual={run?.usual} date={date} onDate={setDate} />
        </section>
      )}

      {run && (
        <section aria-labelledby="pane-check">
          <h2 id="pane-check" tabIndex={-1}>
            Check
          </h2>
          <p role="status">{summary(stops, groups.length - stops)}</p>
          <Problems groups={groups} tables={tables} kept={kept} host={host} onError={onError} decisions={decisions} />
          {run.leftOut > 0 && (
            <p className="hint">
              {run.leftOut === 1 ? "1 row has" : `${run.leftOut} rows have`} no quantity and will not be poured.
            </p>
          )}
        </section>
      )}
      {run && settings && run.plan.totals.candles > 0 && (
        <section aria-labelledby="pane-preview">
          <h2 id="pane-preview">Preview</h2>
          {stops > 0 && <p className="hint">Without the rows that are to be fixed.</p>}
          <Preview plan={run.plan} settings={settings} />
          <details>
            <summary>Take care</summary>
            <ul>
              {CAUTIONS.map((caution) => (
                <li key={caution}>{caution}</li>
              ))}
            </ul>
          </details>
        </section>
      )}
      <AfterPour
        host={host}
        sheets={sheets}
        sheet={written.sheet}
        onChoose={written.choose}
        plan={stops === 0 ? run?.plan : undefined}
        log={tables.log}
        vessels={vessels}
        busy={busy}
        doing={doing}
        onWrite={write}
        onFresh={fresh}
        onReadLog={readLog}
        onFactor={changeFactor}
        onMessage={say}
      />
      <footer ref={footer}>
        <Button
          look="main"
          off={!isReady || busy}
          describedBy="pane-why"
          onPress={() =>
            doing(async () => {
              await write();
            })
          }
        >
          Write run sheet
        </Button>
        <p id="pane-why" className="hint">
          {sources &&
            kept &&
            why(run, stops, groups.length - stops, Object.keys(wrong).length > 0 || serial === undefined)}
        </p>
        {writing && (
          <div className="progress">
            <progress value={writing.share} aria-label="Writing the run sheet" />
            <Button onPress={() => writing.stop.abort()}>Stop</Button>
          </div>
        )}
        <p role="status" className="done">
          {shown && !shown.bad ? shown.text : ""}
        </p>
        <p role="alert" className="wrong">
          {shown?.bad ? shown.text : ""}
        </p>
      </footer>
    </div>
  );
}

/** What may hold lots on the sheets themselves: their titles, and their names where a title was written over. */
const textsWithLots = async (host: Host): Promise<string[]> =>
  (await host.firstCells()).flatMap(({ sheet, value }) => [sheet, String(value ?? "")]);

/** A table as the run sheet reads it, with what was chosen and decided by hand. */
function tableOf<K extends TableTypeId>(
  kind: K,
  read: ReadTables,
  kept: Kept,
  rowsLeft: ReadonlyMap<string, number> = new Map(),
): Tables[K] | undefined {
  const source = read[kind];
  if (!source) return undefined;
  const { headings, rows, hidden, below = 0 } = source;
  const { columns } = columnsOf(kind, source, kept.columns);
  const leftOut = kept.leftOut[keyOf(kind, source.name)];
  const isLeftOut = rowsLeft.get(keyOfRows(source)) === below;
  return {
    type: kind,
    headings,
    rows,
    hidden,
    columns,
    leftOut,
    below: { rows: below, isLeftOut },
  } as unknown as Tables[K];
}

/** The vessels by name, their water in this unit or that of the settings. */
const vesselsOf = (read: ReadTables, kept: Kept | undefined, unit = kept?.choices.unit): Vessels =>
  (kept && unit && readTable(tableOf("vessels", read, kept), unit)) ?? new Map();

function runOf(
  read: ReadTables,
  kept: Kept,
  settings: Settings,
  rowsLeft: ReadonlyMap<string, number>,
): Run | undefined {
  const tables = Object.fromEntries(TABLE_TYPE_IDS.map((kind) => [kind, tableOf(kind, read, kept, rowsLeft)]));
  if (!tables.pour) return undefined;
  const run = buildRun(tables as unknown as Tables, settings);
  const lost = Object.entries(tables).flatMap(([kind, table]): Problem[] =>
    table ? columnsOf(kind as TableTypeId, read[kind as TableTypeId] as SourceRows, kept.columns).lost : [],
  );
  return lost.length === 0 ? run : { ...run, problems: [...run.problems, ...lost] };
}

/** By what it is remembered how many rows below a table were left out. */
const keyOfRows = ({ name, place }: SourceRows): string => JSON.stringify([name, name === "" ? place : ""]);

/** A new run sheet is only said to be written once its numbers are there. */
async function wordsForNew(name: string, host: Host): Promise<string> {
  try {
    await host.readSheet(name);
    return `Run sheet written: ${name}`;
  } catch (error) {
    if (!(error instanceof StillCalculating)) throw error;
    return `${name} is on its sheet, and its numbers are still being worked out. Wait until they have come before you pour.`;
  }
}

function summary(stops: number, checks: number): string {
  if (stops > 0) return `${things(stops)} to fix before a sheet can be written.`;
  if (checks > 0) return `Ready, with ${things(checks)} to check.`;
  return "Nothing to fix.";
}

/** Beside the button: why no run sheet can be written, or what to check before. */
function why(run: Run | undefined, stops: number, checks: number, isSettingWrong: boolean): string {
  if (isSettingWrong) return "Fix the settings first.";
  if (!run) return "Choose a table to pour from first.";
  if (stops > 0) return `${things(stops)} to fix first: see Check.`;
  return checks > 0 ? `${things(checks)} to check first: see Check.` : "";
}

const things = (number: number) => `${number} ${number === 1 ? "thing" : "things"}`;
