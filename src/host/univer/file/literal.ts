/** A formula that is only a number, which stands in the first group. */
export const LITERAL = /^=?(-?\d+(?:\.\d+)?(?:E[+-]?\d+)?)$/i;
