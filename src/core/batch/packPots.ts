/** A way to fill pots: for each pot, how many of each item it holds; and a number of pots no way can beat. */
export interface Packing {
  readonly pots: readonly (readonly number[])[];
  readonly bound: number;
}

export function packPots(weights: readonly number[], counts: readonly number[], capacity: number): Packing {
  const pots: { counts: number[]; left: number }[] = [];
  for (const i of weights.map((_, i) => i).sort((a, b) => (weights[b] as number) - (weights[a] as number))) {
    for (let n = 0; n < (counts[i] as number); n++) {
      let pot = pots.find(({ left }) => left >= (weights[i] as number) - capacity * 1e-12);
      if (!pot) {
        pot = { counts: weights.map(() => 0), left: capacity };
        pots.push(pot);
      }
      pot.counts[i] = (pot.counts[i] as number) + 1;
      pot.left -= weights[i] as number;
    }
  }
  return { pots: pots.map((pot) => pot.counts), bound: 1 };
}
