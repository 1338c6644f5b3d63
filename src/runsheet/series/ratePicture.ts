/** Points and intervals drawn with signs in cells: a host draws no chart on a sheet that is added. */

/** Signs of a picture from end to end; those of one width in every font. */
export const TRACK = 24;
const [AROUND, INTERVAL, POINT] = ["░", "▒", "█"];

/**
 * @param ranges of the candles' rates, and of the ends of the wicks' intervals
 * @param low the cell that holds the lowest of them, as all formulas find it
 */
export function pictureOf(
  { rate, lower, upper }: { readonly rate: string; readonly lower: string; readonly upper: string },
  low: string,
  high: string,
) {
  const isDrawn = (value: string) => `COUNT(${value},${low},${high})=3`;
  const place = (value: string) => `IF(${high}>${low},1+ROUND((${value}-${low})/(${high}-${low})*${TRACK - 1},0),1)`;
  return {
    ends: {
      low: `=IF(COUNT(${rate})=0,"",MIN(${rate},${lower}))`,
      high: `=IF(COUNT(${rate})=0,"",MAX(${rate},${upper}))`,
      heading: (unit: string) =>
        `=IF(COUNT(${low},${high})<2,"Rate","Rate, "&TEXT(${low},"0.0")&" to "&TEXT(${high},"0.0")&" ${unit}/h")`,
    },
    /** The mean in its interval, or alone. */
    picture: (mean: string, from: string, to: string): string => {
      const names = `at,${place(mean)},first,IF(COUNT(${from})=0,at,${place(from)}),final,IF(COUNT(${to})=0,at,${place(to)})`;
      const drawn = `REPT("${AROUND}",first-1)&REPT("${INTERVAL}",at-first)&"${POINT}"&REPT("${INTERVAL}",final-at)&REPT("${AROUND}",${TRACK}-final)`;
      return `=IF(${isDrawn(mean)},LET(${names},${drawn}),"")`;
    },
    point: (value: string): string =>
      `=IF(${isDrawn(value)},LET(at,${place(value)},REPT("${AROUND}",at-1)&"${POINT}"&REPT("${AROUND}",${TRACK}-at)),"")`,
  };
}
