import { describe, expect, it } from "vitest";
import { packWords } from "../../../src/runsheet/plan/packWords";

const pack = (count: number, size: number, supplier = "") => ({ count, size, supplier });

describe("packWords", () => {
  it.each([
    [[pack(2, 1000), pack(1, 250)], "2 x 1000 g + 1 x 250 g"],
    [
      [pack(2, 1000, "North"), pack(1, 250, "South"), pack(1, 500, "North")],
      "2 x 1000 g + 1 x 500 g from North, 1 x 250 g from South",
    ],
    // A pound is 453.59237 g, by definition.
    [[pack(3, 453.59237, "North")], "3 x 453.592 g from North"],
    [[], "no pack known"],
  ])("says %o as %s", (buy, words) => expect(packWords({ buy, isCounted: false }, "g")).toBe(words));

  it("counts what is counted", () => {
    expect(packWords({ buy: [pack(2, 12, "North")], isCounted: true }, "g")).toBe("2 x 12 from North");
  });
});
