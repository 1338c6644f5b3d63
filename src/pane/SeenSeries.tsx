import type { ReactNode } from "react";
import type { SeenWick } from "../runsheet/series/readSeries";
import { ApproveWick } from "./ApproveWick";
import { Button } from "./Button";
import type { SeenSeries } from "./burning/seenBeside";
import { Lines } from "./Lines";
import { SeenPicture } from "./SeenPicture";
import type { Approving } from "./state/useApproving";
import type { SeenState } from "./state/useSeen";
import { candleLine, figuresOf, SEEN } from "./words/seen";

/** What the readings of each burn-test series show, wick by wick. */
export function SeenSection(props: { seen: SeenState; approving: Approving; isBusy: boolean }) {
  const { seen, refused, unit, write, isOpen, setOpen } = props.seen;
  return (
    <section aria-labelledby="pane-seen">
      <h2 id="pane-seen">{SEEN.heading}</h2>
      <p className="hint">{SEEN.hint}</p>
      {refused && <p className="wrong">{refused}</p>}
      {seen?.doubts.map((doubt) => (
        <p key={doubt} className="wrong">
          {doubt}
        </p>
      ))}
      {seen && seen.series.length === 0 && <p>{SEEN.nothing}</p>}
      {seen?.series.map((series) => (
        <OneSeries
          key={series.name}
          series={series}
          unit={unit}
          isOpen={isOpen(series.name)}
          onToggle={(toOpen) => setOpen(series.name, toOpen)}
        >
          {{
            ofWick: (wick) => <ApproveWick wick={wick} approving={props.approving} isBusy={props.isBusy} />,
            ofAll: (
              <>
                <p className="hint">{SEEN.writeHint}</p>
                <Button off={props.isBusy} onPress={() => write(series.name)}>
                  {SEEN.write}
                </Button>
              </>
            ),
          }}
        </OneSeries>
      ))}
    </section>
  );
}

function OneSeries(props: {
  series: SeenSeries;
  unit: string;
  isOpen: boolean;
  onToggle: (toOpen: boolean) => void;
  /** The presses for a wick, and for the whole series. */
  children: { readonly ofWick: (wick: SeenWick) => ReactNode; readonly ofAll: ReactNode };
}) {
  const { series, unit, isOpen, onToggle, children } = props;
  const { name, tests, wicks, isBegun } = series;
  return (
    <details
      className="series"
      open={isOpen}
      onToggle={({ currentTarget: { open } }) => {
        if (open !== isOpen) onToggle(open);
      }}
    >
      <summary>
        <h3>{name}</h3>
        <small>{SEEN.size(tests.length, wicks.length)}</small>
      </summary>
      {isBegun ? (
        <>
          <SeenPicture wicks={wicks} unit={unit} />
          {wicks.map((wick) => (
            <OneWick key={wick.wick} wick={wick} unit={unit}>
              {children.ofWick(wick)}
            </OneWick>
          ))}
        </>
      ) : (
        <p>{SEEN.notBegun}</p>
      )}
      {children.ofAll}
    </details>
  );
}

function OneWick({ wick, unit, children }: { wick: SeenWick; unit: string; children: ReactNode }) {
  return (
    <>
      <h4>{wick.wick || SEEN.noWick}</h4>
      <p className={wick.candles.some(({ beyond }) => beyond.length > 0) ? "wrong" : undefined}>{wick.verdict}</p>
      <dl className="figures">
        {figuresOf(wick, unit).map(([label, text]) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {children}
      <details>
        <summary>{SEEN.byCandle(wick.wick)}</summary>
        <Lines lines={wick.candles.map((candle) => candleLine(candle, unit))} />
      </details>
    </>
  );
}
