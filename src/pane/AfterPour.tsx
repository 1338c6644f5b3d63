import { useCallback, useEffect, useState } from "react";
import { plain } from "../core/check/plain";
import type { Host } from "../host/host";
import { compareRuns } from "../runsheet/compareRuns";
import { freezeRun } from "../runsheet/freezeRun";
import type { RunPlan } from "../runsheet/planRun";
import { isPoured, type PouredRun, readBack } from "../runsheet/readBack";
import {
  heavyCandles,
  type KnownVessels,
  loggedLots,
  logRows,
  logSheet,
  type NewFactor,
  newFactors,
  RUNS_LOG,
} from "../runsheet/runsLog";
import { ChoiceField } from "./fields";
import { PrintButton } from "./PrintButton";

/** What is done with run sheets that are written: freeze, compare, take in what was poured, learn the factors. */
export function AfterPour(props: {
  host: Host;
  /** The run sheets of the workbook, the newest last. */
  sheets: readonly string[];
  plan: RunPlan | undefined;
  vessels: KnownVessels;
  /** Writes a new run sheet from the table as it is now; gives its name, or nothing when it was not written. */
  onWrite: () => Promise<string | undefined>;
  /** Changes a factor in the vessel table. */
  onFactor: (factor: NewFactor) => Promise<void>;
  onMessage: (text: string) => void;
  onError: (error: unknown) => void;
}) {
  const { host, sheets, plan, vessels, onWrite, onFactor, onMessage, onError } = props;
  const [chosen, setChosen] = useState<string>();
  const [changes, setChanges] = useState<{ from: string; to?: string; list: readonly string[] }>();
  const [factors, setFactors] = useState<readonly NewFactor[]>([]);
  const [busy, setBusy] = useState(false);
  const sheet = sheets.find((name) => name === chosen) ?? sheets.at(-1) ?? "";

  const readLog = useCallback(async () => {
    const log = (await host.tables()).find(({ name }) => name === RUNS_LOG.table);
    return log && host.read(log);
  }, [host]);

  // The log says what it has learnt as soon as the pane knows vessels.
  useEffect(() => {
    readLog().then((log) => setFactors(log ? newFactors(log, vessels) : []), onError);
  }, [readLog, vessels, onError]);

  const run = (work: () => Promise<void>) => async () => {
    setBusy(true);
    try {
      await work();
    } catch (error) {
      onError(error);
    } finally {
      setBusy(false);
    }
  };
  const readRun = async (): Promise<PouredRun> => {
    const read = readBack(await host.readSheet(sheet));
    if (!read) throw new Error(`${sheet} is no run sheet any more: its first line or its date is gone.`);
    return read;
  };

  const freeze = run(async () => {
    const cells = freezeRun(await host.readSheet(sheet));
    if (cells.length === 0) throw new Error(`${sheet} is frozen already.`);
    await host.write(sheet, cells);
    onMessage(`${sheet} is frozen: its weights are plain numbers now.`);
  });
  const compare = run(async () => {
    if (plan) setChanges({ from: sheet, list: compareRuns(await readRun(), plan) });
  });
  const rebuild = run(async () => {
    if (!plan) return;
    const list = compareRuns(await readRun(), plan);
    const name = await onWrite();
    if (name === undefined) return;
    setChosen(name);
    setChanges({ from: sheet, to: name, list });
  });
  const takeIn = run(async () => {
    const poured = await readRun();
    const wrong = [...poured.wrong, ...heavyCandles(poured, vessels)];
    if (wrong.length > 0) throw new Error(wrong.slice(0, 3).join(". "));
    if (!isPoured(poured)) {
      throw new Error(`Nothing is written on ${sheet} yet: fill in actual weights, good ones or one candle's weight.`);
    }
    const log = await readLog();
    if (log && loggedLots(log).includes(poured.lot)) {
      throw new Error(`Lot ${poured.lot} is in the runs log already. Take its rows out there to take it in again.`);
    }
    const rows = logRows(poured, vessels);
    if (log)
      await host.addRows(
        RUNS_LOG.table,
        RUNS_LOG.columns.map(({ heading }) => heading),
        rows,
      );
    else await host.addSheet(logSheet(rows));
    const now = await readLog();
    setFactors(now ? newFactors(now, vessels) : []);
    onMessage(`Lot ${poured.lot} added to the runs log, ${rows.length} ${rows.length === 1 ? "row" : "rows"}.`);
  });

  if (sheets.length === 0) return null;
  const changed = factors.filter(({ old, factor }) => old === undefined || Math.abs(old - factor) > 5e-5);
  return (
    <section aria-labelledby="pane-written">
      <h2 id="pane-written">Written run sheets</h2>
      <ChoiceField
        label="Run sheet"
        value={sheet}
        choices={sheets.map((value) => ({ value, text: value }))}
        onChange={(value) => {
          setChosen(value);
          setChanges(undefined);
        }}
      />
      <div className="buttons">
        <button type="button" className="quiet" disabled={busy || !plan} onClick={compare}>
          What has changed since
        </button>
        <button type="button" className="quiet" disabled={busy || !plan} onClick={rebuild}>
          Rebuild it
        </button>
        <button type="button" className="quiet" disabled={busy} onClick={freeze}>
          Freeze it
        </button>
        <button type="button" className="quiet" disabled={busy} onClick={takeIn}>
          Take in what was poured
        </button>
        <PrintButton host={host} sheet={sheet} onError={onError} />
      </div>
      {changes && (
        <div role="status">
          <p>
            {changes.to ? `${changes.to} is new; ${changes.from} stays as it is. ` : ""}
            {changes.list.length === 0
              ? "Nothing has changed: the table makes the same sheet."
              : `The table makes these changes to ${changes.from}:`}
          </p>
          <ul>
            {changes.list.map((change) => (
              <li key={change}>{change}</li>
            ))}
          </ul>
        </div>
      )}
      {changed.length > 0 && (
        <>
          <h3>Wax factors the log shows</h3>
          <ul className="factors">
            {changed.map((one) => (
              <li key={one.vessel}>
                <span>
                  {one.vessel}: {shown(one.factor)}
                  {one.spread === undefined
                    ? ", from one pour: how sure is not known yet"
                    : ` ± ${shown(one.spread)} (95 %), from ${one.pours} pours`}
                </span>
                <button type="button" className="quiet" disabled={busy} onClick={run(() => onFactor(one))}>
                  Change {one.vessel} from {one.old === undefined ? "blank" : shown(one.old)} to {shown(one.factor)}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

const shown = (factor: number): string => plain(Number(factor.toFixed(4)));
