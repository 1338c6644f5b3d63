import { UndoCommand } from "@univerjs/core";
import { SetWorksheetNameCommand } from "@univerjs/preset-sheets-core";
import { expect, it } from "vitest";
import { areasOf } from "../../../src/file/addresses";
import type { Book, Condition, Validation } from "../../../src/file/book";
import { emptyBook, emptySheet, PLAIN_STYLE } from "../../../src/file/emptyBook";
import { openedBooks } from "./openedBooks";

const books = openedBooks();

const check = (kind: Validation["kind"], formula: string): Validation => ({
  ...{ areas: areasOf("A1:A9"), kind, formulas: [formula] },
  ...{ operator: "between", allowsBlank: true, showsList: true, onWrong: "warning" },
});

/** What is saved after a sheet got another name, and after that was undone. */
async function renamed(book: Book, subUnitId: string, name: string): Promise<[Book, Book]> {
  const workbook = await books.open(book);
  await books.does(workbook, SetWorksheetNameCommand.id, { subUnitId, name });
  const now = books.univer.book(workbook, book);
  await books.does(workbook, UndoCommand.id);
  const undone = books.univer.book(workbook, book);
  books.univer.close(workbook);
  return [now, undone];
}

it("lets checks read a sheet by its new name, and by the old one once that is undone", async () => {
  const formulas = [
    "=Vessels!$A$5:$A$9",
    "='vessels'!B2>5",
    '=COUNTIF(Vessels!A:A,"Vessels!")>0',
    "=OldVessels!A1>0",
    "soy,rape",
  ];
  const batch = {
    ...emptySheet("1", "Batch"),
    validations: formulas.map((one) => check(one.includes(">") ? "custom" : "list", one)),
  };
  const sheets = [batch, emptySheet("2", "Vessels"), emptySheet("3", "OldVessels")];
  const book = { ...emptyBook(), sheets, styles: [PLAIN_STYLE] };
  const [now, undone] = await renamed(book, "2", "Jan's jars");
  const of = ({ sheets: [first] }: Book) => first?.validations?.map((one) => one.formulas[0]);
  expect(of(now)).toEqual([
    "='Jan''s jars'!$A$5:$A$9",
    "='Jan''s jars'!B2>5",
    `=COUNTIF('Jan''s jars'!A:A,"Vessels!")>0`,
    "=OldVessels!A1>0",
    "soy,rape",
  ]);
  expect(of(undone)).toEqual(formulas);
});

it("lets conditional formats read it too, in whatever they stand", async () => {
  const area = { areas: areasOf("A1:A9"), stops: false };
  const scale = ["=Vessels!$B$1", "=Vessels!$B$9"].map((value, i) => ({ kind: "formula", value, color: `F8696${i}` }));
  const conditions: Condition[] = [
    { ...area, kind: "expression", priority: 1, formulas: ["=A1>Vessels!$B$2"], look: { fill: "FFEEEE" } },
    { ...area, kind: "colorScale", priority: 3, formulas: [], stopsAt: scale },
  ];
  const sheets = [{ ...emptySheet("1", "Batch"), conditions }, emptySheet("2", "Vessels")];
  const book = { ...emptyBook(), sheets, styles: [PLAIN_STYLE] };
  const [now, undone] = await renamed(book, "2", "Jars");
  const of = ({ sheets: [first] }: Book) =>
    first?.conditions.flatMap(({ formulas, stopsAt = [] }) => [...formulas, ...stopsAt.map(({ value }) => value)]);
  expect(of(undone)).toEqual(of(book));
  expect(of(now)).toEqual(of(book)?.map((one) => one?.replace("Vessels", "'Jars'")));
});
