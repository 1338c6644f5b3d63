import type { SeenWick } from "../runsheet/series/readSeries";
import type { SeenSeries } from "./burning/seenBeside";
import { Lines } from "./Lines";
import { SeenPicture } from "./SeenPicture";
import type { SeenState } from "./state/useSeen";
import { candleLine, figuresOf, SEEN } from "./words/seen";

/** What the readings of each burn-test series show, wick by wick. */
export function SeenSection({ seen: { seen, refused, unit } }: { seen: SeenState }) {
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
      {seen?.series.map((series, i) => (
        <OneSeries key={series.name} series={series} unit={unit} isOpen={i === 0} />
      ))}
    </section>
  );
}

function OneSeries({ series, unit, isOpen }: { series: SeenSeries; unit: string; isOpen: boolean }) {
  const { name, tests, wicks, isBegun } = series;
  return (
    <details className="series" open={isOpen}>
      <summary>
        <h3>{name}</h3>
        <small>{SEEN.size(tests.length, wicks.length)}</small>
      </summary>
      {isBegun ? (
        <>
          <SeenPicture wicks={wicks} unit={unit} />
          {wicks.map((wick) => (
            <OneWick key={wick.wick} wick={wick} unit={unit} />
          ))}
        </>
      ) : (
        <p>{SEEN.notBegun}</p>
      )}
    </details>
  );
}

function OneWick({ wick, unit }: { wick: SeenWick; unit: string }) {
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
      <details>
        <summary>{SEEN.byCandle(wick.wick)}</summary>
        <Lines lines={wick.candles.map((candle) => candleLine(candle, unit))} />
      </details>
    </>
  );
}
