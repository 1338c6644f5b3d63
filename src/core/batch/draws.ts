/** Numbers from 0 to below 1 as if drawn, but the same ones each time (xorshift, Marsaglia 2003). */
export function draws(): () => number {
  let state = 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}
