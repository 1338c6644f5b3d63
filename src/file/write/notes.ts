import { cellAddress } from "../addresses";
import type { BookSheet, Note } from "../book";
import { same } from "../same";
import { changedDrawing, NO_DRAWING } from "./noteShapes";
import { type PackageEdit, SPACE, XML } from "./packageEdit";
import { attributeOf, type Cut, cut, element, escapeText, join, unescapeText } from "./rawXml";
import { put, rawOf } from "./sheetOrder";

const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml";
const DRAWING_TYPE = "application/vnd.openxmlformats-officedocument.vmlDrawing";
const NO_NOTES = `${XML}<comments xmlns="${SPACE}"><authors/><commentList/></comments>`;

const addressOf = ({ row, column }: Note): string => cellAddress(row, column);

/** Puts a sheet's notes in: their texts in one part, the boxes that show them in another. */
export function putNotes(file: PackageEdit, path: string, sheet: Cut, before: BookSheet, now: BookSheet): void {
  const relation = file.relations(path).find(({ kind }) => kind === "comments");
  const changed = [...before.notes, ...now.notes].filter(
    (note) => !before.notes.some((one) => same(one, note)) || !now.notes.some((one) => same(one, note)),
  );
  forgetThreads(file, path, new Set(changed.map(addressOf)));
  const part = relation?.target ?? file.freePath("xl/comments", ".xml");
  if (!relation) {
    file.add(part, TYPE, NO_NOTES);
    file.relate(path, "comments", { path: part });
  }
  file.write(part, changedNotes(file.read(part), before.notes, now.notes));
  const drawing = notesDrawing(file, path, sheet);
  file.write(drawing, changedDrawing(file.read(drawing), before.notes, now.notes));
}

/** The drawing with the boxes; one is put into the sheet where there is none. */
function notesDrawing(file: PackageEdit, path: string, sheet: Cut): string {
  const id = attributeOf(rawOf(sheet, "legacyDrawing") ?? "<none/>", "id");
  const known = file.relations(path).find((one) => one.id === id)?.target;
  if (known && file.text(known) !== undefined) return known;
  const part = file.freePath("xl/drawings/vmlDrawing", ".vml");
  file.knowEnding("vml", DRAWING_TYPE);
  file.write(part, NO_DRAWING);
  put(sheet, "legacyDrawing", element("legacyDrawing", { "r:id": file.relate(path, "vmlDrawing", { path: part }) }));
  return part;
}

/** A conversation would show the text that was there before. The note that stands beside it says the new one. */
function forgetThreads(file: PackageEdit, path: string, changed: ReadonlySet<string>): void {
  for (const { kind, target: part } of file.relations(path)) {
    if (kind !== "threadedComment" || file.text(part) === undefined) continue;
    const list = cut(file.read(part));
    const pieces = list.pieces.filter(({ name, raw }) => name === "" || !changed.has(attributeOf(raw, "ref") ?? ""));
    if (pieces.length < list.pieces.length) file.write(part, join({ ...list, pieces }));
  }
}

function changedNotes(xml: string, before: readonly Note[], now: readonly Note[]): string {
  const root = cut(xml);
  const inside = (name: string): Cut => cut(root.pieces.find((piece) => piece.name === name)?.raw ?? `<${name}/>`);
  const [authors, list] = [inside("authors"), inside("commentList")];
  const names = authors.pieces.filter(({ name }) => name === "author").map(({ raw }) => contentOf(raw));
  const authorOf = (name: string): number => {
    if (!names.includes(name)) {
      names.push(name);
      authors.pieces.push({ name: "author", raw: element("author", {}, escapeText(name)) });
    }
    return names.indexOf(name);
  };
  const old = new Map(
    list.pieces.flatMap(({ name, raw }) => (name === "comment" ? [[attributeOf(raw, "ref"), raw] as const] : [])),
  );
  const notes = [...now].sort((a, b) => a.row - b.row || a.column - b.column);
  const written = notes.map((note) => {
    const kept = before.some((one) => same(one, note)) ? old.get(addressOf(note)) : undefined;
    if (kept !== undefined) return kept;
    const text = element("t", { "xml:space": "preserve" }, escapeText(note.text));
    return element(
      "comment",
      { ref: addressOf(note), authorId: authorOf(authorIn(note)) },
      element("text", {}, element("r", {}, text)),
    );
  });
  const rest = root.pieces.filter(({ name }) => name === "extLst").map(({ raw }) => raw);
  const lists = join(authors) + join({ ...list, pieces: [{ name: "", raw: written.join("") }] });
  return join({ ...root, pieces: [{ name: "", raw: lists + rest.join("") }] });
}

/** This form of an author leads to a conversation, which is no longer there once its note was changed. */
const authorIn = ({ author }: Note): string => (author.startsWith("tc={") ? "" : author);

const contentOf = (raw: string): string =>
  unescapeText(
    cut(raw)
      .pieces.map((piece) => piece.raw)
      .join(""),
  );
