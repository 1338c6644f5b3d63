import { SaxesParser } from "saxes";
import { damaged, type FileRefused } from "../refused";
import { decoderFor } from "./decoder";
import { type Handler, Translator } from "./translator";

/** Bytes that are decoded and looked through at once. */
const STEP = 262_144;

/**
 * Reads a part of XML. Refuses one that is not well formed, that is nested deeper than any part of a workbook, or that
 * has a DTD, in which a small file can say a huge text.
 */
export function scan(path: string, bytes: Uint8Array, handler: Handler, progress?: (share: number) => void): void {
  const broken = (how: string): FileRefused => damaged(`The part "${path}" ${how}.`);
  const translator = new Translator(handler, () => broken("is nested too deep"));
  const parser = new SaxesParser<{ position: false; xmlns: false }>({ position: false, xmlns: false });
  parser.on("error", () => {
    throw broken("is no well-formed XML");
  });
  parser.on("doctype", () => {
    throw broken("defines words of its own (a DTD), which no workbook does");
  });
  parser.on("opentag", ({ name, attributes }) => translator.open(name, attributes));
  parser.on("closetag", () => translator.close());
  parser.on("text", (text) => translator.text(text));
  parser.on("cdata", (text) => translator.text(text));

  const decoder = decoderFor(bytes);
  if (!decoder) throw broken("is written in an unknown way");
  for (let at = 0; at < bytes.length; at += STEP) {
    parser.write(decode(decoder, bytes, at, () => broken("has letters that are none")));
    progress?.(Math.min(1, (at + STEP) / bytes.length));
  }
  parser.close();
}

function decode(decoder: TextDecoder, bytes: Uint8Array, at: number, broken: () => FileRefused): string {
  try {
    return decoder.decode(bytes.subarray(at, at + STEP), { stream: at + STEP < bytes.length });
  } catch {
    throw broken();
  }
}
