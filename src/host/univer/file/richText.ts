/** Texts in several looks, and texts with a link, as the small documents that Univer makes of them, and back. */

import type { ICustomRange, IDocumentBody, IDocumentData, ITextRun } from "@univerjs/core";
import type { BookCell, Font } from "../../../file/book";
import { HYPERLINK } from "./codes";
import { fontData, fontOf } from "./fonts";

type Runs = NonNullable<BookCell["runs"]>;

/** Where a link leads, and the name by which it is known again. */
export interface PlacedLink {
  readonly id: string;
  readonly url: string;
}

/** A text in the font of its cell, its runs laid over that. */
export function textDocument(text: string, font: Font, runs: Runs | undefined, link: PlacedLink | null): IDocumentData {
  const stream = text.replace(/\r\n?|\n/g, "\r");
  let end = 0;
  const parts = runs ?? [{ text, font: {} }];
  const textRuns: ITextRun[] = parts.map((run) => {
    const st = end;
    end += run.text.replace(/\r\n/g, "\r").length;
    return { st, ed: end, ts: fontData({ ...font, ...run.font }) };
  });
  const breaks = Array.from(stream.matchAll(/\r/g), ({ index }) => index);
  return {
    id: "d",
    documentStyle: {},
    body: {
      dataStream: `${stream}\r\n`,
      textRuns,
      paragraphs: [...breaks, stream.length].map((startIndex) => ({ startIndex })),
      sectionBreaks: [{ startIndex: stream.length + 1 }],
      ...(link && {
        customRanges: [
          {
            startIndex: 0,
            endIndex: Math.max(0, stream.length - 1),
            rangeId: link.id,
            rangeType: HYPERLINK,
            properties: { url: link.url },
          },
        ],
      }),
    },
    drawings: {},
    drawingsOrder: [],
  } as unknown as IDocumentData;
}

/** The plain text of a document. */
export const documentText = (body: IDocumentBody): string =>
  body.dataStream.replace(/\r\n$/, "").replaceAll("\r", "\n");

/** Its runs, of which each says what differs from the font of its cell; none where all of it looks as the cell does. */
export function documentRuns(body: IDocumentBody, font: Font): Runs | undefined {
  const text = documentText(body);
  const runs: { text: string; font: Partial<Font> }[] = [];
  let end = 0;
  const add = (to: number, look: Partial<Font>) => {
    if (to > end) runs.push({ text: text.slice(end, to), font: look });
    end = Math.max(end, to);
  };
  for (const { st, ed, ts } of [...(body.textRuns ?? [])].sort((a, b) => a.st - b.st)) {
    add(Math.min(st, text.length), {});
    add(Math.min(ed, text.length), differing(fontOf(ts ?? {}), font));
  }
  add(text.length, {});
  return runs.some((run) => Object.keys(run.font).length > 0) ? runs : undefined;
}

/** The first link in a document. */
export function documentLink(body: IDocumentBody): PlacedLink | null {
  const link = body.customRanges?.find(({ rangeType }) => rangeType === HYPERLINK) as
    | ICustomRange<{ url?: string }>
    | undefined;
  const url = link?.properties?.url;
  return link && typeof url === "string" && url ? { id: String(link.rangeId), url } : null;
}

/** What makes two documents the same but for their links. */
export const documentKey = (body: IDocumentBody): string => JSON.stringify([body.dataStream, body.textRuns]);

function differing(font: Partial<Font>, base: Font): Partial<Font> {
  return Object.fromEntries(Object.entries(font).filter(([key, value]) => base[key as keyof Font] !== value));
}
