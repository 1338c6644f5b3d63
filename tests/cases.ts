/** How many cases an exhaustive test takes: a part of them usually, all of them in the long tests. */
export const cases = (part: number, all: number): number => (process.env.POURWRIGHT_TESTS === "long" ? all : part);
