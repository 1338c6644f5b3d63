/** What every host keeps to, whichever spreadsheet program stands behind it. */

import { beforeEach, describe, expect, it } from "vitest";
import type { Host, SourceRows } from "../../src/host/host";
import type { Cell, Content, Sheet } from "../../src/sheet/sheet";

/** A host to test, and what a user does beside it. */
export interface Bench {
  readonly host: Pick<
    Host,
    "addSheet" | "tables" | "read" | "readSheet" | "write" | "selection" | "takeInRows" | "activeSheet" | "select"
  >;
  hideRow(sheet: string, row: number): Promise<void>;
  selectCells(sheet: string, range: string): Promise<void>;
}

const HEADINGS = ["Vessel", "Quantity", "Fill"];

/** A cell's content by what a user would type. */
const typed = (value: string | number): Content =>
  typeof value === "number" ? { number: value } : value.startsWith("=") ? { formula: value } : { text: value };

/** Cells of rows from a place on; null leaves a cell out. */
const cellsAt = (row: number, column: number, rows: readonly (readonly (string | number | null)[])[]): Cell[] =>
  rows.flatMap((values, r) =>
    values.flatMap((value, c): Cell[] =>
      value === null ? [] : [{ row: row + r, column: column + c, content: typed(value) }],
    ),
  );

/** All numbers are invented; rows and columns count from 0. */
export function hostContract(bench: () => Bench): void {
  let count = 0;
  let name = "";
  beforeEach(() => {
    name = `Pours${++count}`;
  });

  /** A sheet of the current name with a table of that name from B3, its Fill worked out; and what stands elsewhere. */
  const withTable = async (
    rows: readonly (readonly (string | number | null)[])[],
    more: readonly Cell[] = [],
    tables: Sheet["tables"] = [],
  ): Promise<void> => {
    const formula = `=${name}[[#This Row],[Quantity]]*C4`;
    const body = rows.map((row, r) => [...row, formula.replace("C4", `C${4 + r}`)]);
    await bench().host.addSheet({
      name,
      widths: [12, 12, 12, 12, 12],
      cells: [...cellsAt(2, 1, [HEADINGS, ...body]), ...more],
      tables: [{ name, row: 2, column: 1, headings: HEADINGS, rows: rows.length }, ...tables],
    });
  };
  const read = async (): Promise<SourceRows> => {
    const { host } = bench();
    const table = (await host.tables()).find((one) => one.name === name);
    if (!table) throw new Error(`no table ${name}`);
    return host.read(table);
  };
  const paste = (row: number, rows: readonly (readonly (string | number | null)[])[]): Promise<void> =>
    bench().host.write(name, cellsAt(row, 1, rows));

  describe("rows below a table", () => {
    it("are none where there are none, or a blank row is between", async () => {
      await withTable([["Tin", 2]], cellsAt(5, 1, [["a note"]]));
      expect(await read()).toMatchObject({ below: 0, rows: [["Tin", 2, 4]] });
    });

    it("are counted down to the first blank one, whatever is filled of them", async () => {
      await withTable([["Tin", 2]]);
      await paste(4, [["Jar"], [null, 3], [null, null, 5], [null], ["beyond"]]);
      expect((await read()).below).toBe(3);
    });

    it("are not what stands beside, nor another table's", async () => {
      const other = `${name}b`;
      await withTable(
        [["Tin", 2]],
        [...cellsAt(4, 0, [["left"]]), ...cellsAt(4, 4, [["right"]]), ...cellsAt(5, 2, [["Wax"], ["W"]])],
        [{ name: other, row: 5, column: 2, headings: ["Wax"], rows: 1 }],
      );
      expect((await read()).below).toBe(0);
      await paste(4, [["Jar"]]);
      expect((await read()).below).toBe(1);
    });
  });

  describe("rows below a selection", () => {
    it("are counted too, in its columns, and when it is read again", async () => {
      await withTable(
        [["Tin", 2]],
        cellsAt(9, 1, [
          ["Vessel", 1],
          ["A", 2],
          ["B", 3],
          ["C", 4],
        ]),
      );
      await bench().selectCells(name, "B10:C11");
      const selection = await bench().host.selection();
      expect(selection).toMatchObject({ name: "", headings: ["Vessel", "1"], rows: [["A", 2]], below: 2, hidden: [] });
      await bench().host.write(name, cellsAt(13, 1, [["D"]]));
      expect((await bench().host.read(selection)).below).toBe(3);
    });

    it("are the rest of a table of which a part is selected", async () => {
      await withTable([
        ["Tin", 2],
        ["Jar", 3],
        ["Bowl", 4],
      ]);
      await bench().selectCells(name, "B3:C4");
      expect(await bench().host.selection()).toMatchObject({ rows: [["Tin", 2]], below: 2 });
    });
  });

  it("hidden rows are told by their number below the heading", async () => {
    await withTable([
      ["Tin", 2],
      ["Jar", 3],
      ["Bowl", 4],
    ]);
    expect((await read()).hidden).toEqual([]);
    await bench().hideRow(name, 4);
    expect((await read()).hidden).toEqual([1]);
    // A row below is no row of the table.
    await paste(6, [["Cup", 1]]);
    await bench().hideRow(name, 6);
    expect(await read()).toMatchObject({ below: 1, hidden: [1] });
  });

  describe("taking in rows", () => {
    it("makes them rows of the table, with its formulas in the blank cells and nothing overwritten", async () => {
      await withTable([
        ["Tin", 2],
        ["Jar", 3],
      ]);
      await paste(5, [
        ["Bowl", 5],
        ["=1+1", 6, 7],
        ["Cup", 8],
      ]);
      await bench().host.takeInRows(name, 3);
      const { rows, below, place } = await read();
      expect(place).toMatchObject({ row: 2, column: 1, rows: 6, columns: 3 });
      // Each blank cell has its own row's quantity times itself: the reference to a cell has moved along.
      expect(rows).toEqual([
        ["Tin", 2, 4],
        ["Jar", 3, 9],
        ["Bowl", 5, 25],
        [2, 6, 7],
        ["Cup", 8, 64],
      ]);
      expect(below).toBe(0);
    });

    it("of a table without formulas leaves what is shown where it is", async () => {
      const { host } = bench();
      await host.addSheet({
        name,
        widths: [12, 12, 12],
        cells: cellsAt(2, 1, [HEADINGS, ["Tin", 2, 200], ["Jar", 3, 300]]),
        tables: [{ name, row: 2, column: 1, headings: HEADINGS, rows: 1 }],
      });
      await host.select({ sheet: name, row: 3, column: 1, rows: 1, columns: 3 });
      await host.takeInRows(name, 1);
      expect(await read()).toMatchObject({
        below: 0,
        rows: [
          ["Tin", 2, 200],
          ["Jar", 3, 300],
        ],
      });
      expect((await host.selection()).headings).toEqual(["Tin", "2", "200"]);
    });

    it("leaves out the rows that were not asked for", async () => {
      await withTable([["Tin", 2]]);
      await paste(4, [["Jar", 3], ["a note"]]);
      await bench().host.takeInRows(name, 1);
      expect(await read()).toMatchObject({
        rows: [
          ["Tin", 2, 4],
          ["Jar", 3, 9],
        ],
        below: 1,
      });
      expect((await bench().host.readSheet(name))[5]?.slice(1)).toEqual(["a note", null, null]);
    });

    it("keeps a text that looks like a formula the text it is", async () => {
      await withTable([["Tin", 2]]);
      await bench().host.write(name, [
        ...cellsAt(4, 1, [["Jar", 3]]),
        { row: 4, column: 3, content: { text: "=2+2" } },
      ]);
      await bench().host.takeInRows(name, 1);
      expect((await read()).rows[1]).toEqual(["Jar", 3, "=2+2"]);
    });

    it("is refused when the rows are not there any more, or another table's", async () => {
      await withTable([["Tin", 2]], cellsAt(5, 1, [["Wax"], ["W"]]), [
        { name: `${name}b`, row: 5, column: 1, headings: ["Wax"], rows: 1 },
      ]);
      await paste(4, [["Jar", 3]]);
      const before = await bench().host.readSheet(name);
      await expect(bench().host.takeInRows(name, 2)).rejects.toThrow(
        `Only 1 row stands right below the table ${name} now. Check it, then try again.`,
      );
      expect(await bench().host.readSheet(name)).toEqual(before);
      expect((await read()).place.rows).toBe(2);
    });
  });

  it("the sheet that is shown is known by its name", async () => {
    await withTable([["Tin", 2]]);
    const first = name;
    expect(await bench().host.activeSheet()).toBe(first);
    name = `${name} more`;
    await bench().host.addSheet({ name, widths: [], cells: [] });
    expect(await bench().host.activeSheet()).toBe(name);
    await bench().host.select({ sheet: first, row: 0, column: 0, rows: 1, columns: 1 });
    expect(await bench().host.activeSheet()).toBe(first);
  });
}
