/** About so many steps along an axis. */
const STEPS = 8;

/** Round numbers, evenly apart, from at or below 0 and these values to at or above them. */
export function ticks(values: readonly number[]): number[] {
  const least = Math.min(0, ...values);
  const most = Math.max(0, ...values) || (least < 0 ? 0 : 1);
  const rough = (most - least) / STEPS;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5].find((times) => times * power >= rough * 0.999) ?? 10);
  const [first, last] = [Math.floor(least / step + 1e-9), Math.ceil(most / step - 1e-9)];
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** A number by a plain number format such as `0%`, `#,##0` or `0.00`. */
export function shown(value: number, format: string): string {
  const decimals = /\.(0+)/.exec(format)?.[1]?.length ?? 0;
  const isShare = format.includes("%");
  const [whole = "", rest] = (isShare ? value * 100 : value).toFixed(decimals).split(".");
  const grouped = format.includes(",") ? whole.replace(/\B(?=(\d{3})+$)/g, ",") : whole;
  return grouped + (rest === undefined ? "" : `.${rest}`) + (isShare ? "%" : "");
}
