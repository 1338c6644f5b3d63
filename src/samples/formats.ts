/** The number formats of the samples, one for each kind of figure. */
export const FORMATS = {
  weight: "#,##0.0",
  /** What a scale of whole grams shows. */
  scale: "#,##0",
  volume: "#,##0",
  factor: "0.000",
  load: "0.0%",
  count: "#,##0",
  money: "#,##0.00",
  /** What came in or went out. */
  change: "+#,##0.0##;-#,##0.0##;0",
  /** The price of a gram. */
  unitPrice: "0.00000",
  margin: "0.0%",
  date: "yyyy-mm-dd",
  length: "0.0",
  hours: "0.0",
  rate: "0.00",
} as const;
