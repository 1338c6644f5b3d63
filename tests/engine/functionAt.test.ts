import { describe, expect, it } from "vitest";
import { functionAt } from "../../src/engine/functionAt";

/** The formula's place is where the stroke stands. */
const at = (marked: string) => functionAt(marked.replace("|", ""), marked.indexOf("|"));

describe("the function at the caret", () => {
  it.each([
    ["=POUR.FI|", "POUR.FI"],
    ["=POUR.|", "POUR."],
    ["=POUR.FILL|WEIGHT(B2)", "POUR.FILLWEIGHT"],
    ["=POUR.FILLWEIGHT|(B2)", "POUR.FILLWEIGHT"],
    ["=POUR.FILLWEIGHT(|", "POUR.FILLWEIGHT"],
    ["=POUR.FILLWEIGHT(B2|", "POUR.FILLWEIGHT"],
    ["=ROUND(POUR.WAXPART(B2,6%|),1)", "POUR.WAXPART"],
    ["=ROUND(POUR.WAXPART(B2,6%),1|)", "ROUND"],
    ["=POUR.WAXPART((1+2)*3|", "POUR.WAXPART"],
    ['=POUR.SCENTSPLIT(A1,6%,"of (total|', "POUR.SCENTSPLIT"],
    ['=POUR.SCENTSPLIT(A1,6%,")",|', "POUR.SCENTSPLIT"],
    ["=POUR.FILLWEIGHT('A) (b'!B2|", "POUR.FILLWEIGHT"],
    ["=1+|2", null],
    ["=ROUND(1,2)|", null],
    ["POUR.FILLWEIGHT(|", null],
    ["=B2|+1", null],
    ['="POUR.FI|', null],
  ])("of %s is %s", (marked, name) => {
    expect(at(marked)).toBe(name);
  });
});
