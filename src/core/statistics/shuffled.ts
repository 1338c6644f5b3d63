/**
 * The items in an order that looks like chance and is the same each time for the same seed.
 * Source: the shuffle of Fisher and Yates, over the generator mulberry32 (both from memory).
 */
export function shuffled<T>(items: readonly T[], seed: string): T[] {
  const random = randomOf(seed);
  const order = [...items];
  for (let last = order.length - 1; last > 0; last--) {
    const at = Math.floor(random() * (last + 1));
    [order[last], order[at]] = [order[at] as T, order[last] as T];
  }
  return order;
}

/** Numbers of 0 or more and below 1. */
function randomOf(seed: string): () => number {
  let state = hashOf(seed);
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The hash FNV-1a of 32 bits (from memory): near texts give far numbers. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) as number), 0x01000193);
  return hash;
}
