import { child, children, type Element } from "../xml/tree";

/** Tells from the root of the metadata which of a cell's `cm` mark a formula as one that spills by itself. */
export function dynamicMarks(metadata: Element | undefined): (cm: string | undefined) => boolean {
  const types = children(child(metadata, "metadataTypes"), "metadataType").map(({ attributes }) => attributes.name);
  const marks = children(child(metadata, "cellMetadata"), "bk").map((block) =>
    children(block, "rc").some(({ attributes }) => types[Number(attributes.t) - 1] === "XLDAPR"),
  );
  return (cm) => cm !== undefined && marks[Number(cm) - 1] === true;
}
