import { describe, expect, it } from "vitest";
import { openFile } from "../../../src/file/openFile";
import { LOOK } from "../rich/styles";
import { changedRich } from "./changed";
import { book, cell, remarks, sheetOf } from "./readRich";

/** What is expected here stands in the parts of the workbook as they were written by hand (tests/file/rich). */
describe("a workbook with what a maker's may hold", () => {
  it("has its sheets of cells by their own ids, and the sheet that was shown", () => {
    expect(book.sheets.map(({ id, name, state }) => [id, name, state])).toEqual([
      ["1", "Pours", "visible"],
      ["4", "Maker's costs", "visible"],
      ["2", "Summary", "visible"],
      ["5", "Old", "hidden"],
    ]);
    expect(book.sheets[book.active]?.name).toBe("Maker's costs");
  });

  it("has values of every kind", () => {
    expect(cell("A4")).toEqual({ value: "Jan", style: 0 });
    expect(cell("B4")).toEqual({ value: 10.5, style: LOOK.money });
    expect(cell("F8")).toEqual({ value: true, style: 0 });
    expect(cell("A9")).toEqual({ value: "=1+1 is text", style: LOOK.input });
    expect(cell("B9")).toEqual({ value: null, style: LOOK.turned });
    expect(cell("A8")).toEqual({ value: "007", style: LOOK.held, quoted: true });
    expect(cell("F5")?.value).toBe("fair <x>");
    expect(cell("B8")).toEqual({ value: { error: "#N/A" }, formula: "=NA()", style: 0 });
    expect(cell("C8")).toEqual({ value: false, formula: "=B4>B5", style: 0 });
    expect(cell("E4", "Pours")).toEqual({ value: 46_350, style: LOOK.day });
  });

  it("has texts in several looks, without how they are pronounced", () => {
    expect(cell("A1", "Pours")).toEqual({
      value: "Pours of November",
      style: LOOK.title,
      runs: [
        { text: "Pours of ", font: {} },
        { text: "November", font: { italic: true, size: 16, color: "235E53", name: "Georgia" } },
      ],
    });
  });

  it("has formulas of every form", () => {
    expect(["C4", "C5", "C6"].map((address) => cell(address)?.formula)).toEqual([
      "=B4*Markup+'Maker''s costs'!$B$4",
      "=B5*Markup+'Maker''s costs'!$B$4",
      "=B6*Markup+'Maker''s costs'!$B$4",
    ]);
    expect(cell("D4")).toEqual({
      value: 105,
      formula: "=B4:B6*10",
      spill: { rows: 3, columns: 1, dynamic: false },
      style: 0,
    });
    expect(cell("D5")).toEqual({ value: 120, spilled: true, style: 0 });
    expect(cell("E4")).toEqual({
      value: 13.25,
      formula: "=SORT(B4:B6,,-1)",
      spill: { rows: 3, columns: 1, dynamic: true },
      style: 0,
    });
    expect(cell("E6")).toEqual({ value: 10.5, spilled: true, style: 0 });
    expect(cell("F4")?.formula).toBe("=SUM(E4#)");
    expect(cell("F5")?.formula).toBe('=IFS(B4>11,"dear",TRUE,"fair")&" <x>"');
    expect(cell("F6")).toEqual({ value: 12.5, style: 0 });
    expect(cell("F4", "Pours")).toEqual({
      value: 215,
      formula: "=POUR.FILLWEIGHT(250,0.86)",
      spill: { rows: 1, columns: 1, dynamic: true },
      style: 0,
    });
    expect(cell("B5", "Old")).toEqual({ value: 12, style: 0 });
  });

  it("has a table with its columns' formulas, totals and filter", () => {
    expect(sheetOf("Pours").tables).toEqual([
      {
        name: "Pours",
        area: { row: 2, column: 0, rows: 5, columns: 6 },
        hasHeadings: true,
        hasTotals: true,
        columns: [
          { heading: "Scent", total: { label: "Total" } },
          { heading: "Jars", total: { function: "sum" } },
          { heading: "Fill (g)" },
          {
            heading: "Wax (g)",
            formula: "=Pours[[#This Row],[Jars]]*Pours[[#This Row],[Fill (g)]]",
            total: { function: "sum" },
          },
          { heading: "Poured" },
          { heading: "Fill\nworked out", formula: "=POUR.FILLWEIGHT(250,0.86)" },
        ],
        filter: {
          area: { row: 2, column: 0, rows: 4, columns: 6 },
          columns: [{ column: 1, custom: { and: false, rules: [{ operator: "greaterThan", value: "3" }] } }],
        },
        look: "TableStyleLight1",
        stripes: true,
      },
    ]);
    expect(sheetOf("Old").filter).toEqual({
      area: { row: 8, column: 0, rows: 3, columns: 2 },
      columns: [
        { column: 0, values: ["W1", ""] },
        { column: 1, other: true },
      ],
    });
  });

  it("has looks with their colours resolved", () => {
    const { styles } = book;
    expect(styles.length).toBe(12);
    expect(styles[LOOK.plain]).toEqual({
      font: { name: "Calibri", size: 11, bold: false, italic: false, underline: "none", strike: false, color: null },
      fill: null,
      border: {},
      format: "General",
      align: {},
    });
    // White darkened by 15 %, as spreadsheets show "white, darker 15 %": D9D9D9.
    expect(styles[LOOK.input]).toMatchObject({
      fill: "D9D9D9",
      unlocked: true,
      border: { left: { style: "thin", color: "8A8175" } },
    });
    expect(styles[LOOK.heading]).toMatchObject({
      font: { bold: true, italic: true, underline: "double", color: "5C2F05" },
      border: { bottom: { style: "double", color: null } },
      align: { horizontal: "center", vertical: "top", wrap: true },
    });
    expect(styles[LOOK.turned]).toMatchObject({
      font: { strike: true, color: "FF0000", size: 9 },
      fill: "C0C0C0",
      align: { rotation: -45, indent: 2, shrink: true },
    });
    expect(styles[LOOK.pattern]).toMatchObject({
      font: { raised: "superscript" },
      align: { horizontal: "right", rotation: "stacked" },
    });
    expect(styles.map(({ format }) => format)).toEqual([
      "General",
      "General",
      "General",
      '"£"#,##0.00;[Red]\\-"£"#,##0.00',
      "yyyy\\-mm\\-dd",
      "0.00%",
      "h:mm",
      "General",
      "@",
      "General",
      "General",
      "0%",
    ]);
  });

  it("has widths, heights, hidden rows and columns, merged cells and panes", () => {
    const costs = sheetOf("Maker's costs");
    expect(costs.columns).toEqual([
      { first: 0, last: 0, width: 20 },
      { first: 6, last: 6, width: 0, hidden: true },
      { first: 7, last: 16_383, width: 9.5, style: LOOK.input },
    ]);
    expect(costs.rows.filter(({ hidden }) => hidden).map(({ row }) => row)).toEqual([15]);
    expect(costs.rows.find(({ row }) => row === 8)?.style).toBe(LOOK.input);
    expect(costs.merges).toEqual([
      { row: 0, column: 0, rows: 1, columns: 4 },
      { row: 18, column: 0, rows: 2, columns: 2 },
    ]);
    // It was scrolled to B3 when one row and one column were held.
    expect(costs.frozen).toEqual({ rows: 3, columns: 2 });
    expect([costs.defaultWidth, costs.defaultHeight, costs.showsGrid, costs.tabColor]).toEqual([10.5, 16, true, null]);
    const pours = sheetOf("Pours");
    expect(pours.rows.map(({ row, height }) => [row, height]).slice(0, 3)).toEqual([
      [0, 24],
      [2, 30],
      [3, undefined],
    ]);
    expect([pours.showsGrid, pours.tabColor, pours.frozen.rows]).toEqual([false, "7A3E06", 3]);
    expect(pours.print).toEqual({ paper: "a4", landscape: true, repeatRows: [2, 2] });
    expect(costs.print).toEqual({ paper: "letter" });
  });

  it("has validations, those with a list on another sheet too", () => {
    const area = { column: 0, columns: 1 };
    expect(sheetOf("Maker's costs").validations).toEqual([
      {
        areas: [{ ...area, row: 9, rows: 3 }],
        kind: "list",
        operator: "between",
        formulas: ['="Fig,Moss"'],
        allowsBlank: true,
        showsList: true,
        onWrong: "stop",
        prompt: { title: "Scent", text: "Fig or Moss" },
        error: { title: "Scent", text: "Choose one of the list." },
      },
      {
        areas: [
          { row: 9, column: 1, rows: 3, columns: 1 },
          { row: 9, column: 3, rows: 1, columns: 1 },
        ],
        kind: "whole",
        operator: "between",
        formulas: ["=1", "=100"],
        allowsBlank: false,
        showsList: true,
        onWrong: "warning",
      },
      {
        areas: [{ ...area, row: 12, rows: 1 }],
        kind: "list",
        operator: "between",
        formulas: ["=Pours!$A$4:$A$6"],
        allowsBlank: true,
        showsList: true,
        onWrong: "stop",
      },
    ]);
  });

  it("has conditional formats of each kind", () => {
    const conditions = sheetOf("Maker's costs").conditions;
    expect(conditions.map(({ kind, priority }) => [kind, priority])).toEqual([
      ["cellIs", 1],
      ["dataBar", 2],
      ["colorScale", 3],
      ["top10", 4],
      ["iconSet", 5],
      ["containsText", 6],
      ["aboveAverage", 7],
      ["cellIs", 8],
    ]);
    // Of another sheet, which only the younger list may say.
    expect(conditions.at(-1)).toEqual({
      ...{ areas: [{ row: 7, column: 5, rows: 1, columns: 1 }], kind: "cellIs", priority: 8, stops: false },
      ...{ operator: "greaterThan", formulas: ["=Pours!$B$4"], look: { font: { bold: true } }, younger: true },
    });
    const look = { font: { bold: true, color: "8A1C0B" }, fill: "FBECE6" };
    expect(conditions[0]).toEqual({
      areas: [{ row: 3, column: 1, rows: 3, columns: 1 }],
      kind: "cellIs",
      priority: 1,
      stops: true,
      operator: "greaterThan",
      formulas: ["=12"],
      look,
    });
    expect(conditions[1]?.stopsAt).toEqual([
      { kind: "min", color: "C07F1A" },
      { kind: "max", color: "C07F1A" },
    ]);
    expect(conditions[2]).toMatchObject({
      areas: [{ column: 2 }, { column: 4 }],
      stopsAt: [
        { kind: "min", color: "F8696B" },
        { kind: "percentile", value: "50", color: "FFFFFF" },
        { kind: "max", color: "63BE7B" },
      ],
    });
    expect(conditions[3]?.rank).toEqual({ count: 10, percent: true, bottom: false });
    expect(conditions[4]?.icons).toEqual({ set: "3Arrows", reversed: false, hidesValue: true });
    expect(conditions[5]).toMatchObject({ text: "Ja", formulas: ['=NOT(ISERROR(SEARCH("Ja",A4)))'] });
    expect(conditions[6]).toMatchObject({ average: { above: false, orEqual: false, deviations: 0 }, look: {} });
  });

  it("has notes, what was said in conversations, links and names", () => {
    const { notes, links } = sheetOf("Maker's costs");
    expect(notes).toEqual([
      { row: 3, column: 1, text: "A maker:\ndearer since June", author: "A maker" },
      { row: 4, column: 1, text: "A maker: Is that with postage?\nA maker: Yes, & with the box.", author: "A maker" },
    ]);
    expect(links).toEqual([
      {
        area: { row: 13, column: 0, rows: 1, columns: 1 },
        address: "https://example.com/wax?a=1&b=2",
        place: null,
        tip: "Opens a page",
      },
      { area: { row: 14, column: 0, rows: 1, columns: 1 }, address: null, place: "Pours!A1", tip: null },
    ]);
    expect(book.names).toEqual([
      {
        name: "Dear",
        formula: "=MAX('Maker''s costs'!$B$4:$B$6)",
        sheet: null,
        hidden: false,
        comment: "what costs most",
      },
      { name: "Here", formula: "='Maker''s costs'!$B$4", sheet: "4", hidden: false, comment: null },
      { name: "Markup", formula: "=1.5", sheet: null, hidden: false, comment: null },
      { name: "Secret", formula: "=IFS(TRUE,1)", sheet: null, hidden: true, comment: null },
    ]);
  });

  it("names all that the page does not show, by sheet", () => {
    expect(remarks.map(({ sheet, what }) => `${sheet ?? "all"}: ${what}`)).toEqual([
      "all: a link to another workbook",
      "all: queries of data from elsewhere",
      "all: a custom view",
      "Chart page: a chart on a sheet of its own",
      "Maker's costs: a chart",
      "Maker's costs: a picture",
      "Maker's costs: a drawn shape",
      "Maker's costs: a chart in a cell",
      "Maker's costs: an outline",
      "Maker's costs: a formula that looks into another workbook",
      "Maker's costs: conversations in comments",
      "Summary: a pivot table",
      "Old: a custom view",
      "Old: a data table of what-if values",
      "Old: sheet protection",
    ]);
    for (const { consequence } of remarks) expect(consequence).toMatch(/^[A-Z].*\.$/);
  });

  it("reads the settings that the pane keeps", () => {
    const settings =
      '<p:settings xmlns:p="urn:pourwright:settings"><p:setting key="pourwright">{"unit":"g &amp; oz"}</p:setting></p:settings>';
    expect(openFile(changedRich({ "customXml/item1.xml": settings }), "a.xlsx").book.settings).toEqual({
      pourwright: '{"unit":"g & oz"}',
    });
    expect(book.settings).toEqual({});
  });
});
