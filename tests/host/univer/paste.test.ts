import { describe, expect, it } from "vitest";
import { htmlOf, withFormats } from "../../../src/host/univer/editing/paste";

describe("cells as text from another program", () => {
  it("keep their places and their signs on the way into the sheet", () => {
    expect(
      htmlOf([
        ["", "Tin & lid", "<5 g"],
        ["two\nlines", "", "6%"],
      ]),
    ).toBe(
      "<table><tr><td></td><td>Tin &amp; lid</td><td>&lt;5 g</td></tr><tr><td>two<br>lines</td><td></td><td>6%</td></tr></table>",
    );
  });
});

describe("number formats that are called by a name", () => {
  it("are written out, and those that are not known are left out", () => {
    expect(withFormats('.a{mso-number-format:Percent;color:red} .b{mso-number-format:"Short Date";}')).toBe(
      '.a{mso-number-format:"0\\.00\\%";color:red} .b{mso-number-format:"m\\/d\\/yyyy";}',
    );
    expect(withFormats(".a{mso-number-format:Nonsense;color:red}")).toBe(".a{;color:red}");
    const plain = '.a{mso-number-format:"0\\.0%";}';
    expect(withFormats(plain)).toBe(plain);
  });
});
