/** The parts of a workbook file by their path, as text. */
export type Parts = Record<string, string>;

/** Changes one part; a part that is not as expected is an error, not a file that fails in Excel. */
export function change(parts: Parts, path: string, from: RegExp, to: (...found: string[]) => string): void {
  const before = parts[path];
  const after = before?.replace(from, to);
  if (after === undefined || after === before) throw new Error(`${path}: nothing to change at ${from}`);
  parts[path] = after;
}

/** Adds a part, and says in the list of contents what it is. */
export function addPart(parts: Parts, path: string, type: string, content: string): void {
  parts[path] = content;
  change(
    parts,
    "[Content_Types].xml",
    /(?=<\/Types>)/,
    () => `<Override PartName="/${path}" ContentType="application/vnd.openxmlformats-officedocument.${type}+xml"/>`,
  );
}

const NO_RELATIONS = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>`;

/** Lets one part refer to another, given by its path from the first one's folder, under this id. */
export function relate(parts: Parts, path: string, id: string, type: string, target: string): void {
  const list = path.replace(/([^/]*)$/, "_rels/$1.rels");
  parts[list] ??= NO_RELATIONS;
  const kind = `http://schemas.openxmlformats.org/officeDocument/2006/relationships/${type}`;
  change(parts, list, /(?=<\/Relationships>)/, () => `<Relationship Id="${id}" Type="${kind}" Target="${target}"/>`);
}
