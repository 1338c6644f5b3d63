import { describe, expect, it } from "vitest";
import { newFactors } from "../../../src/runsheet/record/newFactors";
import { logOf, vesselsOf } from "./poured";

const TIN = vesselsOf(["Tin", 100, 0.86]);
const log = (...weighed: number[]) =>
  logOf(...weighed.map((weight, i): [string, string, number, number] => [`2026-330-0${i + 1}`, "tin ", weight, 100]));
/** A scale so fine that what it rounds does not show. */
const FINE = { unit: "g", division: 1e-6 } as const;
const says = (...weighed: number[]) => newFactors(log(...weighed), TIN, FINE).map((one) => one.says);
const offered = (...weighed: number[]) => newFactors(log(...weighed), TIN, FINE).map(({ offer }) => offer?.factor);

describe("the wax factors that the log shows", () => {
  it("are said of one pour, and offered from two on", () => {
    expect(says(84)).toEqual([
      "Tin: 0.84, from one pour: how sure is not known, so it is not offered yet; pour once more",
    ]);
    expect(offered(84)).toEqual([undefined]);
    expect(newFactors(log(84, 84), TIN, FINE)[0]?.offer).toEqual({ vessel: "Tin", row: 0, old: 0.86, factor: 0.84 });
  });

  it("wait until they are known to 0.03", () => {
    // Of pours with the same water the factor is their mean / 100 and its error their deviation / sqrt(n) / 100.
    // Three pours m - d, m, m + d: deviation d; t(2) = 4.302653 (Student's t, 95 %). 4.302653 x d / sqrt(3) / 100 is
    // 0.03 at d = 1.20767.
    expect(says(84 - 1.2076, 84, 84 + 1.2076)).toEqual(["Tin: 0.84 ± 0.03 (95 %), from 3 pours"]);
    expect(offered(84 - 1.2076, 84, 84 + 1.2076)).toEqual([expect.closeTo(0.84, 12)]);
    expect(offered(84 - 1.2078, 84, 84 + 1.2078)).toEqual([undefined]);
    // d = 2: 4.302653 x 2 / sqrt(3) / 100 = 0.0497.
    expect(says(82, 84, 86)).toEqual([
      "Tin: 0.84 ± 0.0497 (95 %), from 3 pours: not sure enough yet, ± 0.03 is wanted; pour once more",
    ]);
  });

  it("are never surer than the scale: of pours that weigh the same, by what it reads to", () => {
    const of = (division: number, unit: "g" | "oz" = "g") =>
      newFactors(log(84, 84), TIN, { unit, division }).map((one) => one.says);
    // By hand (GUM F.2.2.1): 1 / sqrt(12) x sqrt(1 + 0.84 ^ 2) / 100 = 0.00377; 1.96 times that.
    expect(of(1)).toEqual(["Tin: 0.84 ± 0.0074 (95 %), from 2 pours"]);
    expect(says(84, 84)).toEqual(["Tin: 0.84 ± 0.0001 (95 %), from 2 pours"]);
    // A step of 0.1 oz is 2.834952 g (NIST SP 811): the log is in g.
    expect(of(0.1, "oz")).toEqual(["Tin: 0.84 ± 0.0209 (95 %), from 2 pours"]);
    expect(of(5)).toEqual([
      "Tin: 0.84 ± 0.0369 (95 %), from 2 pours: not sure enough yet, ± 0.03 is wanted; pour once more",
    ]);
  });

  it("are never those of a candle weighed with its vessel, and that is said", () => {
    expect(says(84, 102)).toEqual([
      "Tin: 0.84, from one pour: how sure is not known, so it is not offered yet; pour once more; left out: 1.02 in 2026-330-02, for 0.7 to 1 was expected (weighed with its vessel?)",
    ]);
    expect(says(102)).toEqual([
      "Tin: left out: 1.02 in 2026-330-01, for 0.7 to 1 was expected (weighed with its vessel?)",
    ]);
    expect(offered(102)).toEqual([undefined]);
    expect(offered(100.1, 100.1)).toEqual([undefined]);
    expect(offered(100, 100)).toEqual([1]);
    expect(offered(69.9, 69.9)).toEqual([undefined]);
    expect(offered(70, 70)).toEqual([expect.closeTo(0.7, 12)]);
  });

  it("take each row with the water its vessel held then, and say nothing where nothing is new", () => {
    expect(says(86)).toEqual([]);
    const two = logOf(["a", "Tin", 84, 100], ["b", "Tin", 168, 200]);
    expect(newFactors(two, TIN, FINE).map(({ offer }) => offer?.factor)).toEqual([expect.closeTo(0.84, 12)]);
    // Without water, and of vessels that are not in the table, there is no factor.
    expect(newFactors(logOf(["a", "Tin", 84, null], ["b", "Jar", 84, 100]), TIN, FINE)).toEqual([]);
  });
});
