import { PRODUCTS } from "../core/burn/product";
import { Button } from "./Button";
import type { Names } from "./burning/namesBeside";
import type { ReadySeries } from "./burning/seriesDraft";
import { LENGTHS, type SeriesField } from "./burning/typedSeries";
import { ChoiceField, LinesField, TextField } from "./fields";
import { Lines } from "./Lines";
import type { SeriesState } from "./state/useSeries";
import { SERIES } from "./words/series";

/** A series of burn tests: which vessel, which wicks, and what it takes. */
export function SeriesSection({ series, isBusy }: { series: SeriesState; isBusy: boolean }) {
  const { typed, type, names, basis, wrong, refused, fixes, ready, isWorking, write } = series;
  const text = (
    field: Exclude<SeriesField, "widthUnit" | "product">,
    label: string,
    more: { holds?: "words"; list?: string; date?: boolean } = {},
  ) => (
    <TextField
      label={label}
      value={typed[field]}
      wrong={wrong[field]}
      type={more.date ? "date" : "text"}
      holds={more.holds ?? "number"}
      list={more.list}
      onChange={(value) => type(field, value)}
    />
  );
  const choice = <F extends "widthUnit" | "product">(field: F, choices: readonly (typeof typed)[F][]) => (
    <ChoiceField
      label={SERIES[field]}
      value={typed[field]}
      choices={choices.map((value) => ({ value, text: value }))}
      onChange={(value) => type(field, value)}
    />
  );
  return (
    <section aria-labelledby="pane-series">
      <h2 id="pane-series">{SERIES.heading}</h2>
      <p className="hint">{SERIES.hint}</p>
      {refused && <p className="wrong">{refused}</p>}
      {(["vessel", "wax", "scent"] as const).map((what) => (
        <Offered key={what} id={listOf(what)} names={names?.[what]} />
      ))}
      <div className="pairs">
        {text("vessel", SERIES.vessel, { holds: "words", list: listOf("vessel") })}
        {choice("product", PRODUCTS)}
        {text("width", SERIES.width)}
        {choice("widthUnit", LENGTHS)}
        {text("wax", SERIES.wax, { holds: "words", list: listOf("wax") })}
        {text("scent", SERIES.scent, { holds: "words", list: listOf("scent") })}
        {text("load", SERIES.load(basis))}
      </div>
      <Wicks series={series} />
      <div className="pairs">
        {text("candles", SERIES.candles)}
        {text("code", SERIES.code, { holds: "words" })}
        {text("poured", SERIES.poured, { date: true })}
        {text("cure", SERIES.cure)}
        {text("cycles", SERIES.cycles)}
        {text("atOnce", SERIES.atOnce)}
      </div>
      <p className="hint">{SERIES.why}</p>
      <div role="status">
        {fixes.length > 0 && <Told heading={SERIES.fix} lines={fixes} />}
        {ready && <Takes ready={ready} />}
      </div>
      <Button off={isBusy || refused !== undefined || isWorking} onPress={write}>
        {ready && ready.doubts.length > 0 ? SERIES.writeAnyway : SERIES.write}
      </Button>
    </section>
  );
}

const listOf = (what: "vessel" | "wax" | "scent"): string => `pane-series-${what}`;

function Offered({ id, names }: { id: string; names: Names | undefined }) {
  return (
    <datalist id={id}>
      {[...(names?.values() ?? [])].map((name) => (
        <option key={name} value={name} />
      ))}
    </datalist>
  );
}

/** The wicks to try, typed or taken from those that are known. */
function Wicks({ series: { typed, type, wrong, knownWicks, addWick } }: { series: SeriesState }) {
  return (
    <>
      <LinesField
        label={SERIES.wicks}
        value={typed.wicks}
        wrong={wrong.wicks}
        onChange={(value) => type("wicks", value)}
      />
      {knownWicks.length > 0 && (
        // biome-ignore lint/a11y/useSemanticElements: a fieldset's legend would stand above presses that say it all
        <div role="group" aria-label={SERIES.knownWicks} className="buttons">
          {knownWicks.map(({ wick, isChosen }) => (
            <Button key={wick} off={isChosen} onPress={() => addWick(wick)}>
              {SERIES.addWick(wick)}
            </Button>
          ))}
        </div>
      )}
    </>
  );
}

function Takes({ ready: { lines, doubts } }: { ready: ReadySeries }) {
  return (
    <>
      <Told heading={SERIES.takes} lines={lines} />
      {doubts.length > 0 && <Told heading={SERIES.doubts} lines={doubts} />}
    </>
  );
}

function Told({ heading, lines }: { heading: string; lines: readonly string[] }) {
  return (
    <>
      <p>{heading}</p>
      <Lines lines={lines} />
    </>
  );
}
