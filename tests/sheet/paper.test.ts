import { describe, expect, it } from "vitest";
import { usualPaper } from "../../src/sheet/paper";

describe("the paper usual in a region", () => {
  // Source: Unicode CLDR, supplemental measurementData: US-Letter in BZ CA CL CO CR GT MX NI PA PH PR SV US VE, else A4.
  it.each([
    ["en-US", "letter"],
    ["fr-CA", "letter"],
    ["es-MX", "letter"],
    ["fil-PH", "letter"],
    ["en-us", "letter"],
    ["en-GB", "a4"],
    ["de-DE", "a4"],
    ["ca-ES", "a4"],
    ["pt-BR", "a4"],
    ["zh-Hans-CN", "a4"],
    ["es-Latn-VE", "letter"],
  ])("%s: %s", (language, paper) => {
    expect(usualPaper(language)).toBe(paper);
  });

  it("is A4 where a tag names no region, whatever the language", () => {
    for (const language of ["en", "ca", "pa", "ni", "", "de-1996", "de-u-co-phonebk"])
      expect(usualPaper(language)).toBe("a4");
  });
});
