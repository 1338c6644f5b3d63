/** Items one by one, as textbooks write it: the reference for what a search gains. Both give the number of pots. */

const largestFirst = (weights: readonly number[], counts: readonly number[]): number[] =>
  weights.flatMap((weight, i) => Array<number>(counts[i] as number).fill(weight)).sort((a, b) => b - a);

function pack(items: readonly number[], capacity: number, isBetter: (room: number, best: number) => boolean): number {
  const rooms: number[] = [];
  for (const item of items) {
    let chosen = -1;
    for (const [i, room] of rooms.entries()) {
      if (room >= item - capacity * 1e-12 && (chosen < 0 || isBetter(room, rooms[chosen] as number))) chosen = i;
    }
    if (chosen < 0) rooms.push(capacity - item);
    else rooms[chosen] = (rooms[chosen] as number) - item;
  }
  return rooms.length;
}

export const firstFitDecreasing = (weights: readonly number[], counts: readonly number[], capacity: number): number =>
  pack(largestFirst(weights, counts), capacity, () => false);

export const bestFitDecreasing = (weights: readonly number[], counts: readonly number[], capacity: number): number =>
  pack(largestFirst(weights, counts), capacity, (room, best) => room < best);

/** The fewest pots by trying every pot for every item. */
export function fewestByTrying(items: readonly number[], capacity: number): number {
  let best = items.length;
  const rooms: number[] = [];
  const go = (i: number): void => {
    if (rooms.length >= best) return;
    const item = items[i];
    if (item === undefined) {
      best = rooms.length;
      return;
    }
    for (const room of new Set(rooms)) {
      if (room < item) continue;
      const k = rooms.indexOf(room);
      rooms[k] = room - item;
      go(i + 1);
      rooms[k] = room;
    }
    rooms.push(capacity - item);
    go(i + 1);
    rooms.pop();
  };
  go(0);
  return best;
}
