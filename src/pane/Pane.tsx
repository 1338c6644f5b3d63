import type { Host } from "../host/host";
import { AfterPour } from "./AfterPour";
import { Check } from "./Check";
import { Footer } from "./Footer";
import { Preview } from "./Preview";
import { type Planner, planHere } from "./planner";
import { ReceivingSection } from "./ReceivingSection";
import { SettingFields } from "./SettingFields";
import { ShelfSection } from "./ShelfSection";
import { usePane } from "./state/usePane";
import { TableSection } from "./TableSection";
import { TracingSection } from "./TracingSection";
import { OPENING } from "./words/opening";

/** The side pane: from a table of vessels and quantities to a run sheet. */
export function Pane({ host, planner = planHere }: { host: Host; planner?: Planner }) {
  const pane = usePane(host, planner);
  const { planned, written, running } = pane;
  return (
    <div className="pourwright-pane">
      <h1>{OPENING.heading}</h1>
      <a href="help/run-sheet.html" target="_blank" rel="noreferrer">
        {OPENING.help}
      </a>
      <TableSection pane={pane} />
      <SettingFields
        fields={pane.fields}
        usual={planned?.run.usual}
        isFirst={pane.tables.sources !== undefined && !pane.tables.read.pour}
      />
      {planned && <Check pane={pane} planned={planned} />}
      {planned && planned.run.plan.totals.candles > 0 && (
        <Preview
          plan={planned.run.plan}
          costs={planned.run.costs}
          settings={planned.settings}
          isPart={pane.check.stops > 0}
        />
      )}
      {written && (
        <AfterPour
          written={written}
          isBusy={running !== undefined}
          canPlan={planned !== undefined && pane.check.stops === 0}
        />
      )}
      {pane.tables.sources && <ReceivingSection receiving={pane.receiving} isBusy={running !== undefined} />}
      {pane.tables.sources && <ShelfSection shelf={pane.shelf} />}
      {pane.tables.sources && <TracingSection tracing={pane.tracing} isBusy={running !== undefined} />}
      <Footer pane={pane} />
    </div>
  );
}
