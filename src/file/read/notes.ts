import type { Note } from "../book";
import { child, children, type Element, within } from "../xml/tree";
import type { Colors } from "./colors";
import { cellPlace } from "./references";
import { richText } from "./text";

/** The notes of a sheet from the root of their part. */
export function readNotes(root: Element, colors: Colors): Note[] {
  const authors = children(child(root, "authors"), "author").map(({ text }) => text);
  return children(child(root, "commentList"), "comment").flatMap((comment) => {
    const place = cellPlace(comment.attributes.ref ?? "");
    const body = child(comment, "text");
    if (!place || !body) return [];
    return [
      { ...place, text: richText(body, colors).text, author: authors[Number(comment.attributes.authorId)] ?? "" },
    ];
  });
}

/** What was said in each conversation about a cell, by its address, one line for each voice. */
export function readConversations(root: Element, people: Element | undefined): ReadonlyMap<string, string> {
  const names = new Map(
    children(people, "tc:person").map(({ attributes }) => [attributes.id, attributes.displayName ?? ""]),
  );
  const said = new Map<string, string>();
  for (const { attributes, ...one } of within(root, "tc:threadedComment")) {
    const [first] = children({ attributes, ...one }, "tc:text");
    const name = names.get(attributes.personId);
    const line = name ? `${name}: ${first?.text ?? ""}` : (first?.text ?? "");
    const place = attributes.ref ?? "";
    said.set(place, said.has(place) ? `${said.get(place)}\n${line}` : line);
  }
  return said;
}
