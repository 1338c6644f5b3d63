import { useCallback, useMemo, useState } from "react";
import type { Host } from "../host/host";
import { buildRun } from "../runsheet/buildRun";
import { CAUTIONS } from "../runsheet/cautions";
import { type Columns, matchColumns, ROLE_NAMES, ROLES, type Role } from "../runsheet/columns";
import { describeRun } from "../runsheet/describeRun";
import { nextLot } from "../runsheet/nextLot";
import { ChoiceField, TextField } from "./fields";
import { Preview } from "./Preview";
import { Problems } from "./Problems";
import { serialOf, today } from "./today";
import { useSettings } from "./useSettings";
import { useTables } from "./useTables";

const NO_COLUMN = "none";

/** The side pane: from a table of vessels and quantities to a run sheet. */
export function Pane({ host }: { host: Host }) {
  const [message, setMessage] = useState<{ text: string; bad: boolean }>();
  const [busy, setBusy] = useState(false);
  const [date, setDate] = useState(today);
  const onError = useCallback((error: unknown) => {
    setMessage({ text: error instanceof Error ? error.message : String(error), bad: true });
  }, []);
  const { kept, keep, wrong, settings } = useSettings(host, onError);
  const { sources, rows, refresh, choose, takeSelection } = useTables(host, onError);

  const columns = useMemo((): Columns => {
    if (!rows) return {};
    const last = rows.headings.length;
    const byHand = Object.entries(kept.columns[rows.name] ?? {}).filter(([, column]) => column < last);
    return withoutNone({ ...matchColumns(rows.headings), ...Object.fromEntries(byHand) });
  }, [rows, kept.columns]);

  const run = useMemo(
    () => (rows && settings ? buildRun(rows.rows, columns, settings) : undefined),
    [rows, columns, settings],
  );
  const serial = serialOf(date);
  const stops = run?.problems.filter((problem) => problem.stops).length ?? 0;
  const canWrite = run !== undefined && settings !== undefined && serial !== undefined && stops === 0 && !busy;

  const setColumn = (role: Role, column: number) => {
    if (!rows) return;
    const { name } = rows;
    keep((before) => ({
      ...before,
      columns: { ...before.columns, [name]: { ...before.columns[name], [role]: column } },
    }));
  };

  const write = async () => {
    if (!canWrite || !settings || serial === undefined) return;
    setBusy(true);
    setMessage({ text: "Writing the run sheet…", bad: false });
    try {
      // The table may have changed since the preview was drawn: what is written is what stands there now.
      const now = (await refresh()) ?? rows;
      const fresh = now && buildRun(now.rows, columns, settings);
      if (!fresh || fresh.problems.some((problem) => problem.stops)) {
        setMessage({ text: "The table has changed; mend what is listed first.", bad: true });
        return;
      }
      const lot = nextLot(serial, await host.sheetNames());
      const name = await host.addSheet(describeRun(fresh.plan, { lot, date: serial, settings }));
      setMessage({ text: `Run sheet written: ${name}`, bad: false });
    } catch (error) {
      onError(error);
    } finally {
      setBusy(false);
    }
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
    <main className="pourwright-pane">
      <h1>Pour sheet</h1>
      <section aria-labelledby="pane-table">
        <h2 id="pane-table">Table</h2>
        {sources === undefined ? (
          <p>Reading the workbook…</p>
        ) : (
          <>
            {rows ? (
              <ChoiceField
                label="Pour from"
                value={rows.name}
                choices={[
                  ...(rows.name === "" ? [{ value: "", text: `Selected cells on ${rows.place.sheet}` }] : []),
                  ...sources.map(({ name, place }) => ({ value: name, text: `${name} (${place.sheet})` })),
                ]}
                onChange={choose}
              />
            ) : (
              <p>
                No table is here yet. Make one with a column for the vessel, the quantity and the fill weight (or the
                water weight), or select such cells with their headings.
              </p>
            )}
            <button type="button" className="quiet" onClick={takeSelection}>
              Use the selected cells
            </button>
            {rows && (
              <details>
                <summary>
                  Columns: {ROLES.filter((role) => columns[role] !== undefined).length} matched by their headings
                </summary>
                {ROLES.map((role) => (
                  <ChoiceField
                    key={role}
                    label={ROLE_NAMES[role]}
                    value={columns[role] === undefined ? NO_COLUMN : String(columns[role])}
                    choices={[
                      { value: NO_COLUMN, text: "no column" },
                      ...rows.headings.map((heading, i) => ({ value: String(i), text: heading || `column ${i + 1}` })),
                    ]}
                    onChange={(value) => setColumn(role, value === NO_COLUMN ? -1 : Number(value))}
                  />
                ))}
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

      {run && rows && settings && (
        <section aria-labelledby="pane-check">
          <h2 id="pane-check">Check</h2>
          <p role="status">{summary(stops, run.problems.length - stops)}</p>
          <Problems problems={run.problems} rows={rows} columns={columns} host={host} onError={onError} />
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
      <footer>
        <button type="button" className="main" disabled={!canWrite} onClick={write}>
          Write run sheet
        </button>
        <p role={message?.bad ? "alert" : "status"} className={message?.bad ? "wrong" : "done"}>
          {message?.text}
        </p>
      </footer>
    </main>
  );
}

/** A column taken away by hand is kept as -1: without it the headings would match again. */
function withoutNone(columns: Columns): Columns {
  return Object.fromEntries(Object.entries(columns).filter(([, column]) => column >= 0));
}

function summary(stops: number, looks: number): string {
  const count = (number: number, one: string, many: string) => `${number} ${number === 1 ? one : many}`;
  if (stops > 0) return `${count(stops, "thing", "things")} to mend before a sheet can be written.`;
  if (looks > 0) return `Ready, with ${count(looks, "thing", "things")} to look at.`;
  return "Nothing to mend.";
}
