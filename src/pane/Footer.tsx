import { type ReactNode, useEffect, useRef } from "react";
import { Button } from "./Button";
import type { PaneState } from "./state/usePane";
import { WRITING } from "./words/writing";

/** The writing of a run sheet, why it cannot be written, how far it is, what was done last, and what else is said. */
export function Footer({ pane, children }: { pane: PaneState; children?: ReactNode }) {
  const { view, running, message, check, fields, planned, write, written } = pane;
  const isReady = planned !== undefined && !fields.isWrong && check.stops === 0;
  // On a narrow page the footer may stand below what is seen.
  const footer = useRef<HTMLElement>(null);
  const sheets = written?.sheets;
  // biome-ignore lint/correctness/useExhaustiveDependencies: new run sheets move it further down
  useEffect(() => {
    if (message) footer.current?.scrollIntoView({ block: "nearest" });
  }, [message, sheets]);
  // A good word from before says nothing beside what is wrong now: that stands in the view of the plan.
  const shown = message && (message.bad || view !== "plan" || check.stops === 0) ? message : undefined;
  return (
    <footer ref={footer}>
      {view === "plan" && (
        <>
          <Button look="main" off={!isReady || running !== undefined} describedBy="pane-why" onPress={write}>
            {WRITING.write}
          </Button>
          <p id="pane-why" className="hint">
            {why(pane)}
          </p>
        </>
      )}
      {running?.share !== undefined && (
        <div className="progress">
          <progress value={running.share} aria-label={WRITING.under} />
          <Button onPress={running.stop}>{WRITING.stop}</Button>
        </div>
      )}
      {children}
      <p role="status" className="done">
        {shown && !shown.bad ? shown.text : ""}
      </p>
      <p role="alert" className="wrong">
        {shown?.bad ? shown.text : ""}
      </p>
    </footer>
  );
}

/** Beside the button: why no run sheet can be written, or what to check before. */
function why({ tables, fields, planned, check }: PaneState): string {
  if (!tables.sources || !fields.kept) return "";
  if (fields.isWrong) return WRITING.fixSettings;
  if (!tables.read.pour) return WRITING.chooseTable;
  if (!planned) return "";
  if (check.stops > 0) return WRITING.fixFirst(check.stops);
  return check.checks > 0 ? WRITING.checkFirst(check.checks) : "";
}
