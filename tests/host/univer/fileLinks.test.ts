import { expect, it } from "vitest";
import { targetOf } from "../../../src/host/univer/file/links";

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
