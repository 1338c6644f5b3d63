export const upper = (row: object): Record<string, string | number> =>
  Object.fromEntries(Object.entries(row).map(([key, value]) => [`${key[0]?.toUpperCase()}${key.slice(1)}`, value]));

/** Each once, by what makes it one. */
export const once = <T extends object>(rows: readonly T[]): Record<string, string | number>[] =>
  [...new Map(rows.map((row) => [JSON.stringify(row), row])).values()].map(upper);

/** The share of scent in what is melted, by the words of its basis: of wax, or of wax and scent together. */
export const LOAD = "SUMIFS(Scents[Load],Scents[Scent],{Scent})";
export const SCENT_SHARE = `${LOAD}/(1+IF(COUNTIFS(Scents[Scent],{Scent},Scents[Basis],"of wax")=1,${LOAD},0))`;

/** How many of a counted item a run takes, spoilt candles too: a vessel, or the wicks in all of them. */
export const COUNTED =
  'SUMIFS(Lines[Count],Lines[Run],{Run},Lines[Vessel],{Item})+IF({Item}="Wick",SUMIFS(Lines[Wicks],Lines[Run],{Run}),0)';
