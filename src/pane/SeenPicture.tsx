import type { SeenWick } from "../runsheet/series/readSeries";
import { shown } from "../sheet/chart/scale";
import { pictureWords, SEEN } from "./words/seen";

const [WIDTH, LEFT, RIGHT, ROW, FOOT] = [280, 10, 270, 34, 22];
/** About so many steps along the axis. */
const STEPS = 5;

/** Points and intervals: a ring for each candle, a bar for what its wick's mean may be. */
export function SeenPicture({ wicks, unit }: { wicks: readonly SeenWick[]; unit: string }) {
  const values = wicks.flatMap(({ rate, candles }) => [
    ...(rate?.interval ?? []),
    ...candles.flatMap((one) => one.rate ?? []),
  ]);
  if (values.length === 0) return null;
  const { ticks, format } = axis(values);
  const [first, last] = [ticks[0] as number, ticks.at(-1) as number];
  const at = (value: number): number => LEFT + ((value - first) / (last - first)) * (RIGHT - LEFT);
  const foot = wicks.length * ROW + 4;
  return (
    <figure className="seen">
      <svg viewBox={`0 0 ${WIDTH} ${foot + FOOT}`} role="img" aria-label={pictureWords(wicks, unit)}>
        {ticks.map((tick) => (
          <g key={tick} className="axis">
            <line x1={at(tick)} x2={at(tick)} y1={2} y2={foot} />
            <text x={at(tick)} y={foot + 14} textAnchor="middle">
              {shown(tick, format)}
            </text>
          </g>
        ))}
        {wicks.map((wick, i) => (
          <Row key={wick.wick} wick={wick} y={i * ROW + 24} at={at} />
        ))}
      </svg>
      <figcaption>
        <span>{SEEN.picture(unit)}</span>
        <span>{SEEN.legend}</span>
      </figcaption>
    </figure>
  );
}

function Row({ wick: { wick, rate, candles }, y, at }: { wick: SeenWick; y: number; at: (value: number) => number }) {
  const [lower, upper] = rate?.interval ?? [];
  return (
    <g>
      <text x={LEFT} y={y - 10}>
        {wick.slice(0, 40)}
      </text>
      {lower !== undefined && upper !== undefined && (
        <path className="interval" d={`M${at(lower)} ${y - 5} v10 m0 -5 H${at(upper)} m0 -5 v10`} />
      )}
      {candles.map(({ test, rate }) =>
        rate === undefined ? null : <circle key={test.test} className="candle" cx={at(rate)} cy={y} r={4} />,
      )}
      {rate && <path className="mean" d={`M${at(rate.mean)} ${y - 8} V${y + 8}`} />}
    </g>
  );
}

/** Round numbers around these values; not from 0, for wicks differ by little. */
function axis(values: readonly number[]): { ticks: number[]; format: string } {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const rough = (most - least || most || 1) / STEPS;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5].find((times) => times * power >= rough * 0.999) ?? 10);
  const [first, last] = [Math.floor(least / step + 1e-9), Math.ceil(most / step - 1e-9)];
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return {
    ticks: Array.from({ length: Math.max(2, last - first + 1) }, (_, i) =>
      Number(((first + i) * step).toPrecision(12)),
    ),
    format: decimals > 0 ? `0.${"0".repeat(decimals)}` : "0",
  };
}
