import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { Book, BookCell, BookSheet, BookTable, Condition } from "../../../src/file/book";
import { emptySheet } from "../../../src/file/emptyBook";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { changedRich } from "../read/changed";
import { richWorkbook } from "../richWorkbook";
import { withCell } from "./edits";
import { faultsOf } from "./packageFaults";

/** One change at a time to a workbook written by hand: which parts it changes, and how. */

const original = richWorkbook();
const before = unzipSync(original);
const { book } = openFile(original, "rich.xlsx");
const [POURS, COSTS, SUMMARY, OLD] = book.sheets.map(({ id }) => id) as [string, string, string, string];

const onSheet = (id: string, change: (sheet: BookSheet) => BookSheet): Book => ({
  ...book,
  sheets: book.sheets.map((sheet) => (sheet.id === id ? change(sheet) : sheet)),
});

const cellAt = (id: string, row: number, column: number): BookCell => {
  const sheet = book.sheets.find((one) => one.id === id);
  const cell = sheet?.rows.find((one) => one.row === row)?.cells.find((one) => one.column === column);
  if (!cell) throw new Error("no cell");
  return cell;
};

const withChange = (id: string, row: number, column: number, change: Partial<BookCell>): Book =>
  onSheet(id, (sheet) => withCell(sheet, row, column, { ...cellAt(id, row, column), ...change }));

/** Saves, checks the package and the way back, and gives the parts with those that differ. */
function saved(now: Book) {
  const { bytes, lost } = saveBook(original, now);
  expect(faultsOf(bytes)).toEqual([]);
  const after = unzipSync(bytes);
  const differ = [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((path) => {
    const [was, is] = [before[path], after[path]];
    return !was || !is || Buffer.compare(was, is) !== 0;
  });
  const text = (path: string): string => strFromU8(after[path] ?? new Uint8Array());
  return { differ, lost, text, after, opened: openFile(bytes, "rich.xlsx").book };
}

const NO_CHAIN = ["[Content_Types].xml", "xl/_rels/book.xml.rels", "xl/calcChain.xml"];

describe("cells", () => {
  it("change their own element alone", () => {
    const { differ, text } = saved(withChange(POURS, 3, 1, { value: 13 }));
    expect(differ).toEqual(["xl/sheets/first.xml"]);
    const row = '<c r="B4" s="5"><v>';
    const was = strFromU8(before["xl/sheets/first.xml"] as Uint8Array);
    const cell = /<c r="B4"[^>]*><v>12<\/v>/.exec(was)?.[0] ?? row;
    expect(
      text("xl/sheets/first.xml").replace("<v>13</v>", "<v>12</v>").replace('<row r="4">', '<row r="4" spans="1:6">'),
    ).toBe(was);
    expect(text("xl/sheets/first.xml")).toContain(cell.replace("12", "13"));
  });

  it("keep their formula's text, its group and its mark where only the value is another one", () => {
    const now = {
      ...book,
      sheets: onSheet(COSTS, (sheet) =>
        withCell(withCell(sheet, 4, 2, { ...cellAt(COSTS, 4, 2), value: 99 }), 3, 4, {
          ...cellAt(COSTS, 3, 4),
          value: 1,
        }),
      ).sheets,
    };
    const { differ, text, opened } = saved(now);
    expect(differ).toEqual(["xl/sheets/costs.xml"]);
    expect(text("xl/sheets/costs.xml")).toContain('<c r="C5"><f t="shared" si="0"/><v>99</v></c>');
    expect(text("xl/sheets/costs.xml")).toMatch(/<c r="E4" cm="1"><f t="array" ref="E4:E6">[^<]*<\/f><v>1<\/v>/);
    expect(opened).toEqual(now);
  });

  it("say their formulas themselves once one of their group has another", () => {
    const now = withChange(COSTS, 3, 2, { formula: "=B4*2" });
    const { differ, text, opened } = saved(now);
    expect(differ.sort()).toEqual([...NO_CHAIN, "xl/sheets/costs.xml"].sort());
    expect(text("xl/sheets/costs.xml")).not.toContain('t="shared"');
    expect(text("xl/sheets/costs.xml")).toContain(`<f>B6*Markup+'Maker''s costs'!$B$4</f>`);
    expect(opened).toEqual(now);
  });

  it("hold formulas of ours as dynamic arrays, by the mark that the file has", () => {
    const now = onSheet(SUMMARY, (sheet) =>
      withCell(sheet, 9, 0, { value: 215, formula: "=POUR.FILLWEIGHT(250,0.86)" }),
    );
    const { text } = saved(now);
    expect(text("xl/sheets/summary.xml")).toContain(
      '<c r="A10" cm="1"><f t="array" ref="A10">_xldudf_POUR_FILLWEIGHT(250,0.86)</f><v>215</v></c>',
    );
  });

  it("hold formulas of functions that came with dynamic arrays as such, also in a single cell", () => {
    const formula = "=LET(wicks,UNIQUE(FILTER(A1:A3,A1:A3<>0)),SUM(wicks))";
    const plain = "=SUMPRODUCT((A1:A3<>0)*1)";
    const now = onSheet(SUMMARY, (sheet) =>
      withCell(withCell(sheet, 9, 0, { value: 1, formula }), 9, 1, { value: 3, formula: plain }),
    );
    const { text } = saved(now);
    expect(text("xl/sheets/summary.xml")).toContain(
      '<c r="A10" cm="1"><f t="array" ref="A10">_xlfn.LET(_xlpm.wicks,_xlfn.UNIQUE(_xlfn._xlws.FILTER(A1:A3,A1:A3&lt;&gt;0)),SUM(_xlpm.wicks))</f><v>1</v></c>',
    );
    expect(text("xl/sheets/summary.xml")).toContain('<c r="B10"><f>SUMPRODUCT((A1:A3&lt;&gt;0)*1)</f><v>3</v></c>');
  });

  it("hold what files have no word for by the nearest that they have", () => {
    const odd: readonly Partial<BookCell>[] = [
      { value: { error: "#SPILL!" }, formula: "=A1:A3" },
      { value: Number.NaN, formula: "=1" },
      { value: "x".repeat(40_000) },
    ];
    const now = onSheet(SUMMARY, (sheet) => odd.reduce((one, cell, column) => withCell(one, 9, column, cell), sheet));
    const { text, lost, opened } = saved(now);
    expect(text("xl/sheets/summary.xml")).toContain('<c r="A10" t="e"><f>A1:A3</f><v>#VALUE!</v></c>');
    expect(text("xl/sheets/summary.xml")).toContain('<c r="B10" t="e"><f>1</f><v>#NUM!</v></c>');
    expect(opened.sheets[2]?.rows.at(-1)?.cells[2]?.value).toBe("x".repeat(32_767));
    expect(lost.map(({ what }) => what)).toEqual(["long texts in C10"]);
  });

  it("hold as text what begins like a formula", () => {
    const { text, opened } = saved(onSheet(SUMMARY, (sheet) => withCell(sheet, 9, 0, { value: "=1+1" })));
    expect(text("xl/sheets/summary.xml")).toContain('<c r="A10" t="inlineStr"><is><t>=1+1</t></is></c>');
    expect(opened.sheets[2]?.rows.at(-1)?.cells[0]).toEqual({ column: 0, value: "=1+1", style: 0 });
  });
});

describe("sheets", () => {
  const renamed = (formula: string): string => formula.replaceAll("'Maker''s costs'", "'Costs & more'");
  const withNewName: Book = {
    ...book,
    names: book.names.map((name) => ({ ...name, formula: renamed(name.formula) })),
    sheets: book.sheets.map((sheet) => ({
      ...sheet,
      name: sheet.id === COSTS ? "Costs & more" : sheet.name,
      rows: sheet.rows.map((row) => ({
        ...row,
        cells: row.cells.map((cell) => (cell.formula ? { ...cell, formula: renamed(cell.formula) } : cell)),
      })),
    })),
  };

  it("called another way are found by charts, small charts and names", () => {
    const { text, opened } = saved(withNewName);
    expect(text("xl/charts/costs.xml")).toContain("'Costs &amp; more'!");
    expect(text("xl/charts/costs.xml")).not.toContain("Maker");
    expect(text("xl/sheets/costs.xml")).toContain("<xm:f>'Costs &amp; more'!B4:B6</xm:f>");
    expect(text("xl/book.xml")).toContain(">MAX('Costs &amp; more'!$B$4:$B$6)<");
    expect(opened).toEqual(withNewName);
  });

  it("are found by a pivot table whose rows they hold", () => {
    const { text } = saved(onSheet(POURS, (sheet) => ({ ...sheet, name: "Poured" })));
    expect(text("xl/pivot/source.xml")).toContain('<worksheetSource ref="A3:B6" sheet="Poured"/>');
    expect(text("xl/book.xml")).toContain(">'Poured'!$A$1:$F$7<");
    expect(text("xl/book.xml")).toContain(">'Poured'!$A:$A,'Poured'!$3:$3<");
  });

  it("that go take with them what only they had, and leave the rest", () => {
    const now: Book = {
      ...book,
      sheets: book.sheets.filter(({ id }) => id !== COSTS),
      names: book.names.filter(({ name }) => name !== "Here" && name !== "Dear"),
      active: 0,
    };
    const { after, text, opened } = saved(now);
    const gone = Object.keys(before).filter((path) => !(path in after));
    expect(gone.sort()).toEqual(
      [
        "xl/calcChain.xml",
        "xl/charts/costs.xml",
        "xl/drawings/_rels/drawn.xml.rels",
        "xl/drawings/drawn.xml",
        "xl/drawings/notes.vml",
        "xl/media/jar.png",
        "xl/notes.xml",
        "xl/sheets/_rels/costs.xml.rels",
        "xl/sheets/costs.xml",
        "xl/threadedComments/talk.xml",
      ].sort(),
    );
    // The names of single sheets count the tabs that are left; the chart on a tab of its own is one.
    expect(text("xl/book.xml")).toContain('<definedName name="_xlnm._FilterDatabase" localSheetId="3" hidden="1">');
    expect(text("xl/book.xml")).toContain('name="Chart page"');
    expect(opened).toEqual(now);
  });

  it("added get a part, a number and a place of their own", () => {
    const copy = { ...(book.sheets[0] as BookSheet), id: "new", name: "Copy", print: null };
    const sheets = [copy, ...book.sheets];
    const { text, opened } = saved({ ...book, sheets, active: 0 });
    expect(text("xl/book.xml")).toMatch(/<sheets><sheet name="Copy" sheetId="8" r:id="rId\d+"\/><sheet name="Pours"/);
    expect(text("xl/book.xml")).toContain('<definedName name="_xlnm.Print_Area" localSheetId="1">');
    // Two tables cannot bear one name.
    expect(opened.sheets[0]?.tables.map(({ name }) => name)).toEqual(["Pours_2"]);
    expect(opened.sheets[0]?.rows).toEqual(copy.rows);
    // One tab alone is chosen: programs change all chosen ones together.
    const chosen = ["xl/sheets/first.xml", "xl/sheets/costs.xml", "xl/worksheets/sheet1.xml"].map(
      (path) => /tabSelected="(\d)"/.exec(text(path))?.[1],
    );
    expect(chosen[2]).toBe("1");
  });
});

describe("features of a sheet", () => {
  it("tables keep their columns' numbers, and take a heading from its cell", () => {
    const now = onSheet(POURS, (sheet) => {
      const [table] = sheet.tables as [BookTable];
      const columns = table.columns.map((column, i) => (i === 1 ? { ...column, heading: "Glasses" } : column));
      const typed = withCell(sheet, 2, 1, { ...cellAt(POURS, 2, 1), value: "Glasses" });
      return { ...typed, tables: [{ ...table, columns, area: { ...table.area, rows: 6 } }] };
    });
    const { differ, text, opened } = saved(now);
    expect(differ).toEqual(["xl/sheets/first.xml", "xl/tables/pours.xml"]);
    expect(text("xl/tables/pours.xml")).toContain('<tableColumn id="2" name="Glasses" totalsRowFunction="sum"');
    expect(text("xl/tables/pours.xml")).toContain('ref="A3:F8"');
    expect(text("xl/tables/pours.xml")).toContain('<calculatedColumnFormula array="1">');
    expect(opened).toEqual(now);
  });

  it("notes keep their boxes and looks where they are as they were", () => {
    const note = { row: 9, column: 2, text: "new & nice", author: "B" };
    const now = onSheet(COSTS, (sheet) => ({ ...sheet, notes: [...sheet.notes, note] }));
    const { differ, text, opened } = saved(now);
    expect(differ).toEqual(["xl/notes.xml", "xl/drawings/notes.vml"]);
    expect(text("xl/notes.xml")).toContain('<rFont val="Tahoma"/></rPr><t>A maker:</t>');
    expect(text("xl/drawings/notes.vml").match(/ObjectType="Note"/g)).toHaveLength(3);
    expect(opened).toEqual(now);
  });

  it("notes are found between comments of the XML itself", () => {
    const remark = "<!-- made by hand -->";
    const withRemarks = changedRich({
      "xl/notes.xml": (text) => text.replace("<commentList>", `<commentList>${remark}`),
      "xl/threadedComments/talk.xml": (text) => text.replace("<threadedComment ", `${remark}<threadedComment `),
    });
    const now = onSheet(COSTS, (sheet) => ({
      ...sheet,
      notes: sheet.notes.map((note, i) => (i === 0 ? { ...note, text: "new" } : note)),
    }));
    expect(openFile(saveBook(withRemarks, now).bytes, "rich.xlsx").book).toEqual(now);
  });

  it("a rule that changes leaves the other rules, and what newer programs say of them", () => {
    const [first, ...others] = (book.sheets[1] as BookSheet).conditions as [Condition, ...Condition[]];
    const now = onSheet(COSTS, (sheet) => ({ ...sheet, conditions: [{ ...first, formulas: ["=13"] }, ...others] }));
    const { differ, text, opened } = saved(now);
    expect(differ).toEqual(["xl/sheets/costs.xml"]);
    expect(text("xl/sheets/costs.xml").match(/<x14:cfRule/g)).toHaveLength(2);
    expect(opened).toEqual(now);
  });

  it("a rule whose cells moved keeps its text, and what newer programs say of it moves along", () => {
    const conditions = (book.sheets[1] as BookSheet).conditions.map((one, i) =>
      i === 1 ? { ...one, areas: [{ row: 3, column: 1, rows: 1, columns: 1 }], priority: 9 } : one,
    );
    const now = onSheet(COSTS, (sheet) => ({ ...sheet, conditions }));
    const { text, opened, lost } = saved(now);
    const was = strFromU8(before["xl/sheets/costs.xml"] as Uint8Array);
    const [, younger = ""] = /(<x14:cfRule type="dataBar".*?<\/x14:cfRule>)/.exec(was) ?? [];
    expect(younger).toContain("x14:axisColor");
    expect(text("xl/sheets/costs.xml")).toContain(`${younger}<xm:sqref>B4</xm:sqref>`);
    const [, own = ""] = /(<cfRule type="dataBar".*?<\/cfRule>)/.exec(was) ?? [];
    expect(text("xl/sheets/costs.xml")).toContain(
      `<conditionalFormatting sqref="B4">${own.replace('priority="2"', 'priority="9"')}</conditionalFormatting>`,
    );
    // The element of three rules that follows was not touched.
    const [, group = ""] = /(<conditionalFormatting sqref="C4:C6 E4:E6">.*?<\/conditionalFormatting>)/.exec(was) ?? [];
    expect(text("xl/sheets/costs.xml")).toContain(group);
    expect(opened).toEqual(now);
    expect(lost).toEqual([]);
  });

  it("a rule of the younger list alone moves in its text, and goes from there", () => {
    const isAlone = ({ younger }: Condition) => younger === true;
    const [rule] = (book.sheets[1] as BookSheet).conditions.filter(isAlone);
    const [areas, priority] = [[{ row: 9, column: 5, rows: 1, columns: 1 }], 9];
    const change = (to: readonly Condition[]) =>
      saved(
        onSheet(COSTS, (sheet) => ({
          ...sheet,
          conditions: [...sheet.conditions.filter((one) => !isAlone(one)), ...to],
        })),
      );
    const moved = change([{ ...(rule as Condition), areas, priority }]);
    expect(moved.differ).toEqual(["xl/sheets/costs.xml"]);
    const was = strFromU8(before["xl/sheets/costs.xml"] as Uint8Array);
    const [own = ""] = /<x14:cfRule type="cellIs".*?<\/x14:cfRule>/.exec(was) ?? [];
    expect(moved.text("xl/sheets/costs.xml")).toContain(
      `${own.replace('priority="8"', 'priority="9"')}<xm:sqref>F10</xm:sqref>`,
    );
    expect(moved.opened.sheets[1]?.conditions.at(-1)).toEqual({ ...rule, areas, priority });
    expect(moved.lost).toEqual([]);
    const gone = change([]);
    expect(gone.text("xl/sheets/costs.xml").match(/<x14:cfRule/g)).toHaveLength(1);
    const other = change([{ ...(rule as Condition), formulas: ["=Pours!$B$5"] }]);
    expect(other.text("xl/sheets/costs.xml")).toContain("<xm:f>Pours!$B$5</xm:f><x14:dxf><font><b/></font></x14:dxf>");
    expect(other.lost.map(({ what }) => what)).toEqual(["the conditional format in F8"]);
  });

  it("a bar that changes is written with its finer points, and what only newer programs knew of it is told", () => {
    const bar = { solid: true, negative: "0000FF", hidesValue: true };
    const now = onSheet(COSTS, (sheet) => ({
      ...sheet,
      conditions: sheet.conditions.map((one) => (one.kind === "dataBar" ? { ...one, bar } : one)),
    }));
    const { text, opened, lost } = saved(now);
    expect(opened).toEqual(now);
    expect(text("xl/sheets/costs.xml").match(/<x14:cfRule/g)).toHaveLength(2);
    expect(lost.map(({ what }) => what)).toEqual(["the conditional format in B4:B6"]);
  });

  it("a rule that changes keeps the number of its look, which may hold more than is known here", () => {
    const conditions = (book.sheets[1] as BookSheet).conditions.map((one) =>
      one.kind === "cellIs" ? { ...one, operator: "lessThan" } : one,
    );
    const { text } = saved(onSheet(COSTS, (sheet) => ({ ...sheet, conditions })));
    expect(text("xl/sheets/costs.xml")).toContain(
      '<cfRule type="cellIs" dxfId="0" priority="1" stopIfTrue="1" operator="lessThan">',
    );
  });

  it("a filter that is not worked out here keeps its text", () => {
    const now = onSheet(OLD, (sheet) => ({
      ...sheet,
      filter: sheet.filter && {
        ...sheet.filter,
        columns: sheet.filter.columns.map((column, i) => (i === 0 ? { column: 0, values: ["W2"] } : column)),
      },
    }));
    const { differ, text, opened } = saved(now);
    expect(differ).toEqual(["xl/sheets/old.xml"]);
    expect(text("xl/sheets/old.xml")).toContain('<filterColumn colId="1"><top10 val="10"/></filterColumn>');
    expect(opened).toEqual(now);
  });
});

const whatIsLost = (now: Book) => saveBook(original, now).lost;

describe("what is lost", () => {
  it("is nothing for an edit of a cell", () => {
    expect(whatIsLost(withChange(POURS, 3, 1, { value: 13 }))).toEqual([]);
  });

  it("names what does not move with its cells", () => {
    const now = onSheet(COSTS, (sheet) => ({
      ...sheet,
      rows: sheet.rows.map((row) => (row.row >= 3 ? { ...row, row: row.row + 1 } : row)),
    }));
    const lost = whatIsLost(now);
    expect(lost.filter(({ sheet }) => sheet === "Maker's costs").map(({ what }) => what)).toEqual([
      "a chart",
      "a picture",
      "charts in cells",
      "an outline",
      "formulas that look into another workbook, from F6",
    ]);
    expect(lost.filter(({ sheet }) => sheet === null).map(({ what }) => what)).toEqual(["a chart"]);
  });

  it("names a conversation that was changed, and looks within a text that was", () => {
    const noTalk = onSheet(COSTS, (sheet) => ({ ...sheet, notes: sheet.notes.slice(0, 1) }));
    expect(whatIsLost(noTalk).map(({ what }) => what)).toEqual(["the conversation at B5"]);
    expect(saved(noTalk).text("xl/threadedComments/talk.xml")).not.toContain("B5");
    const { runs: _, ...plain } = cellAt(POURS, 0, 0);
    const typed = onSheet(POURS, (sheet) => withCell(sheet, 0, 0, { ...plain, value: "Pours" }));
    expect(whatIsLost(typed).map(({ what }) => what)).toEqual(["looks within the text of A1"]);
  });
});

describe("a file that counts its days from 1904", () => {
  it("counts from 1900 once it was changed here", () => {
    const old = richWorkbook({ from1904: true });
    const { book: opened } = openFile(old, "rich.xlsx");
    const now = {
      ...opened,
      sheets: opened.sheets.map((sheet) => (sheet.id === SUMMARY ? withCell(sheet, 9, 0, { value: 1 }) : sheet)),
    };
    const again = openFile(saveBook(old, now).bytes, "rich.xlsx").book;
    expect(again.from1904).toBe(false);
    expect(again).toEqual({ ...now, from1904: false });
    expect(saveBook(old, opened).bytes).toBe(old);
  });
});

describe("names that files cannot hold", () => {
  it("are written as near ones, in formulas too, and told", () => {
    const table: BookTable = {
      name: "My table",
      area: { row: 0, column: 0, rows: 2, columns: 1 },
      hasHeadings: true,
      hasTotals: false,
      columns: [{ heading: "A" }],
      filter: null,
      look: null,
      stripes: false,
    };
    const odd = (id: string, name: string, formula: string): BookSheet => {
      const cells = [{ value: "A" }, { value: 1 }, { value: 1, formula }];
      return cells.reduce((sheet, cell, row) => withCell(sheet, row, 0, cell), emptySheet(id, name));
    };
    const long = "a/b".repeat(20);
    const { lost, opened } = saved({
      ...book,
      sheets: [
        ...book.sheets,
        { ...odd("x", long, "=SUM(My table[A])"), tables: [table] },
        // A chart on a tab of its own bears this name, which the page does not show.
        odd("y", "chart page", `='${long}'!A2`),
      ],
    });
    const [first, second] = opened.sheets.slice(-2) as [BookSheet, BookSheet];
    expect(first.name).toBe("a ba ba ba ba ba ba ba ba ba ba");
    expect(first.tables[0]?.name).toBe("My_table");
    expect(second.name).toBe("chart page (2)");
    expect(second.rows[2]?.cells[0]?.formula).toBe(`='${first.name}'!A2`);
    expect(lost.map(({ what }) => what)).toEqual([
      `the name "${long}"`,
      'the name "chart page"',
      'the name "My table"',
    ]);
  });

  it("leaves out a list that is too long to be written out, and says so", () => {
    const list = `="${"word,".repeat(60)}"`;
    const now = onSheet(COSTS, (sheet) => ({
      ...sheet,
      validations: sheet.validations.map((rule, i) => (i === 0 ? { ...rule, formulas: [list] } : rule)),
    }));
    const { lost, opened } = saved(now);
    expect(lost.map(({ what }) => what)).toEqual(["the list to choose from in A10:A12"]);
    expect(opened.sheets[1]?.validations).toEqual(book.sheets[1]?.validations.slice(1));
  });
});
