import { inside, type Parts, partWith, tags } from "./parts";

/** Looks that lead to fonts, fills, borders, formats or other looks which are not there. */
export function styleFaults(parts: Parts): string[] {
  const xml = partWith(parts, "styleSheet");
  const count = (list: string, name: string): number => tags(inside(xml, list), name).length;
  const there: [string, number][] = [
    ["fontId", count("fonts", "font")],
    ["fillId", count("fills", "fill")],
    ["borderId", count("borders", "border")],
  ];
  const bases = count("cellStyleXfs", "xf");
  const formats = tags(inside(xml, "numFmts"), "numFmt").map(({ numFmtId }) => numFmtId);
  const all = [...tags(inside(xml, "cellStyleXfs"), "xf"), ...tags(inside(xml, "cellXfs"), "xf")];
  return [
    ...all.flatMap((xf) => there.filter(([id, most]) => Number(xf[id] ?? 0) >= most).map(([id]) => `${id} ${xf[id]}`)),
    ...all.filter(({ xfId = "0" }) => Number(xfId) >= Math.max(1, bases)).map(({ xfId }) => `xfId ${xfId}`),
    // Those below are known without a code (ECMA-376 Part 1, 18.8.30, from memory).
    ...all
      .filter(({ numFmtId = "0" }) => Number(numFmtId) >= 164 && !formats.includes(numFmtId))
      .map(({ numFmtId }) => `numFmtId ${numFmtId}`),
  ].map((what) => `a look leads to a ${what} that is not there`);
}
