import { bench, describe } from "vitest";
import { call, down } from "./built";

const water = Array.from({ length: 10_000 }, (_, i) => 100 + i / 100);
const column = down(...water);

describe("10,000 fills", () => {
  bench("one call with the whole column", () => {
    call("FILLWEIGHT", column, 0.86);
  });
  bench("a call for each cell", () => {
    for (const one of water) call("FILLWEIGHT", one, 0.86);
  });
  bench("bare multiplication, no checks", () => {
    water.map((one) => [one * 0.86]);
  });
});
