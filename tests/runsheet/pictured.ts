import type { Cell, Content, Sheet } from "../../src/sheet/sheet";

const said = (content: Content | undefined): string[] => {
  if (content === undefined) return [];
  if ("formula" in content) return ["="];
  return ["text" in content ? content.text : String(content.number)];
};

/** `label > 3 right: 12 {0.0}`: its look, how many columns it covers, where it stands, what it holds, how that is shown. */
function pictureOf({ content, look, across = 1, align, format }: Cell): string {
  const how = [...(look ? [look] : []), ...(across > 1 ? [`> ${across}`] : []), ...(align ? [align] : [])].join(" ");
  const what = [...said(content), ...(format ? [`{${format}}`] : [])].join(" ");
  return [...(how ? [how] : []), ...(what ? [what] : [])].join(": ");
}

/** A sheet as it is seen, a line for each row that shows something: a formula is a `=`, what it gives is asked elsewhere. */
export function pictured({ cells, widths }: Sheet): string[] {
  const rows = new Map<number, Cell[]>();
  for (const cell of cells) {
    if (widths[cell.column] !== 0) rows.set(cell.row, [...(rows.get(cell.row) ?? []), cell]);
  }
  return [...rows]
    .sort(([a], [b]) => a - b)
    .map(([, own]) =>
      own
        .sort((a, b) => a.column - b.column)
        .map(pictureOf)
        .join(" | "),
    );
}
