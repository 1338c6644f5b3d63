import { expect, it } from "vitest";
import { registered } from "./built";

/** What they leave on the page for others. */
const count = () =>
  (globalThis as { [key: symbol]: { count: number } | undefined })[Symbol.for("pourwright functions")]?.count ?? 0;

it.each<[string, unknown[]]>([
  ["FILLWEIGHT", [[[120]], null]],
  ["WAXFACTOR", [[[200]], [[172]]]],
  ["WEIGHOUT", [[[1.2]], 1]],
])("%s tells the page that it runs", (id, given) => {
  const before = count();
  registered.get(id)?.(...given);
  expect(count()).toBe(before + 1);
});
