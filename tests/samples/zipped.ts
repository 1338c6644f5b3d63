import { strFromU8, unzipSync } from "fflate";

/** A small reader of workbook files that shares nothing with the writer: the parts as they stand in the zip. */

/** A cell as written: its address, the attributes of `c` and `f`, the formula, and the raw value. */
export interface WrittenCell {
  readonly address: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly formula?: string;
  readonly formulaAttributes: Readonly<Record<string, string>>;
  readonly value?: string;
}

export interface WrittenTable {
  readonly name: string;
  readonly ref: string;
  readonly columns: readonly { readonly name: string; readonly formula?: string; readonly array: boolean }[];
}

export const partsOf = (bytes: Uint8Array): Record<string, string> =>
  Object.fromEntries(Object.entries(unzipSync(bytes)).map(([path, content]) => [path, strFromU8(content)]));

const ENTITIES: Record<string, string> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

const unescapeXml = (text: string): string =>
  text.replace(/&(amp|lt|gt|quot|apos);/g, (_, name: string) => ENTITIES[name] ?? "");

export const attributesOf = (tag: string): Record<string, string> =>
  Object.fromEntries(
    [...tag.matchAll(/([\w:]+)="([^"]*)"/g)].map(([, name, value]) => [name, unescapeXml(value ?? "")]),
  );

/** The cells of each sheet, in the order of the sheets. */
export function sheetsOf(parts: Record<string, string>): { name: string; xml: string; cells: WrittenCell[] }[] {
  const relations = Object.fromEntries(
    [...(parts["xl/_rels/workbook.xml.rels"] ?? "").matchAll(/<Relationship [^>]*>/g)].map(([tag]) => {
      const { Id, Target } = attributesOf(tag);
      return [Id, Target];
    }),
  );
  return [...(parts["xl/workbook.xml"] ?? "").matchAll(/<sheet [^>]*>/g)].map(([tag]) => {
    const attributes = attributesOf(tag);
    const xml = parts[`xl/${relations[attributes["r:id"] ?? ""]}`] ?? "";
    return { name: attributes.name ?? "", xml, cells: cellsOf(xml) };
  });
}

/** The cells of a sheet, from its part. */
export function cellsOf(xml: string): WrittenCell[] {
  return [...xml.matchAll(/<c ([^>]*?)(?:\/>|>(.*?)<\/c>)/gs)].map(([, tag = "", inside = ""]) => {
    const attributes = attributesOf(tag);
    const formula = /<f([^>]*)>(.*?)<\/f>/s.exec(inside);
    const value = /<v>(.*?)<\/v>/s.exec(inside)?.[1];
    return {
      address: attributes.r ?? "",
      attributes,
      formulaAttributes: attributesOf(formula?.[1] ?? ""),
      ...(formula && { formula: unescapeXml(formula[2] ?? "") }),
      ...(value !== undefined && { value: unescapeXml(value) }),
    };
  });
}

export const sharedTexts = (parts: Record<string, string>): string[] =>
  [...(parts["xl/sharedStrings.xml"] ?? "").matchAll(/<si><t[^>]*>(.*?)<\/t><\/si>/gs)].map(([, text]) =>
    unescapeXml(text ?? ""),
  );

export function tablesOf(parts: Record<string, string>): WrittenTable[] {
  const paths = Object.keys(parts).filter((path) => path.startsWith("xl/tables/"));
  return paths.map((path) => {
    const xml = parts[path] ?? "";
    const { name = "", ref = "" } = attributesOf(/<table [^>]*>/.exec(xml)?.[0] ?? "");
    const columns = [...xml.matchAll(/<tableColumn ([^>]*?)(?:\/>|>(.*?)<\/tableColumn>)/gs)].map(
      ([, tag = "", inside = ""]) => {
        const formula = /<calculatedColumnFormula([^>]*)>(.*?)<\/calculatedColumnFormula>/s.exec(inside);
        return {
          name: attributesOf(tag).name ?? "",
          array: attributesOf(formula?.[1] ?? "").array === "1",
          ...(formula && { formula: unescapeXml(formula[2] ?? "") }),
        };
      },
    );
    return { name, ref, columns };
  });
}
