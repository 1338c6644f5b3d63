import { Problems } from "./Problems";
import type { PaneState } from "./state/usePane";
import type { Planned } from "./state/usePlan";
import { CHECK } from "./words/check";

/** What is to be fixed and checked before a run sheet is written. */
export function Check({ pane, planned }: { pane: PaneState; planned: Planned }) {
  const { check, decisions, show } = pane;
  const { leftOut } = planned.run;
  return (
    <section aria-labelledby="pane-check">
      <h2 id="pane-check" tabIndex={-1}>
        {CHECK.heading}
      </h2>
      <p role="status">{CHECK.summary(check.stops, check.checks)}</p>
      <Problems groups={check.groups} given={planned.given} decisions={decisions} onShow={show} />
      {leftOut > 0 && <p className="hint">{CHECK.notPoured(leftOut)}</p>}
    </section>
  );
}
