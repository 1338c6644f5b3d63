import { memo, useId } from "react";
import type { OpenRunBeside } from "../runsheet/plan/openRuns";
import type { WeightUnit } from "../runsheet/settings";
import { Button } from "./Button";
import { OPEN_RUNS } from "./words/openRuns";

/** The runs that are written and not logged, whether what they take counts, and a press that says otherwise. */
export const OpenRuns = memo(function OpenRuns(props: {
  runs: readonly OpenRunBeside[];
  unit: WeightUnit;
  onCount: (lot: string, counts: boolean) => void;
}) {
  const { runs, unit, onCount } = props;
  const id = useId();
  return (
    <section aria-labelledby="pane-open-runs">
      <h2 id="pane-open-runs">{OPEN_RUNS.heading}</h2>
      <p className="hint">{OPEN_RUNS.hint}</p>
      <ul className="factors">
        {runs.map((run, i) => (
          <li key={run.lot}>
            <span id={`${id}-${i}`}>{OPEN_RUNS.says(run, unit)}</span>
            <Button describedBy={`${id}-${i}`} onPress={() => onCount(run.lot, run.state !== "counted")}>
              {OPEN_RUNS.press(run)}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
});
