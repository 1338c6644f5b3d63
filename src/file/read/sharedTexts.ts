import { scan } from "../xml/scan";
import { TreeHandler } from "../xml/tree";
import type { Colors } from "./colors";
import { type RichText, richText } from "./text";

/** The texts that cells refer to by number. */
export function readSharedTexts(path: string, bytes: Uint8Array, colors: Colors): RichText[] {
  const texts: RichText[] = [];
  let depth = 0;
  const one = new TreeHandler((element) => texts.push(richText(element, colors)));
  scan(path, bytes, {
    open(name, attributes) {
      if (depth > 0) one.open(name, attributes);
      depth++;
    },
    text: (text) => one.text(text),
    close() {
      depth--;
      if (depth > 0) one.close();
    },
  });
  return texts;
}
