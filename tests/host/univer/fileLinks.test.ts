import { expect, it } from "vitest";
import { fromUniver } from "../../../src/host/univer/file/fromUniver";
import { targetOf } from "../../../src/host/univer/file/links";
import { toUniver } from "../../../src/host/univer/file/toUniver";
import { everythingBook } from "./everythingBook";

it("names the sheet that a link leads to so that it reads as no cell", () => {
  const place = (sheet: string) =>
    targetOf(
      "#gid=7&range=B2",
      (id) => (id === "7" ? sheet : undefined),
      () => undefined,
    ).place;
  expect(place("Q1")).toBe("'Q1'!B2");
  expect(place("Maker's costs")).toBe("'Maker''s costs'!B2");
});

it("leads links of the file to their sheet when that is called another way", () => {
  const book = everythingBook();
  const data = toUniver(book, "x");
  const sheets = { ...data.sheets, 7: { ...data.sheets[7], name: "Put by" } };
  const places = fromUniver({ ...data, sheets }, book).sheets[0]?.links.map(({ place }) => place);
  expect(places).toContain("'Put by'!A1");
  expect(places).not.toContain("'Kept aside'!A1");
  expect(fromUniver(data, book).sheets[0]?.links).toBe(book.sheets[0]?.links);
});
