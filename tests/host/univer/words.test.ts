import conditionTexts from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import coreTexts from "@univerjs/preset-sheets-core/locales/en-US";
import validationTexts from "@univerjs/preset-sheets-data-validation/locales/en-US";
import filterTexts from "@univerjs/preset-sheets-filter/locales/en-US";
import findTexts from "@univerjs/preset-sheets-find-replace/locales/en-US";
import linkTexts from "@univerjs/preset-sheets-hyper-link/locales/en-US";
import noteTexts from "@univerjs/preset-sheets-note/locales/en-US";
import sortTexts from "@univerjs/preset-sheets-sort/locales/en-US";
import tableTexts from "@univerjs/preset-sheets-table/locales/en-US";
import { expect, it } from "vitest";
import { OUR_WORDS } from "../../../src/host/univer/editing/words";

const paths = (part: object, before = ""): string[] =>
  Object.entries(part).flatMap(([key, value]) =>
    typeof value === "string" ? [`${before}${key}`] : paths(value as object, `${before}${key}/`),
  );

it("stands for words that Univer has", () => {
  const theirs = [
    ...[coreTexts, conditionTexts, validationTexts, filterTexts, findTexts, linkTexts, noteTexts, sortTexts],
    tableTexts,
  ].flatMap((one) => paths(one));
  const ours = paths(OUR_WORDS);
  expect(ours.length).toBeGreaterThan(10);
  expect(ours.filter((path) => !theirs.includes(path))).toEqual([]);
});
