import { plain } from "../core/check/plain";
import { percent } from "../runsheet/percent";
import { nameOf, othersOf, type RunPlan } from "../runsheet/plan/runPlan";
import type { Settings } from "../runsheet/settings";
import { PotPicture } from "./PotPicture";

/** So many pots are drawn; the rest is a number, or a long list would make the pane slow. */
const DRAWN = 60;

/** What will be written: the pots of each scent, drawn, and the totals. */
export function Preview({ plan, settings }: { plan: RunPlan; settings: Settings }) {
  const { unit, potCapacity } = settings;
  const drawn = Math.ceil(DRAWN / plan.scents.length);
  const others = othersOf(plan.totals);
  const weight = (value: number) => `${plain(Number(value.toPrecision(9)))} ${unit}`;
  return (
    <>
      {plan.scents.map((scent) => (
        <section key={`${scent.scent} ${scent.load} ${scent.basis}`} className="scent">
          <h3>
            {nameOf(scent)}
            {scent.load > 0 && <small> {`${percent(scent.load)} % ${scent.basis}`}</small>}
          </h3>
          <div className="pots">
            {scent.pots.slice(0, drawn).map((pot, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a pot is its number
              <PotPicture key={i} pot={pot} number={i + 1} capacity={potCapacity} unit={unit} />
            ))}
          </div>
          {scent.pots.length > drawn && <p className="hint">and {scent.pots.length - drawn} more pots</p>}
        </section>
      ))}
      <dl className="totals">
        <dt>Candles</dt>
        <dd>{plan.totals.candles}</dd>
        <dt>Pots</dt>
        <dd>{plan.totals.pots}</dd>
        <dt>Wax</dt>
        <dd>{weight(plan.totals.wax)}</dd>
        <dt>Scent (fragrance oil)</dt>
        <dd>{weight(plan.totals.scent)}</dd>
        {others > 0 && (
          <>
            <dt>Dye and additives</dt>
            <dd>{weight(others)}</dd>
          </>
        )}
        <dt>Melted</dt>
        <dd>{weight(plan.totals.melted)}</dd>
      </dl>
    </>
  );
}
