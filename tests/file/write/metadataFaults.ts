import { attributesOf } from "../../samples/zipped";

/**
 * What is wrong in the part to whose records cells refer: counts that are not so, and records of a type or a property
 * that is not there. Types are counted from 1, properties from 0 (ECMA-376 Part 1, 18.9.15, from memory).
 */
export function metadataFaults(xml: string): string[] {
  const lists = [
    ...xml.matchAll(/<(metadataTypes|futureMetadata|cellMetadata|valueMetadata)\b([^>]*)>(.*?)<\/\1>/gs),
  ].map(([, name = "", tag = "", inside = ""]) => {
    const records = [...inside.matchAll(name === "metadataTypes" ? /<metadataType\b[^>]*>/g : /<bk>.*?<\/bk>/gs)];
    return { name, of: attributesOf(tag), records: records.map(([record]) => record) };
  });
  const types = lists
    .filter(({ name }) => name === "metadataTypes")
    .flatMap(({ records }) => records.map((record) => attributesOf(record).name));
  const properties = new Map(
    lists.filter(({ name }) => name === "futureMetadata").map(({ of, records }) => [of.name, records.length]),
  );
  const isThere = (record: string): boolean =>
    [...record.matchAll(/<rc\b[^>]*>/g)].every(([tag]) => {
      const { t, v } = attributesOf(tag);
      const type = types[Number(t) - 1];
      // What is no later addition has its properties in lists of its own.
      return (
        type !== undefined &&
        Number(v) < (properties.get(type) ?? (type.startsWith("XL") ? 0 : Number.POSITIVE_INFINITY))
      );
    });
  return [
    ...lists
      .filter(({ of, records }) => of.count !== undefined && Number(of.count) !== records.length)
      .map(({ name, of }) => `${name} does not hold ${of.count}`),
    ...lists
      .filter(({ name, records }) => /^(cell|value)Metadata$/.test(name) && !records.every(isThere))
      .map(({ name }) => `${name} leads to what is not there`),
  ];
}
