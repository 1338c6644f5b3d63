/** No trace of the arithmetic or of the code in what a person reads. */
export const isSaid = (text: string): boolean =>
  !/NaN|Infinity|undefined|null|BigInt|Maximum call|object Object/.test(text);
