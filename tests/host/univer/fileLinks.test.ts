import { expect, it } from "vitest";
import type { Book } from "../../../src/file/book";
import { fromUniver } from "../../../src/host/univer/file/fromUniver";
import { targetOf, urlOf } from "../../../src/host/univer/file/links";
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

it("also those that write it in other capitals", () => {
  const book = everythingBook();
  const links = book.sheets[0]?.links.map((link) => ({ ...link, place: link.place?.toUpperCase() ?? null }));
  const shouting = { ...book, sheets: book.sheets.map((sheet, i) => (i === 0 ? { ...sheet, links } : sheet)) } as Book;
  const data = toUniver(shouting, "x");
  const sheets = { ...data.sheets, 7: { ...data.sheets[7], name: "Put by" } };
  const places = fromUniver({ ...data, sheets }, shouting).sheets[0]?.links.map(({ place }) => place);
  expect(links?.map(({ place }) => place)).toContain("'KEPT ASIDE'!A1");
  expect(places).toContain("'Put by'!A1");
  expect(fromUniver(data, shouting).sheets[0]?.links).toBe(links);
});

it("leads to a place in the workbook however the file writes it", () => {
  const book = everythingBook();
  const [sheet] = book.sheets;
  const place = `'${sheet?.name.replaceAll("'", "''")}'!B2`;
  const url = urlOf({ address: null, place }, book);
  expect(url).toBe(`#gid=${sheet?.id}&range=B2`);
  expect(urlOf({ address: `#${place}`, place: null }, book)).toBe(url);
  expect(urlOf({ address: "#nowhere", place: null }, book)).toBeNull();
});
