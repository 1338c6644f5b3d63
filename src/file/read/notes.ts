import { cellPlace } from "../addresses";
import type { Note } from "../book";
import { child, children, type Element, within } from "../xml/tree";
import type { Colors } from "./colors";
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

/** What was said in a conversation about a cell, one line for each voice, and who began it. */
export interface Conversation {
  readonly text: string;
  readonly author: string;
}

/** The conversations of a sheet by the address of their cell. */
export function readConversations(root: Element, people: Element | undefined): ReadonlyMap<string, Conversation> {
  const names = new Map(
    children(people, "tc:person").map(({ attributes }) => [attributes.id, attributes.displayName ?? ""]),
  );
  const all = new Map<string, Conversation>();
  for (const comment of within(root, "tc:threadedComment")) {
    const { personId, ref = "" } = comment.attributes;
    const author = names.get(personId) ?? "";
    const said = child(comment, "tc:text")?.text ?? "";
    const line = author ? `${author}: ${said}` : said;
    const before = all.get(ref);
    all.set(ref, before ? { ...before, text: `${before.text}\n${line}` } : { text: line, author });
  }
  return all;
}
