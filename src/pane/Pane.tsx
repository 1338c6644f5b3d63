import type { Host } from "../host/host";
import type { Lack } from "../runsheet/plan/shortages";
import { AfterPour } from "./AfterPour";
import { Check } from "./Check";
import { Footer } from "./Footer";
import { OpenRuns } from "./OpenRuns";
import { Preview } from "./Preview";
import { type Planner, planHere } from "./planner";
import { ReceivingSection } from "./ReceivingSection";
import { Doubts, useRemarks, Waiting } from "./Remarks";
import { SeenSection } from "./SeenSeries";
import { SeriesSection } from "./SeriesSection";
import { SettingFields } from "./SettingFields";
import { ShelfSection } from "./ShelfSection";
import { type PaneState, usePane } from "./state/usePane";
import { TableSection } from "./TableSection";
import { TracingSection } from "./TracingSection";
import { Views } from "./Views";
import { OPENING } from "./words/opening";
import { VIEW_HEADINGS } from "./words/viewHeadings";
import { NOTHING_TO_LOG } from "./words/views";

/** The side pane: from a table of vessels and quantities to a run sheet. */
export function Pane({ host, planner = planHere }: { host: Host; planner?: Planner }) {
  const pane = usePane(host, planner);
  const { running } = pane;
  const { doubts, waiting } = useRemarks(host);
  return (
    <div className="pourwright-pane">
      <h1>{VIEW_HEADINGS[pane.view]}</h1>
      <a href="help/run-sheet.html" target="_blank" rel="noreferrer">
        {OPENING.help}
      </a>
      <Doubts doubts={doubts} />
      <Views view={pane.view} onView={pane.setView}>
        {{
          plan: <Plan pane={pane} />,
          log: <Log pane={pane} />,
          stock: pane.tables.sources && (
            <>
              <ReceivingSection receiving={pane.receiving} isBusy={running !== undefined} />
              <ShelfSection shelf={pane.shelf} />
            </>
          ),
          trace: pane.tables.sources && <TracingSection tracing={pane.tracing} isBusy={running !== undefined} />,
          tests: pane.tables.sources && (
            <>
              <SeenSection seen={pane.seen} approving={pane.approving} isBusy={running !== undefined} />
              <SeriesSection series={pane.series} isBusy={running !== undefined} />
            </>
          ),
        }}
      </Views>
      <Footer pane={pane}>
        <Waiting waiting={waiting} />
      </Footer>
    </div>
  );
}

/** The same each time: what is drawn stays while nothing changes. */
const NOTHING_LACKS: readonly Lack[] = [];

/** From the tables to what will be written. */
function Plan({ pane }: { pane: PaneState }) {
  const { planned } = pane;
  return (
    <>
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
          lacks={planned.run.shelf?.lacks ?? NOTHING_LACKS}
          settings={planned.settings}
          isPart={pane.check.stops > 0}
        />
      )}
      {planned?.run.shelf && planned.run.shelf.openRuns.length > 0 && (
        <OpenRuns runs={planned.run.shelf.openRuns} unit={planned.settings.unit} onCount={pane.count} />
      )}
    </>
  );
}

/** What is done with run sheets that are written. */
function Log({ pane: { written, running, planned, check } }: { pane: PaneState }) {
  if (!written) return <p className="hint">{NOTHING_TO_LOG}</p>;
  return (
    <AfterPour written={written} isBusy={running !== undefined} canPlan={planned !== undefined && check.stops === 0} />
  );
}
