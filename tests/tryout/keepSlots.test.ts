import type { IWorkbookData } from "@univerjs/core";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { workbookData } from "../../src/host/univer/workbook";
import { SAMPLES } from "../../src/samples/index";
import { isAmong, pieceOf, type Slot, slotsOf, slotsOfChange, workbookOf } from "../../src/tryout/keep/slots";

const piecesOf = (data: IWorkbookData) => new Map(slotsOf(data).map((slot) => [slot, pieceOf(data, slot)]));

/** A workbook of these sheets, by id, with the rows of each. */
const workbook = (sheets: Record<string, Record<number, Record<number, object>>>) =>
  ({
    ...workbookData("any", []),
    sheetOrder: Object.keys(sheets),
    sheets: Object.fromEntries(Object.entries(sheets).map(([id, cellData]) => [id, { id, name: id, cellData }])),
  }) as IWorkbookData;

describe("the pieces of a workbook", () => {
  it.each(SAMPLES.map((sample) => [sample.title, sample] as const))("make up %s again", (_, { sheets }) => {
    const data = workbookData("first", sheets());
    // What is not JSON was never there: Univer's own data is passed on as JSON too.
    expect(workbookOf(piecesOf(data))).toEqual({ ...JSON.parse(JSON.stringify(data)), id: "" });
  });

  it("make up any cells of any sheets again, whatever the sheets are called", () => {
    const cell = fc.record({ v: fc.oneof(fc.string(), fc.double({ noNaN: true, noDefaultInfinity: true })) });
    const index = (max: number) => fc.nat({ max }).map(String);
    const rows = fc.dictionary(index(3000), fc.dictionary(index(40), cell, { minKeys: 1 }));
    const ids = fc.string({ minLength: 1 }).filter((id) => id !== "__proto__" && !/^\d+$/.test(id));
    fc.assert(
      fc.property(fc.dictionary(ids, rows, { maxKeys: 4 }), (sheets) => {
        const data = JSON.parse(JSON.stringify(workbook(sheets)));
        expect(workbookOf(piecesOf(data)).sheets).toEqual(data.sheets);
      }),
      { numRuns: 100 },
    );
  });

  it("do not depend on the id that the workbook has while it is open", () => {
    const data = workbook({ a: { 0: { 0: { v: 1 } } } });
    expect(piecesOf({ ...data, id: "another" })).toEqual(piecesOf(data));
  });

  it("refuse to make up a workbook when one is missing or no text of data", () => {
    const pieces = piecesOf(workbook({ a: { 0: { 0: { v: 1 } } } }));
    for (const slot of ["book", "sheet/a", "cells/a/0"]) {
      expect(() => workbookOf(new Map(pieces).set(slot, "{"))).toThrow(/JSON/);
    }
    pieces.delete("sheet/a");
    expect(() => workbookOf(pieces)).toThrow();
  });
});

describe("the pieces that a change concerns", () => {
  const rows = Object.fromEntries([0, 249, 250, 900].map((row) => [row, { 0: { v: row } }]));
  const data = workbook({ a: rows, b: rows });
  const concerned = (change: Parameters<typeof slotsOfChange>[0]): Slot[] => {
    const slots = new Set(slotsOfChange(change));
    return slotsOf(data).filter((slot) => isAmong(slots, slot));
  };

  it("are few for a cell", () => {
    expect(concerned({ sheets: ["b"], rows: [251], isEdit: true })).toEqual(["sheet/b", "cells/b/1"]);
  });

  it("are all of a sheet when its rows move", () => {
    expect(concerned({ sheets: ["a"], rows: "all", isEdit: true })).toEqual([
      "sheet/a",
      "cells/a/0",
      "cells/a/1",
      "cells/a/3",
    ]);
  });

  it("are no cells when a column becomes wider", () => {
    expect(concerned({ sheets: ["a"], rows: "none", isEdit: true })).toEqual(["sheet/a"]);
  });
});
