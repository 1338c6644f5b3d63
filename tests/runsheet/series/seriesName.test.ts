import { describe, expect, it } from "vitest";
import { seriesName } from "../../../src/runsheet/series/seriesName";

/** Bowls of soft wax with rain; all invented. */
const COMMON = {
  ...{ vessel: "Bowl", wax: "Soft wax", scent: "Rain", load: 0.06, cureDays: 14, product: "container" },
  basis: "of wax" as const,
};
const nameOf = (changes: Partial<Parameters<typeof seriesName>[0]>) =>
  seriesName({ ...COMMON, ...changes }, "of total");

describe("the name of a series", () => {
  it("says what its candles have in common", () => {
    expect(nameOf({})).toBe("Bowl, Soft wax, Rain 6 % of wax, cured 14 days");
  });

  it("says what is not written as it is taken", () => {
    expect(nameOf({ vessel: "", wax: "", cureDays: undefined })).toBe(
      "no vessel named, the usual wax, Rain 6 % of wax",
    );
    expect(nameOf({ scent: "", load: undefined })).toBe("Bowl, Soft wax, no scent, cured 14 days");
    expect(nameOf({ load: undefined })).toBe("Bowl, Soft wax, Rain, cured 14 days");
    // A load that says no basis is on the usual one.
    expect(nameOf({ basis: undefined })).toContain("Rain 6 % of total");
  });

  it("counts a day as one, and names a tea light", () => {
    expect(nameOf({ cureDays: 1, product: "tea light" })).toBe(
      "Bowl, Soft wax, Rain 6 % of wax, cured 1 day, tea light",
    );
    expect(nameOf({ cureDays: 0 })).toContain("cured 0 days");
  });
});
