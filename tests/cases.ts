/** A test that takes a second takes minutes where each step of the sources is counted. */
const COUNTED = 20;

/**
 * How many cases an exhaustive test takes: a part of them usually, all of them in the long tests, few where small
 * changes of the sources are to be noticed.
 */
export function cases(part: number, all: number): number {
  if (process.env.POURWRIGHT_TESTS === "long") return all;
  return process.env.POURWRIGHT_TESTS === "mutate" && part < all ? Math.ceil(part / COUNTED) : part;
}
