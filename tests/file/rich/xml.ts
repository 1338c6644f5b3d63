export const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

const OFFICE = "http://schemas.openxmlformats.org";
export const MAIN = `${OFFICE}/spreadsheetml/2006/main`;
export const RELATIONSHIPS = `${OFFICE}/officeDocument/2006/relationships`;
export const MICROSOFT = "http://schemas.microsoft.com/office";

/** The namespaces that a part of the workbook's names at its root. */
export const NAMESPACES = `xmlns="${MAIN}" xmlns:r="${RELATIONSHIPS}"`;

/** Relations of a part: each an id, a kind and a target; `outside` for addresses. */
export const relations = (
  ...list: readonly (readonly [id: string, kind: string, target: string, outside?: true])[]
): string =>
  `${XML}<Relationships xmlns="${OFFICE}/package/2006/relationships">${list
    .map(([id, kind, target, outside]) => {
      const type = kind.includes("/") ? kind : `${RELATIONSHIPS}/${kind}`;
      return `<Relationship Id="${id}" Type="${type}" Target="${target}"${outside ? ' TargetMode="External"' : ""}/>`;
    })
    .join("")}</Relationships>`;
