import { it } from "vitest";

/** Where small changes of the sources are to be noticed each step is counted: a second becomes half a minute. */
const isCounted = process.env.POURWRIGHT_TESTS === "mutate";
const FEWER = 20;

/** How many cases an exhaustive test takes: a part of them usually, all of them in the long tests, few when counted. */
export function cases(part: number, all: number): number {
  if (process.env.POURWRIGHT_TESTS === "long") return all;
  return isCounted && part < all ? Math.ceil(part / FEWER) : part;
}

/** A test that takes about a second, and none when counted. */
export const slowIt: ReturnType<typeof it.skipIf> = it.skipIf(isCounted);
