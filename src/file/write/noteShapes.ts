import type { Note } from "../book";
import { cut, join } from "./rawXml";

/** A drawing of boxes for notes in VML, the only form that programs read for them. */
export const NO_DRAWING = `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><o:shapelayout v:ext="edit"><o:idmap v:ext="edit" data="1"/></o:shapelayout><v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype></xml>`;

const keyOf = ({ row, column }: { row: number; column: number }): string => `${row} ${column}`;

/** Boxes for the notes there are now: those of notes that stay are kept, as are buttons and pictures beside them. */
export function changedDrawing(xml: string, before: readonly Note[], now: readonly Note[]): string {
  // Some programs write this one tag as in web pages, which XML cannot be.
  const drawing = cut(xml.replace(/<br>/g, "<br/>"));
  const [were, are] = [new Set(before.map(keyOf)), new Set(now.map(keyOf))];
  const shown = new Set<string>();
  const kept = drawing.pieces.filter(({ name, raw }) => {
    const key = name === "shape" ? noteOf(raw) : undefined;
    if (key === undefined) return true;
    const stays = are.has(key) || !were.has(key);
    if (stays) shown.add(key);
    return stays;
  });
  const first = kept.reduce((most, { raw }) => Math.max(most, ...numbersOf(raw)), 1024) + 1;
  const missing = now.filter((note) => !shown.has(keyOf(note)));
  const boxes = missing.map((note, i) => ({ name: "shape", raw: box(note, first + i) }));
  return join({ ...drawing, pieces: [...kept, ...boxes] });
}

/** Where the note stands that a shape shows; undefined for any other shape. */
function noteOf(raw: string): string | undefined {
  if (!/ObjectType="Note"/.test(raw)) return undefined;
  const [row, column] = ["Row", "Column"].map((name) => new RegExp(`:${name}>\\s*(\\d+)\\s*<`).exec(raw)?.[1]);
  return row === undefined || column === undefined ? undefined : `${Number(row)} ${Number(column)}`;
}

const numbersOf = (raw: string): number[] =>
  [...raw.matchAll(/\bid="[^"]*_s(\d+)"/g)].map(([, number]) => Number(number));

function box({ row, column }: Note, number: number): string {
  const place = [column + 1, 15, Math.max(0, row - 1), 10, column + 3, 15, row + 3, 4].join(", ");
  return `<v:shape id="_x0000_s${number}" type="#_x0000_t202" style="position:absolute;margin-left:60pt;margin-top:1.5pt;width:108pt;height:60pt;z-index:1;visibility:hidden" fillcolor="#ffffe1" o:insetmode="auto"><v:fill color2="#ffffe1"/><v:shadow on="t" color="black" obscured="t"/><v:path o:connecttype="none"/><v:textbox style="mso-direction-alt:auto"><div style="text-align:left"></div></v:textbox><x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${place}</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`;
}
