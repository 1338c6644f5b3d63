import { type Filling, ROOM } from "./filling";

/** As many of the largest as fit, then of the next. Poured in turn this is first-fit decreasing (Johnson 1973). */
export function greedyFilling(sizes: readonly number[], left: readonly number[]): Filling {
  let room = ROOM;
  return sizes.map((size, i) => {
    const n = Math.min(left[i] as number, Math.floor(room / size));
    room -= n * size;
    return n;
  });
}
