import { useCallback, useEffect, useMemo, useState } from "react";
import type { Host } from "../host/host";
import { buildRun, type Tables } from "../runsheet/buildRun";
import { CAUTIONS } from "../runsheet/cautions";
import { describeRun } from "../runsheet/describeRun";
import { KINDS, type KindName, matchColumns } from "../runsheet/kinds";
import { nextLot, sheetNameOf } from "../runsheet/nextLot";
import { loggedLots, type NewFactor, RUNS_LOG, readVessels } from "../runsheet/runsLog";
import { AfterPour } from "./AfterPour";
import { FirstUse } from "./FirstUse";
import { ChoiceField, TextField } from "./fields";
import { Preview } from "./Preview";
import { Problems } from "./Problems";
import { TableChoice } from "./TableChoice";
import { serialOf, today } from "./today";
import { useSettings } from "./useSettings";
import { type ReadTables, useTables } from "./useTables";

/** The tables that add to a run sheet and need not be there. */
const MORE = ["scents", "recipes", "stock", "prices", "vessels"] as const satisfies readonly KindName[];

/** The side pane: from a table of vessels and quantities to a run sheet. */
export function Pane({ host }: { host: Host }) {
  const [message, setMessage] = useState<{ text: string; bad: boolean }>();
  /** Writing under way: the share that is done, and the way to stop it. */
  const [writing, setWriting] = useState<{ share: number; stop: AbortController }>();
  const [written, setWritten] = useState<readonly string[]>([]);
  const [date, setDate] = useState(today);
  const onError = useCallback((error: unknown) => {
    setMessage({ text: error instanceof Error ? error.message : String(error), bad: true });
  }, []);
  const { kept, keep, wrong, settings } = useSettings(host, onError);
  const { sources, tables, refresh, choose, takeSelection } = useTables(host, onError);

  const columnsOf = useCallback(
    (kind: KindName, read: ReadTables): Readonly<Record<string, number | undefined>> => {
      const rows = read[kind];
      if (!rows) return {};
      const byHand = kept.columns[keyOf(kind, rows.name)] ?? {};
      const chosen = Object.entries({ ...matchColumns(kind, rows.headings), ...byHand });
      // A column taken away by hand is kept as -1: without it the headings would match again.
      return Object.fromEntries(chosen.filter(([, column]) => column >= 0 && column < rows.headings.length));
    },
    [kept.columns],
  );
  const runOf = useCallback(
    (read: ReadTables) => {
      if (!read.pour || !settings) return undefined;
      const kinds = (["pour", ...MORE] as const).flatMap((kind) => {
        const rows = read[kind];
        return rows ? [[kind, { kind, headings: rows.headings, rows: rows.rows, columns: columnsOf(kind, read) }]] : [];
      });
      return buildRun(Object.fromEntries(kinds) as Tables, settings);
    },
    [columnsOf, settings],
  );
  const run = useMemo(() => runOf(tables), [runOf, tables]);
  const serial = serialOf(date);
  const stops = run?.problems.filter((problem) => problem.stops).length ?? 0;
  const canWrite = run !== undefined && settings !== undefined && serial !== undefined && stops === 0 && !writing;

  const tableChoice = (kind: KindName) => (
    <TableChoice
      key={kind}
      kind={kind}
      sources={sources ?? []}
      rows={tables[kind]}
      columns={columnsOf(kind, tables)}
      onChoose={(name) => choose(kind, name)}
      onColumn={(role, column) => {
        const key = keyOf(kind, tables[kind]?.name ?? "");
        keep((before) => ({
          ...before,
          columns: { ...before.columns, [key]: { ...before.columns[key], [role]: column } },
        }));
      }}
    />
  );

  const write = async (): Promise<string | undefined> => {
    if (!canWrite || !settings || serial === undefined) return undefined;
    const stop = new AbortController();
    setWriting({ share: 0, stop });
    setMessage(undefined);
    try {
      // The table may have changed since the preview was drawn: what is written is what stands there now.
      const fresh = runOf((await refresh()) ?? tables);
      if (!fresh || fresh.problems.some((problem) => problem.stops)) {
        setMessage({ text: "The table has changed; mend what is listed first.", bad: true });
        return undefined;
      }
      const log = (await host.tables()).find(({ name }) => name === RUNS_LOG.table);
      const lot = nextLot(serial, await host.sheetNames(), log ? loggedLots(await host.read(log)) : []);
      const name = await host.addSheet(describeRun(fresh, { lot, date: serial, settings }), {
        signal: stop.signal,
        onProgress: (share) => setWriting({ share, stop }),
      });
      setMessage({ text: `Run sheet written: ${name}`, bad: false });
      return name;
    } catch (error) {
      if (stop.signal.aborted && error === stop.signal.reason)
        setMessage({ text: "Stopped. Nothing was written.", bad: false });
      else onError(error);
      return undefined;
    } finally {
      setWriting(undefined);
    }
  };

  useEffect(() => {
    if (!sources || writing) return;
    const begin = sheetNameOf("");
    host.sheetNames().then((names) => setWritten(names.filter((name) => name.startsWith(begin))), onError);
  }, [host, sources, writing, onError]);

  const vessels = useMemo(() => {
    const rows = tables.vessels;
    return readVessels(
      rows && { kind: "vessels", headings: rows.headings, rows: rows.rows, columns: columnsOf("vessels", tables) },
    );
  }, [tables, columnsOf]);

  const changeFactor = async ({ vessel, row, factor }: NewFactor) => {
    const rows = tables.vessels;
    const column = columnsOf("vessels", tables).factor;
    if (!rows || column === undefined) throw new Error("No column of the vessel table is chosen as the wax factor.");
    const value = Number(factor.toFixed(4));
    await host.write(rows.place.sheet, [
      { row: rows.place.row + 1 + row, column: rows.place.column + column, content: { number: value } },
    ]);
    await refresh();
    setMessage({ text: `${vessel} has the wax factor ${value} in ${rows.name} now.`, bad: false });
  };

  const number = (name: keyof typeof kept.typed, label: string, hint?: string) => (
    <TextField
      label={label}
      {...(hint ? { hint } : {})}
      value={kept.typed[name]}
      wrong={wrong[name]}
      onChange={(value) => keep((before) => ({ ...before, typed: { ...before.typed, [name]: value } }))}
    />
  );
  const setChoice = (change: Partial<typeof kept.choices>) =>
    keep((before) => ({ ...before, choices: { ...before.choices, ...change } }));
  const { unit } = kept.choices;

  return (
    <div className="pourwright-pane">
      <h1>Pour sheet</h1>
      <section aria-labelledby="pane-table">
        <h2 id="pane-table">Table</h2>
        {sources === undefined ? (
          <p>Reading the workbook…</p>
        ) : (
          <>
            {tables.pour ? (
              tableChoice("pour")
            ) : (
              <>
                <FirstUse host={host} unit={unit} onDone={refresh} onError={onError} />
                {sources.length > 0 && tableChoice("pour")}
              </>
            )}
            <button type="button" className="quiet" onClick={takeSelection}>
              Use the selected cells
            </button>
            {tables.pour && (
              <details>
                <summary>
                  More tables:{" "}
                  {MORE.filter((kind) => tables[kind])
                    .map((kind) => KINDS[kind].name)
                    .join(", ") || "none"}
                </summary>
                <p className="hint">
                  Scents: limits, temperatures, cure. Recipes: blends of waxes and oils, dye. Stock: what is missing and
                  the packs to buy. Prices: the cost. Vessels: the wax factors that pours show.
                </p>
                {MORE.map(tableChoice)}
              </details>
            )}
          </>
        )}
      </section>

      <section aria-labelledby="pane-settings">
        <h2 id="pane-settings">Settings</h2>
        <div className="pairs">
          <TextField
            label="Date"
            type="date"
            value={date}
            wrong={serial === undefined ? "choose a day" : undefined}
            onChange={setDate}
          />
          <ChoiceField
            label="Weights in"
            value={unit}
            choices={(["g", "kg", "oz", "lb"] as const).map((value) => ({ value, text: value }))}
            onChange={(value) => setChoice({ unit: value })}
          />
          {number("division", `Scale division (${unit})`)}
          {number("potCapacity", `Pot holds (${unit})`)}
          {number("loss", "Melted beyond the pour")}
          {number("waxFactor", "Usual wax factor")}
          {number("load", "Usual load")}
          <ChoiceField
            label="A load is a share"
            value={kept.choices.basis}
            choices={(["of wax", "of total"] as const).map((value) => ({ value, text: value }))}
            onChange={(basis) => setChoice({ basis })}
          />
          <ChoiceField
            label="Paper"
            value={kept.choices.paper}
            choices={[
              { value: "letter", text: "Letter" },
              { value: "a4", text: "A4" },
            ]}
            onChange={(paper) => setChoice({ paper })}
          />
          <ChoiceField
            label="Net weight label"
            value={kept.choices.label}
            choices={[
              { value: "us", text: "ounces and grams" },
              { value: "metric", text: "grams" },
            ]}
            onChange={(label) => setChoice({ label })}
          />
          <ChoiceField
            label="Weights on the sheet"
            value={kept.choices.live ? "live" : "frozen"}
            choices={[
              { value: "live", text: "live formulas" },
              { value: "frozen", text: "plain numbers" },
            ]}
            onChange={(value) => setChoice({ live: value === "live" })}
          />
        </div>
        <p className="hint">The usual factor, load and basis serve rows where the table gives none.</p>
      </section>

      {run && (
        <section aria-labelledby="pane-check">
          <h2 id="pane-check">Check</h2>
          <p role="status">{summary(stops, run.problems.length - stops)}</p>
          <Problems
            problems={run.problems}
            tables={tables}
            columnsOf={(kind) => columnsOf(kind, tables)}
            host={host}
            onError={onError}
          />
        </section>
      )}
      {run && settings && run.plan.totals.candles > 0 && (
        <section aria-labelledby="pane-preview">
          <h2 id="pane-preview">Preview</h2>
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
        sheets={written}
        plan={stops === 0 ? run?.plan : undefined}
        vessels={vessels}
        onWrite={write}
        onFactor={changeFactor}
        onMessage={(text) => setMessage({ text, bad: false })}
        onError={onError}
      />
      <footer>
        {writing ? (
          <div className="progress">
            <progress value={writing.share} aria-label="Writing the run sheet" />
            <button type="button" className="quiet" onClick={() => writing.stop.abort()}>
              Stop
            </button>
          </div>
        ) : (
          <button type="button" className="main" disabled={!canWrite} onClick={write}>
            Write run sheet
          </button>
        )}
        <p role={message?.bad ? "alert" : "status"} className={message?.bad ? "wrong" : "done"}>
          {message?.text}
        </p>
      </footer>
    </div>
  );
}

const keyOf = (kind: KindName, table: string): string => `${kind} ${table}`;

function summary(stops: number, looks: number): string {
  const count = (number: number, one: string, many: string) => `${number} ${number === 1 ? one : many}`;
  if (stops > 0) return `${count(stops, "thing", "things")} to mend before a sheet can be written.`;
  if (looks > 0) return `Ready, with ${count(looks, "thing", "things")} to look at.`;
  return "Nothing to mend.";
}
