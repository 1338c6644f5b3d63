/** The number formats of the samples, one for each kind of figure. */
export const FORMATS = {
  weight: "#,##0.0",
  /** What a scale of whole grams shows. */
  scale: "#,##0",
  volume: "#,##0",
  factor: "0.000",
  load: "0.0%",
  count: "#,##0",
} as const;
