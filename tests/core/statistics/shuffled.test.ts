import { describe, expect, it } from "vitest";
import { shuffled } from "../../../src/core/statistics/shuffled";

describe("shuffled", () => {
  it("keeps all items, and is the same for the same seed", () => {
    const items = [1, 2, 3, 4, 5, 5];
    expect([...shuffled(items, "seed")].sort()).toEqual(items);
    expect(shuffled(items, "seed")).toEqual(shuffled(items, "seed"));
    expect(items).toEqual([1, 2, 3, 4, 5, 5]);
    expect(shuffled([], "seed")).toEqual([]);
  });

  it("has each order as often as any other, over many seeds", () => {
    const counts = new Map<string, number>();
    const all = 24_000;
    for (let seed = 0; seed < all; seed++) {
      const order = shuffled(["a", "b", "c", "d"], `series ${seed}`).join("");
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect(counts.size).toBe(24);
    // Pearson's sum over 23 degrees of freedom is above 49.7 once in a thousand (published tables, from memory).
    const each = all / 24;
    expect([...counts.values()].reduce((sum, n) => sum + (n - each) ** 2 / each, 0)).toBeLessThan(49.7);
  });
});
