import { afterAll, describe, expect, it } from "vitest";
import { toUniver } from "../../../src/host/univer/file/toUniver";
import { everythingBook } from "./everythingBook";
import { UniverInNode } from "./univerInNode";

let ids = 0;

describe("a workbook of a file in Univer", () => {
  const univer = new UniverInNode();
  afterAll(() => univer.dispose());

  it("comes back as it was", async () => {
    const book = everythingBook();
    const workbook = await univer.open(toUniver(book, `book${ids++}`));
    expect(univer.book(workbook, book)).toEqual(book);
  });
});
