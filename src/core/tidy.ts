/** A number of at most 12 digits: what stands behind them is the noise of binary fractions. */
export const tidy = (value: number): number => Number(value.toPrecision(12));
