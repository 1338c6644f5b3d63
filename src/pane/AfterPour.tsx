import { useEffect, useMemo, useRef, useState } from "react";
import { plain } from "../core/check/plain";
import type { Host, SourceRows } from "../host/host";
import type { Run } from "../runsheet/buildRun";
import { compareRuns } from "../runsheet/compareRuns";
import { freezeRun } from "../runsheet/freezeRun";
import type { RunPlan } from "../runsheet/planRun";
import { isPoured, type PouredRun, readBack } from "../runsheet/readBack";
import type { KnownVessels } from "../runsheet/readVessels";
import {
  doubts,
  heavyCandles,
  loggedLots,
  logRows,
  logSheet,
  type NewFactor,
  newFactors,
  RUNS_LOG,
} from "../runsheet/runsLog";
import { Button } from "./Button";
import { ChoiceField } from "./fields";

/** What stands below the buttons: a sentence and a list, about one sheet. */
interface Report {
  readonly sheet: string;
  readonly says: string;
  readonly list: readonly string[];
  /** What must be pressed for once more before it is logged. */
  readonly isAsking?: boolean;
}

/** What is done with run sheets that are written: freeze, compare, take in what was poured, learn the factors. */
export function AfterPour(props: {
  host: Host;
  /** The run sheets of the workbook, the newest last. */
  sheets: readonly string[];
  plan: RunPlan | undefined;
  log: SourceRows | undefined;
  vessels: KnownVessels;
  busy: boolean;
  /** Does one thing at a time, and shows what went wrong. */
  doing: (work: () => Promise<void>) => Promise<void>;
  /** Writes a new run sheet from the table as it is now; gives nothing when it was not written. */
  onWrite: () => Promise<{ name: string; run: Run } | undefined>;
  /** The run that the tables make now. */
  onFresh: () => Promise<{ run: Run }>;
  /** The log and the vessels as they are now; what is shown follows them. */
  onReadLog: () => Promise<{ log: SourceRows | undefined; vessels: KnownVessels }>;
  /** Changes a factor in the vessel table. */
  onFactor: (factor: NewFactor) => Promise<void>;
  onMessage: (text: string) => void;
}) {
  const { host, sheets, plan, log, vessels, busy, doing, onWrite, onFresh, onReadLog, onFactor, onMessage } = props;
  const [chosen, setChosen] = useState<string>();
  const [report, setReport] = useState<Report>();
  const sheet = sheets.find((name) => name === chosen) ?? sheets.at(-1) ?? "";
  const reportAt = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (report) reportAt.current?.scrollIntoView({ block: "nearest" });
  }, [report]);
  const factors = useMemo(() => (log ? newFactors(log, vessels) : []), [log, vessels]);

  const readRun = async (): Promise<PouredRun> => {
    const read = readBack(await host.readSheet(sheet));
    if (!read) throw new Error(`${sheet} is no run sheet any more: its first line, its date or its unit is gone.`);
    return read;
  };
  const changes = (old: PouredRun, now: RunPlan, to?: string): Report => {
    const list = compareRuns(old, now);
    const begin = to === undefined ? "" : `${to} is new; ${sheet} stays as it is. `;
    const says =
      list.length === 0
        ? "Nothing has changed in candles, weights, pots, steps and cure. Limits, shelf and cost are not compared."
        : `The table makes these changes to ${sheet}:`;
    return { sheet, says: begin + says, list };
  };

  const freeze = async () => {
    const cells = freezeRun(await host.readSheet(sheet));
    if (cells.length === 0) throw new Error(`${sheet} is frozen already.`);
    await host.write(sheet, cells);
    setReport(undefined);
    onMessage(`${sheet} is frozen: its weights are plain numbers now.`);
  };
  const compare = async () => {
    const { run } = await onFresh();
    setReport(changes(await readRun(), run.plan));
  };
  const rebuild = async () => {
    const old = await readRun();
    const written = await onWrite();
    if (!written) return;
    setChosen(written.name);
    setReport({ ...changes(old, written.run.plan, written.name), sheet: written.name });
  };
  /** Asks about what may be a slip, unless it has just been asked about. */
  const takeIn = async (asked: readonly string[] = []) => {
    setReport(undefined);
    const poured = await readRun();
    const { log: old, vessels: known } = await onReadLog();
    const wrong = [...poured.wrong, ...heavyCandles(poured, known)];
    if (wrong.length > 0) throw new Error(wrong.slice(0, 3).join(". "));
    if (!isPoured(poured)) {
      throw new Error(`Nothing is written on ${sheet} yet: fill in actual weights, good ones or one candle's weight.`);
    }
    if (old && loggedLots(old).includes(poured.lot)) {
      throw new Error(`Lot ${poured.lot} is in the runs log already. Take its rows out there to take it in again.`);
    }
    const list = doubts(poured, known);
    if (list.length > 0 && list.join() !== asked.join()) {
      const says = "Nothing is in the log yet. Look at these first; a lot goes into the log only once:";
      setReport({ sheet, says, list, isAsking: true });
      return;
    }
    const rows = logRows(poured, known);
    const headings = RUNS_LOG.columns.map(({ heading }) => heading);
    if (old) await host.addRows(RUNS_LOG.table, headings, rows);
    else await host.addSheet(logSheet(rows));
    const after = await onReadLog();
    const shows = after.log && newFactors(after.log, after.vessels).some(isNew) ? " See the wax factors it shows." : "";
    // The button that was pressed may be gone now; the keyboard goes on from here.
    reportAt.current?.focus();
    const added = `${rows.length} ${rows.length === 1 ? "row" : "rows"}`;
    onMessage(`Lot ${poured.lot} added to the runs log, ${added}.${shows}`);
  };

  if (sheets.length === 0) return null;
  const isAsked = report?.isAsking && report.sheet === sheet;
  const button = (words: string, work: () => Promise<void>, off = false) => (
    <Button off={busy || off} onPress={() => doing(work)}>
      {words}
    </Button>
  );
  const changed = factors.filter(isNew);
  return (
    <section aria-labelledby="pane-written">
      <h2 id="pane-written">Written run sheets</h2>
      <ChoiceField
        label="Run sheet"
        value={sheet}
        choices={sheets.map((value) => ({ value, text: value }))}
        onChange={(value) => {
          setChosen(value);
          setReport(undefined);
        }}
      />
      <div className="buttons">
        {button("What has changed since", compare, !plan)}
        {button("Rebuild it", rebuild, !plan)}
        {button("Freeze it", freeze)}
        {button("Take in what was poured", () => takeIn())}
        {host.print && button("Print or save as PDF", async () => host.print?.(sheet))}
      </div>
      {isAsked && button("Take it in all the same", () => takeIn(report.list))}
      <div role="status" ref={reportAt} tabIndex={-1}>
        {report && (
          <>
            <p>{report.says}</p>
            <ul>
              {report.list.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </>
        )}
      </div>
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
                {button(
                  `Change ${one.vessel} from ${one.old === undefined ? "blank" : shown(one.old)} to ${shown(one.factor)}`,
                  () => onFactor(one),
                )}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** Whether it is another factor than the vessel table has, to the four digits that are kept. */
const isNew = ({ old, factor }: NewFactor): boolean => old === undefined || Math.abs(old - factor) > 5e-5;

const shown = (factor: number): string => plain(Number(factor.toFixed(4)));
