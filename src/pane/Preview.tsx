import { memo, useId } from "react";
import { plain } from "../core/check/plain";
import { divisionsIn } from "../core/weighing/divisionsIn";
import { CAUTIONS } from "../runsheet/cautions";
import { percent } from "../runsheet/percent";
import type { Costs } from "../runsheet/plan/costs";
import { packWords } from "../runsheet/plan/packWords";
import { nameOf, othersOf, type RunPlan } from "../runsheet/plan/runPlan";
import type { Lack } from "../runsheet/plan/shortages";
import type { Settings } from "../runsheet/settings";
import { PotPicture } from "./PotPicture";
import { PREVIEW } from "./words/preview";

/** So many pots are drawn; the rest is a number, or a long list would make the pane slow. */
const DRAWN = 60;

/** What will be written: the pots of each scent, drawn, and the totals; `isPart` without rows that are to be fixed. */
export const Preview = memo(function Preview(props: {
  plan: RunPlan;
  costs: Costs | undefined;
  lacks: readonly Lack[];
  settings: Settings;
  isPart: boolean;
}) {
  const { plan, costs, lacks, settings, isPart } = props;
  const { unit, potCapacity } = settings;
  const drawn = Math.ceil(DRAWN / plan.scents.length);
  return (
    <section aria-labelledby="pane-preview">
      <h2 id="pane-preview">{PREVIEW.heading}</h2>
      {isPart && <p className="hint">{PREVIEW.incomplete}</p>}
      <Totals totals={plan.totals} unit={unit} />
      {lacks.length > 0 && <Missing lacks={lacks} settings={settings} />}
      {plan.scents.map((scent) => (
        <section key={`${scent.scent} ${scent.wax} ${scent.load} ${scent.basis}`} className="scent">
          <h3>
            {nameOf(scent)}
            {scent.wax !== "" && ` ${PREVIEW.inWax(scent.wax)}`}
            {scent.load > 0 && <small> {`${percent(scent.load)} % ${scent.basis}`}</small>}
          </h3>
          <div className="pots">
            {scent.pots.slice(0, drawn).map((pot, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a pot is its number
              <PotPicture key={i} pot={pot} number={i + 1} capacity={potCapacity} unit={unit} />
            ))}
          </div>
          {scent.pots.length > drawn && <p className="hint">{PREVIEW.morePots(scent.pots.length - drawn)}</p>}
        </section>
      ))}
      {costs && <CostList costs={costs} />}
      <details>
        <summary>{PREVIEW.care}</summary>
        <ul>
          {CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </details>
    </section>
  );
});

/** What the shelf lacks for the run, and the packs that cover it at the least cost. */
function Missing({ lacks, settings: { unit, division } }: { lacks: readonly Lack[]; settings: Settings }) {
  const id = useId();
  return (
    <>
      <h3 id={id}>{PREVIEW.missing}</h3>
      <ul aria-labelledby={id}>
        {lacks.map((lack) => {
          // As the scale shows it; rather a little more, for what is missing is bought.
          const amount = lack.isCounted ? plain(lack.missing) : `${plain(upTo(lack.missing, division))} ${unit}`;
          const price = lack.cost === undefined ? undefined : money(lack.cost);
          const words = PREVIEW.lack(lack.item, amount, packWords(lack, unit), price);
          return <li key={`${lack.item} ${lack.isCounted}`}>{words}</li>;
        })}
      </ul>
    </>
  );
}

const upTo = (weight: number, division: number): number => Math.ceil(divisionsIn(weight, division)) * division;

const money = (value: number): string => value.toFixed(2);

/** What the candles cost, here and not on the bench. */
function CostList({ costs }: { costs: Costs }) {
  return (
    <details>
      <summary>{PREVIEW.cost(costs.title, money(costs.run))}</summary>
      <ul>
        {costs.kinds.map(({ vessel, scent, count, each }) => (
          <li key={`${vessel} ${scent} ${each}`}>{PREVIEW.costOf(count, `${vessel}, ${scent}`, money(each))}</li>
        ))}
      </ul>
    </details>
  );
}

function Totals({ totals, unit }: { totals: RunPlan["totals"]; unit: string }) {
  const others = othersOf(totals);
  const weight = (value: number) => `${plain(Number(value.toPrecision(9)))} ${unit}`;
  return (
    <dl className="totals">
      <dt>{PREVIEW.candles}</dt>
      <dd>{totals.candles}</dd>
      <dt>{PREVIEW.pots}</dt>
      <dd>{totals.pots}</dd>
      <dt>{PREVIEW.wax}</dt>
      <dd>{weight(totals.wax)}</dd>
      <dt>{PREVIEW.scent}</dt>
      <dd>{weight(totals.scent)}</dd>
      {others > 0 && (
        <>
          <dt>{PREVIEW.others}</dt>
          <dd>{weight(others)}</dd>
        </>
      )}
      <dt>{PREVIEW.melted}</dt>
      <dd>{weight(totals.melted)}</dd>
    </dl>
  );
}
