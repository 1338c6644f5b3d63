import { useEffect, useId, useMemo, useRef, useState } from "react";
import type { Host, SourceRows } from "../host/host";
import type { Run } from "../runsheet/plan/makeRun";
import type { RunPlan } from "../runsheet/plan/runPlan";
import { compareRuns } from "../runsheet/record/compareRuns";
import { formatFactor, type NewFactor, newFactors } from "../runsheet/record/newFactors";
import { massReport, pourWarnings } from "../runsheet/record/pourWarnings";
import { isPoured, type PouredRun, readBack } from "../runsheet/record/readBack";
import { copiesOf, type RunSheet } from "../runsheet/record/runSheets";
import { loggedLots, logHeadings, logRows, logSheet } from "../runsheet/record/runsLog";
import type { WeightUnit } from "../runsheet/settings";
import { freezeRun } from "../runsheet/sheet/freezeRun";
import type { Vessels } from "../runsheet/tables/vessels";
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

/** What is done with run sheets that are written: compare, turn into plain numbers, log the pour, learn the factors. */
export function AfterPour(props: {
  host: Host;
  /** The run sheets of the workbook, the newest last. */
  sheets: readonly RunSheet[];
  /** The one that the buttons act on. */
  sheet: RunSheet | undefined;
  onChoose: (name: string) => void;
  plan: RunPlan | undefined;
  log: SourceRows | undefined;
  vessels: Vessels;
  busy: boolean;
  /** Does one thing at a time, and shows what went wrong. */
  doing: (work: () => Promise<void>) => Promise<void>;
  /** Writes a new run sheet from the table as it is now; gives nothing when it was not written. */
  onWrite: () => Promise<{ name: string; run: Run } | undefined>;
  /** The run that the tables make now. */
  onFresh: () => Promise<{ run: Run }>;
  /** The log and the vessels as they are now, their water in this unit; what is shown follows them. */
  onReadLog: (unit: WeightUnit) => Promise<{ log: SourceRows | undefined; vessels: Vessels }>;
  /** Changes a factor in the vessel table. */
  onFactor: (factor: NewFactor) => Promise<void>;
  onMessage: (text: string) => void;
}) {
  const { host, sheets, plan, log, vessels, busy, doing, onChoose, onWrite, onFresh, onReadLog, onFactor, onMessage } =
    props;
  const [report, setReport] = useState<Report>();
  const reportAt = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (report) reportAt.current?.scrollIntoView({ block: "nearest" });
  }, [report]);
  const factors = useMemo(() => (log ? newFactors(log, vessels) : []), [log, vessels]);
  const factorId = useId();
  if (!props.sheet) return null;
  const chosen = props.sheet;
  const sheet = chosen.name;
  const copies = copiesOf(chosen, sheets).map(({ name }) => name);

  const readRun = async (): Promise<PouredRun> => {
    const read = readBack(await host.readSheet(sheet));
    if (!read) throw new Error(`${sheet} is no run sheet any more: its first line, its date or its unit is gone.`);
    return read;
  };
  const changes = (old: PouredRun, now: RunPlan, to?: string): Report => {
    const begin = to === undefined ? "" : `${to} is new; ${sheet} stays as it is. `;
    if (old.unplanned.length > 0) {
      return { sheet, says: `${begin}Nothing is compared while ${sheet} has cells to fix:`, list: old.unplanned };
    }
    const list = compareRuns(old, now);
    const says =
      list.length === 0
        ? "Nothing has changed in candles, weights, pots, steps and cure. Limits, shelf and cost are not compared."
        : `The table makes these changes to ${sheet}:`;
    return { sheet, says: begin + says, list };
  };

  const freeze = async () => {
    const cells = freezeRun(await host.readSheet(sheet));
    if (cells.length === 0) throw new Error(`${sheet} holds plain numbers already.`);
    await host.write(sheet, cells);
    setReport(undefined);
    onMessage(`${sheet} holds plain numbers now.`);
  };
  const compare = async () => {
    const { run } = await onFresh();
    setReport(changes(await readRun(), run.plan));
  };
  const rebuild = async () => {
    const old = await readRun();
    const written = await onWrite();
    if (!written) return;
    onChoose(written.name);
    setReport({ ...changes(old, written.run.plan, written.name), sheet: written.name });
  };
  /** Asks about what may be a slip, unless just that was asked about before. */
  const logPour = async (asked?: readonly string[]) => {
    setReport(undefined);
    const poured = await readRun();
    const { log: old, vessels: known } = await onReadLog(poured.unit);
    if (poured.wrong.length > 0) throw new Error(`Nothing is logged. ${poured.wrong.slice(0, 3).join(". ")}.`);
    if (!isPoured(poured)) {
      throw new Error(`Nothing is written on ${sheet} yet: fill in actual weights, good candles or the weight of one.`);
    }
    if (old && loggedLots(old).includes(poured.lot)) {
      throw new Error(`Lot ${poured.lot} is in the runs log already. Take its rows out there to log it again.`);
    }
    const list = [
      ...copies.map((name) => `${name} carries the same lot, ${poured.lot}: is ${sheet} the one that was poured by?`),
      ...pourWarnings(poured, known, old),
    ];
    if (list.length > 0 && JSON.stringify(list) !== JSON.stringify(asked)) {
      const begin = asked ? "This has changed since it was asked. " : "";
      const says = `${begin}Nothing is in the log yet. Check these first; a lot is logged only once:`;
      setReport({ sheet, says, list, isAsking: true });
      return;
    }
    const rows = logRows(poured, known);
    if (old) await host.addRows(old.name, logHeadings(old), rows);
    else await host.addSheet(logSheet(rows));
    // The button that was pressed may be gone now; the keyboard goes on from here.
    reportAt.current?.focus();
    const mass = massReport(poured);
    if (mass.length > 0) setReport({ sheet, says: `Lot ${poured.lot}, what became of the wax:`, list: mass });
    onMessage(
      `Lot ${poured.lot} is in the runs log now, ${rows.length} ${rows.length === 1 ? "row" : "rows"}.${await shows(poured)}`,
    );
  };
  /** What to say of the log once rows were added; it is read again, for only what stands there is logged. */
  const shows = async ({ lot, unit }: PouredRun): Promise<string> => {
    let after: Awaited<ReturnType<typeof onReadLog>>;
    try {
      after = await onReadLog(unit);
    } catch (error) {
      return ` It could not be read again: ${error instanceof Error ? error.message : String(error)}`;
    }
    if (!after.log || !loggedLots(after.log).includes(lot)) {
      setReport(undefined);
      throw new Error(`Lot ${lot} was added to the runs log and does not stand there. Check the log, then try again.`);
    }
    return newFactors(after.log, after.vessels).some(({ offer }) => offer) ? " See the wax factors it shows." : "";
  };

  // What was said of another sheet does not stand beside the buttons of this one.
  const said = report?.sheet === sheet ? report : undefined;
  /** Each button names the sheet it acts on. */
  const button = (words: string, work: () => Promise<void>, off = false) => (
    <Button off={busy || off} onPress={() => doing(work)}>
      {`${words}: ${sheet}`}
    </Button>
  );
  return (
    <section aria-labelledby="pane-written">
      <h2 id="pane-written">Written run sheets</h2>
      <ChoiceField
        label="Run sheet"
        value={sheet}
        choices={sheets.map(({ name }) => ({ value: name, text: name }))}
        onChange={(value) => {
          onChoose(value);
        }}
      />
      {copies.length > 0 && (
        <p className="hint">
          Lot {chosen.lot} also stands on {copies.join(", ")}. It is logged once: log the sheet that was poured by.
        </p>
      )}
      <div className="buttons">
        {button("What has changed since", compare, !plan)}
        {button("Rebuild", rebuild, !plan)}
        {button("Turn into plain numbers", freeze)}
        {button("Log this pour", () => logPour())}
        {host.print && button("Print or save as PDF", async () => host.print?.(sheet))}
      </div>
      {said?.isAsking && button("Log anyway", () => logPour(said.list))}
      <div role="status" ref={reportAt} tabIndex={-1}>
        {said && (
          <>
            <p>{said.says}</p>
            <ul>
              {said.list.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </>
        )}
      </div>
      {factors.length > 0 && (
        <>
          <h3>Wax factors the log shows</h3>
          <ul className="factors">
            {factors.map(({ vessel, says, offer }, i) => (
              <li key={vessel}>
                <span id={`${factorId}-${i}`}>{says}</span>
                {offer && (
                  <Button off={busy} describedBy={`${factorId}-${i}`} onPress={() => doing(() => onFactor(offer))}>
                    {`Change ${vessel} from ${offer.old === undefined ? "blank" : formatFactor(offer.old)} to ${formatFactor(offer.factor)}`}
                  </Button>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
