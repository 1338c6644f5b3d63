import type { Host } from "../host/host";
import type { WeightUnit } from "../runsheet/settings";
import { starterSheets } from "../runsheet/sheet/starterSheets";
import { Button } from "./Button";

/** For a workbook without tables: what is needed, and starter tables at a press. */
export function FirstUse(props: {
  host: Host;
  unit: WeightUnit;
  onDone: () => Promise<unknown>;
  busy: boolean;
  doing: (work: () => Promise<void>) => Promise<void>;
}) {
  const { host, unit, onDone, busy, doing } = props;
  const start = () =>
    doing(async () => {
      // Tried again after a failure, only what is missing is put in.
      for (const sheet of starterSheets(unit, await host.tables())) await host.addSheet(sheet);
      await onDone();
    });
  return (
    <div className="first-use">
      <p>No table to pour from is here yet. A run sheet is made from a table with a row for each vessel to pour.</p>
      <ol>
        <li>Add the starter tables: Vessels, Scents and Batch, on sheets of their own.</li>
        <li>
          Write your vessels with the weight of water each holds, and your scents (fragrance oils) with their loads.
        </li>
        <li>Write in Batch what to pour. The pots appear here as you type.</li>
      </ol>
      <Button look="main" off={busy} onPress={start}>
        Add starter tables
      </Button>
      <p className="hint">
        They are in {unit}; choose another unit under Settings first. Have a table already? Make sure it has columns for
        the vessel, the quantity and the fill or water weight, or select its cells with their headings and press the
        button below.
      </p>
    </div>
  );
}
