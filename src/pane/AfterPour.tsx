import { Fragment, type ReactNode, useEffect, useId, useRef } from "react";
import type { LogChoice } from "./actions/logPour";
import type { Report } from "./actions/writtenRun";
import { Button } from "./Button";
import { ChoiceField } from "./fields";
import { Lines } from "./Lines";
import type { Written } from "./state/useWritten";
import { LOGGING } from "./words/logging";
import { FACTORS, LOSS, WRITTEN } from "./words/written";

/** What is done with run sheets that are written: compare, turn into plain numbers, log the pour, learn the factors. */
export function AfterPour(props: {
  written: Written;
  isBusy: boolean;
  /** Whether there is a plan to compare with and to rebuild from. */
  canPlan: boolean;
}) {
  const { written, isBusy, canPlan } = props;
  const { sheets, sheet, copies, report } = written;
  const reportAt = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (report) reportAt.current?.scrollIntoView({ block: "nearest" });
  }, [report]);
  /** The button that was pressed may be gone then; the keyboard goes on from the report. */
  const logPour = async (choice?: LogChoice) => {
    if (await written.logPour(choice)) reportAt.current?.focus();
  };
  const button = (words: string, onPress: () => void, off = false): ReactNode => (
    <Button off={isBusy || off} onPress={onPress}>
      {WRITTEN.on(words, sheet)}
    </Button>
  );
  return (
    <section aria-labelledby="pane-written">
      <h2 id="pane-written">{WRITTEN.heading}</h2>
      <ChoiceField
        label={WRITTEN.choose}
        value={sheet}
        choices={sheets.map(({ name }) => ({ value: name, text: name }))}
        onChange={written.choose}
      />
      {copies.length > 0 && <p className="hint">{WRITTEN.copies(written.lot, copies)}</p>}
      <div className="buttons">
        {button(WRITTEN.compare, written.compare, !canPlan)}
        {button(WRITTEN.rebuild, written.rebuild, !canPlan)}
        {button(WRITTEN.toPlain, written.toPlain)}
        {button(LOGGING.log, () => logPour())}
        {written.print && button(WRITTEN.print, written.print)}
      </div>
      <div role="status" ref={reportAt} tabIndex={-1}>
        {report && <Told report={report} />}
      </div>
      {report?.ask && (
        <div className="buttons">
          {button(report.ask.press, () => logPour(report.ask))}
          {report.ask.offersMoves && button(LOGGING.beginMoves, () => logPour({ beginsMoves: true }))}
        </div>
      )}
      {written.factors.length > 0 && <Factors written={written} isBusy={isBusy} />}
      {written.loss && <Loss loss={written.loss} isBusy={isBusy} />}
    </section>
  );
}

/** What is told about a sheet. */
function Told({ report: { parts } }: { report: Report }) {
  return parts.map(({ says, list }) => (
    <Fragment key={says}>
      <p>{says}</p>
      <Lines lines={list} />
    </Fragment>
  ));
}

/** The wax factors that the log shows, to be taken at a press where they are sure enough. */
function Factors({ written, isBusy }: { written: Written; isBusy: boolean }) {
  const id = useId();
  return (
    <>
      <h3>{FACTORS.heading}</h3>
      <ul className="factors">
        {written.factors.map(({ vessel, says, offer }, i) => (
          <li key={vessel}>
            <span id={`${id}-${i}`}>{says}</span>
            {offer && (
              <Button off={isBusy} describedBy={`${id}-${i}`} onPress={() => written.changeFactor(offer)}>
                {FACTORS.change(offer)}
              </Button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

/** The loss that the log shows, to become the setting at a press. */
function Loss({ loss: { says, change }, isBusy }: { loss: NonNullable<Written["loss"]>; isBusy: boolean }) {
  const id = useId();
  return (
    <>
      <h3>{LOSS.heading}</h3>
      <p id={id}>{says}</p>
      {change && (
        <Button off={isBusy} describedBy={id} onPress={change.press}>
          {change.words}
        </Button>
      )}
    </>
  );
}
