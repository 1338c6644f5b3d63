import { useState } from "react";
import type { Host } from "../host/host";
import { starterSheets } from "../runsheet/starterSheets";

/** For a workbook without tables: what is needed, and starter tables at a press. */
export function FirstUse(props: { host: Host; unit: string; onDone: () => void; onError: (error: unknown) => void }) {
  const { host, unit, onDone, onError } = props;
  const [busy, setBusy] = useState(false);
  const start = async () => {
    setBusy(true);
    try {
      // Tried again after a failure, only what is missing is put in.
      const there = (await host.tables()).map(({ name }) => name);
      for (const sheet of starterSheets(unit)) if (!there.includes(sheet.name)) await host.addSheet(sheet);
      onDone();
    } catch (error) {
      onError(error);
    } finally {
      setBusy(false);
    }
  };
  return (
    <div className="first-use">
      <p>No table to pour from is here yet. A run sheet is made from a table with a row for each vessel to pour.</p>
      <ol>
        <li>Put the starter tables in: Vessels, Scents and Batch, on sheets of their own.</li>
        <li>Write your vessels with the weight of water each holds, and your scents with their loads.</li>
        <li>Write in Batch what to pour. The pots appear here as you type.</li>
      </ol>
      <button type="button" className="main" disabled={busy} onClick={start}>
        Put starter tables in
      </button>
      <p className="hint">
        Have a table already? Make sure it has columns for the vessel, the quantity and the fill or water weight, or
        select its cells with their headings and press the button below.
      </p>
    </div>
  );
}
