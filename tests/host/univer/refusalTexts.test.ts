import coreTexts from "@univerjs/preset-sheets-core/locales/en-US";
import { expect, it } from "vitest";
import { refusalTexts } from "../../../src/host/univer/refusalTexts";

const textsOf = (part: unknown): string[] =>
  typeof part === "string" ? [part] : Object.values((part ?? {}) as object).flatMap(textsOf);

it("says of no refused change that somebody else could allow it, and leaves all other texts as they are", () => {
  const before = textsOf(coreTexts);
  const after = textsOf(refusalTexts(coreTexts));
  expect(before.filter((text) => text.includes("contact the creator")).length).toBeGreaterThan(20);
  expect(after.filter((text) => text.includes("contact the creator"))).toEqual([]);
  expect(after).toHaveLength(before.length);
  expect(new Set(after.filter((text, i) => text !== before[i]))).toEqual(
    new Set(["Here this workbook can only be looked at. It is as it was."]),
  );
});
