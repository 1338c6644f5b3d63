/** What every host keeps to, whichever spreadsheet program stands behind it. */

import { beforeEach, describe, expect, it } from "vitest";
import { DamagedSettings, type Host, type SourceRows } from "../../src/host/host";
import type { Cell, Content, Sheet } from "../../src/sheet/sheet";
import { HOSTILE_TEXTS } from "../hostileTexts";

/** A host to test, and what a user does beside it. */
export interface Bench {
  readonly host: Omit<Host, "onChange" | "print">;
  hideRow(sheet: string, row: number): Promise<void>;
  selectCells(sheet: string, range: string): Promise<void>;
  showSheet(sheet: string): Promise<void>;
  /** Types into A1 of a sheet. */
  typeInto(sheet: string): Promise<void>;
  /** Adds a sheet and presses Stop once so much of it is done; gives the message. */
  stopAdding(sheet: Sheet, share: number): Promise<string>;
  /** Spoils the settings that are kept and reads them at once; gives the message. */
  readSpoiltSettings(): Promise<string>;
  /** Listens with onChange. */
  listen(): Promise<Listening>;
}

export interface Listening {
  calls(): Promise<number>;
  stop(): Promise<void>;
}

/** A busy page answers late: only what never comes meets its end. */
const PATIENCE = { timeout: 60_000 };

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

/**
 * All numbers are invented; rows and columns count from 0.
 * @param takesInRows whether the spreadsheet program is not too old to let a table grow
 */
export function hostContract(bench: () => Bench, takesInRows = true): void {
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

  describe.runIf(takesInRows)("taking in rows", () => {
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

  describe("a table", () => {
    it("is listed in the order of the sheets and on them row by row, with its place and headings", async () => {
      const [below, right, left] = ["a", "b", "c"].map((end) => name + end) as [string, string, string];
      const cells = [
        ...cellsAt(0, 0, [["Wax"], [1]]),
        ...cellsAt(0, 3, [["Oil"], [2]]),
        ...cellsAt(4, 0, [["Dye"], [3]]),
      ];
      await bench().host.addSheet({
        name,
        widths: [],
        cells,
        tables: [
          { name: below, row: 4, column: 0, headings: ["Dye"], rows: 1 },
          { name: right, row: 0, column: 3, headings: ["Oil"], rows: 1 },
          { name: left, row: 0, column: 0, headings: ["Wax"], rows: 1 },
        ],
      });
      const first = name;
      name = `${name} more`;
      const last = `${first}z`;
      const tables = [{ name: last, row: 0, column: 0, headings: ["Wax"], rows: 1 }];
      await bench().host.addSheet({ name, widths: [], cells: cellsAt(0, 0, [["Wax"], [1]]), tables });
      const listed = (await bench().host.tables()).filter((one) => one.name.startsWith(first));
      expect(listed).toEqual([
        { name: left, headings: ["Wax"], place: { sheet: first, row: 0, column: 0, rows: 2, columns: 1 } },
        { name: right, headings: ["Oil"], place: { sheet: first, row: 0, column: 3, rows: 2, columns: 1 } },
        { name: below, headings: ["Dye"], place: { sheet: first, row: 4, column: 0, rows: 2, columns: 1 } },
        { name: last, headings: ["Wax"], place: { sheet: name, row: 0, column: 0, rows: 2, columns: 1 } },
      ]);
    });

    it("that is not there is refused by its name, with what to do", async () => {
      const { host } = bench();
      const gone = {
        name: "Gone",
        place: { sheet: "Gone", row: 0, column: 0, rows: 2, columns: 1 },
        headings: ["Wax"],
      };
      const refusal = /table "?Gone"?.*Choose/;
      await expect(host.read(gone)).rejects.toThrow(refusal);
      await expect(host.append([{ table: "Gone", headings: ["Wax"], rows: [[{ number: 1 }]] }])).rejects.toThrow(
        refusal,
      );
      await expect(host.takeInRows("Gone", 1)).rejects.toThrow(refusal);
    });
  });

  it("a single selected cell is refused: the whole is asked for", async () => {
    await withTable([["Tin", 2]]);
    await bench().selectCells(name, "B3:B3");
    await expect(bench().host.selection()).rejects.toThrow(/select the whole/i);
  });

  describe("a sheet", () => {
    it("gets a name of its own, and leaves one of that name as it is", async () => {
      const { host } = bench();
      await host.addSheet({ name, widths: [], cells: cellsAt(0, 0, [["first"]]) });
      const before = await host.sheetNames();
      const second = await host.addSheet({ name: name.toUpperCase(), widths: [], cells: cellsAt(0, 0, [["second"]]) });
      expect(second.toLowerCase()).not.toBe(name.toLowerCase());
      expect(await host.sheetNames()).toEqual([...before, second]);
      expect(await host.readSheet(name)).toEqual([["first"]]);
      expect(await host.readSheet(second)).toEqual([["second"]]);
    });

    it("with a table of a name that is taken is refused, and nothing is left of it", async () => {
      await withTable([["Tin", 2]]);
      const before = await bench().host.sheetNames();
      const tables = [{ name: name.toUpperCase(), row: 0, column: 0, headings: ["Wax"], rows: 1 }];
      const sheet = { name: `${name} more`, widths: [], cells: cellsAt(0, 0, [["Wax"], [1]]), tables };
      await expect(bench().host.addSheet(sheet)).rejects.toThrow(name.toUpperCase());
      expect(await bench().host.sheetNames()).toEqual(before);
    });

    it.each([0, 0.5])("whose adding is stopped at %s of the way leaves nothing behind", async (share) => {
      await withTable([["Tin", 2]]);
      const before = [await bench().host.sheetNames(), await bench().host.tables()];
      const tables = [{ name: `${name}b`, row: 0, column: 0, headings: ["Wax"], rows: 1 }];
      const sheet = { name: `${name} more`, widths: [], cells: cellsAt(0, 0, [["Wax"], [1]]), tables };
      expect(await bench().stopAdding(sheet, share)).toMatch(/abort/i);
      expect([await bench().host.sheetNames(), await bench().host.tables()]).toEqual(before);
      expect(await bench().host.activeSheet()).toBe(name);
    });

    it("takes texts as the texts they are", async () => {
      const cells = HOSTILE_TEXTS.map((text, row) => ({ row, column: 0, content: { text } }));
      await bench().host.addSheet({ name, widths: [], cells });
      expect(await bench().host.readSheet(name)).toEqual(HOSTILE_TEXTS.map((text) => [text]));
    });

    it("is read from A1 on, whatever stands first; a blank one holds nothing", async () => {
      const { host } = bench();
      await host.addSheet({ name, widths: [], cells: cellsAt(1, 1, [["x", null, 2], ["=1+1"]]) });
      expect(await host.readSheet(name)).toEqual([
        [null, null, null, null],
        [null, "x", null, 2],
        [null, 2, null, null],
      ]);
      name = `${name} more`;
      await host.addSheet({ name, widths: [], cells: [] });
      expect((await host.readSheet(name)).flat().filter((cell) => cell !== null)).toEqual([]);
    });

    it("tells what stands in its first cell, in the order of the sheets", async () => {
      const { host } = bench();
      const added = [["text"], ["=1+1"], [null]].map((row, i) => ({
        name: `${name} ${i}`,
        cells: cellsAt(0, 0, [row]),
      }));
      for (const { name, cells } of added) await host.addSheet({ name, widths: [], cells });
      const all = await host.firstCells();
      expect(all.map(({ sheet }) => sheet)).toEqual(await host.sheetNames());
      expect(all.slice(-3).map(({ value }) => value)).toEqual(["text", 2, null]);
    });

    it("that is not there is refused by its name", async () => {
      const { host } = bench();
      await expect(host.readSheet("Gone")).rejects.toThrow("Gone");
      await expect(host.write("Gone", cellsAt(0, 0, [[1]]))).rejects.toThrow("Gone");
      await expect(host.select({ sheet: "Gone", row: 0, column: 0, rows: 1, columns: 1 })).rejects.toThrow("Gone");
    });
  });

  it("writing puts contents into the cells named and leaves those between", async () => {
    const { host } = bench();
    await host.addSheet({
      name,
      widths: [],
      cells: cellsAt(0, 0, [
        ["a", "b", "c"],
        [1, "=1+1", 3],
      ]),
    });
    await host.write(name, [...cellsAt(0, 0, [["=1+1", null, "d"]]), ...cellsAt(1, 1, [[5]])]);
    await host.write(name, []);
    expect(await host.readSheet(name)).toEqual([
      [2, "b", "d"],
      [1, 5, 3],
    ]);
  });

  it("tells a formula from a number and from a text that looks like one", async () => {
    const { host } = bench();
    const cells = cellsAt(0, 0, [["a", 1, "=1+1", '="=1+1"', null]]);
    const text = { row: 0, column: 5, content: { text: "=1+1" } } as const;
    await host.addSheet({ name, widths: [], cells: [...cells, text] });
    const found = await Promise.all([0, 1, 2, 3, 4, 5].map((column) => host.isFormula(name, 0, column)));
    expect(found).toEqual([false, false, true, true, false, false]);
  });

  describe("adding rows", () => {
    const jar = [
      [{ number: 3 }, { text: "=Jar" }],
      [null, { text: "Bowl" }],
    ];

    it("puts each content under its heading, texts as texts, and leaves the other columns to the table", async () => {
      await withTable([["Tin", 2]]);
      await bench().host.append([{ table: name, headings: ["Quantity", "Vessel"], rows: jar }]);
      const { rows, below } = await read();
      expect(rows.map((row) => row.slice(0, 2))).toEqual([
        ["Tin", 2],
        ["=Jar", 3],
        ["Bowl", null],
      ]);
      expect(rows[0]?.[2]).toBe(4);
      // Blank, or worked out by the column's formula.
      expect([expect.any(Number), null]).toContainEqual(rows[1]?.[2]);
      expect(below).toBe(0);
    });

    it("is refused when a heading is missing, and nothing has changed", async () => {
      await withTable([["Tin", 2]]);
      const before = [await read(), await bench().host.readSheet(name)];
      const refused = bench().host.append([{ table: name, headings: ["Quantity", "Jar"], rows: jar }]);
      await expect(refused).rejects.toThrow('has no column "Jar". Name the column so again, then try once more.');
      expect([await read(), await bench().host.readSheet(name)]).toEqual(before);
    });

    it("fills the blank rows that a table ends with first", async () => {
      const { host } = bench();
      const cells = cellsAt(2, 1, [HEADINGS, ["Tin", 2, 200]]);
      await host.addSheet({
        name,
        widths: [],
        cells,
        tables: [{ name, row: 2, column: 1, headings: HEADINGS, rows: 2 }],
      });
      await host.append([{ table: name, headings: ["Quantity", "Vessel"], rows: jar }]);
      expect((await read()).rows).toEqual([
        ["Tin", 2, 200],
        ["=Jar", 3, null],
        ["Bowl", null, null],
      ]);
    });

    it("to two tables and to one that is not there yet is one step; the sheet that is shown stays", async () => {
      await withTable([["Tin", 2]]);
      const [first, other, fresh] = [name, `${name}b`, `${name}c`];
      const { host } = bench();
      await host.addSheet({
        name: other,
        widths: [],
        cells: cellsAt(0, 0, [["Wax"], ["W"]]),
        tables: [{ name: other, row: 0, column: 0, headings: ["Wax"], rows: 1 }],
      });
      const sheet = {
        name: fresh,
        widths: [],
        cells: cellsAt(0, 0, [["Oil"], ["O"]]),
        tables: [{ name: fresh, row: 0, column: 0, headings: ["Oil"], rows: 1 }],
      };
      await host.append([
        { table: first, headings: ["Vessel"], rows: [[{ text: "Jar" }]] },
        { table: other, headings: ["Wax"], rows: [[{ text: "V" }], [{ text: "U" }]] },
        sheet,
      ]);
      const all = await host.tables();
      const rowsOf = async (one: string) => {
        const table = all.find((found) => found.name === one);
        return table && (await host.read(table)).rows;
      };
      expect((await rowsOf(first))?.map(([vessel]) => vessel)).toEqual(["Tin", "Jar"]);
      expect([await rowsOf(other), await rowsOf(fresh)]).toEqual([[["W"], ["V"], ["U"]], [["O"]]]);
      expect(await host.activeSheet()).toBe(other);
    });

    it("to two tables adds to none when one of them refuses, and no sheet either", async () => {
      await withTable([["Tin", 2]]);
      const { host } = bench();
      const before = [await host.sheetNames(), await host.tables(), await read()];
      const sheet = { name: `${name} more`, widths: [], cells: cellsAt(0, 0, [["Oil"]]) };
      const taken = { ...sheet, tables: [{ name, row: 0, column: 0, headings: ["Oil"], rows: 1 }] };
      const rows = { table: name, headings: ["Vessel"], rows: [[{ text: "Jar" }]] };
      await expect(host.append([rows, taken])).rejects.toThrow(name);
      await expect(host.append([sheet, { ...rows, headings: ["Jar"] }])).rejects.toThrow('no column "Jar"');
      expect([await host.sheetNames(), await host.tables(), await read()]).toEqual(before);
    });

    it("overwrites nothing below the table: it is moved down, or the rows are refused", async () => {
      await withTable([["Tin", 2]], cellsAt(5, 1, [["a note", "kept"]]));
      const isAdded = await bench()
        .host.append([{ table: name, headings: ["Quantity", "Vessel"], rows: jar }])
        .then(
          () => true,
          () => false,
        );
      const cells = await bench().host.readSheet(name);
      expect(cells.filter((row) => row[1] === "a note" && row[2] === "kept")).toHaveLength(1);
      expect((await read()).rows).toHaveLength(isAdded ? 3 : 1);
    });
  });

  describe("settings", () => {
    it("are kept in the workbook as they are", async () => {
      const settings = { scale: 0.5, off: false, none: null, columns: { "Water (g)": ["fill", 1] } };
      await bench().host.keepSettings(settings);
      expect(await bench().host.settings()).toEqual(settings);
      await bench().host.keepSettings({});
      expect(await bench().host.settings()).toEqual({});
    });

    it("that are spoilt are told once and set aside, and new ones can be kept", async () => {
      expect(await bench().readSpoiltSettings()).toBe(new DamagedSettings().message);
      expect(await bench().host.settings()).toBeNull();
      await bench().host.keepSettings({ scale: 1 });
      expect(await bench().host.settings()).toEqual({ scale: 1 });
    });
  });

  it("calls back after an edit and after another sheet is shown, and no more once stopped", async () => {
    await withTable([["Tin", 2]]);
    const first = name;
    name = `${name} more`;
    await bench().host.addSheet({ name, widths: [], cells: [] });
    const heard = await bench().listen();
    await bench().typeInto(name);
    await expect.poll(() => heard.calls(), PATIENCE).toBeGreaterThan(0);
    const stopped = await bench().listen();
    await stopped.stop();
    // One that goes on listening tells when a call would have come.
    const going = await bench().listen();
    await bench().showSheet(first);
    await expect.poll(() => going.calls(), PATIENCE).toBeGreaterThan(0);
    expect(await stopped.calls()).toBe(0);
    await going.stop();
    await heard.stop();
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
