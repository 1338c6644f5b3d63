import { expect, it } from "vitest";
import { registered } from "./built";

/** The functions run on a page of their own; what they leave there for others is asked for there. */
const count = (registered.get("FILLWEIGHT") as object).constructor(
  'return globalThis[Symbol.for("pourwright functions")]?.count ?? 0',
) as () => number;

it.each<[string, unknown[]]>([
  ["FILLWEIGHT", [[[120]], null]],
  ["WAXFACTOR", [[[200]], [[172]]]],
  ["WEIGHOUT", [[[1.2]], 1]],
])("%s tells the page that it runs", (id, given) => {
  const before = count();
  registered.get(id)?.(...given);
  expect(count()).toBe(before + 1);
});
