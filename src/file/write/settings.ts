import { escapeXml } from "../../sheet/escapeXml";
import { type PackageEdit, XML } from "./packageEdit";
import { element, openingTag } from "./rawXml";

const NAMESPACE = "urn:pourwright:settings";
/** Names the part within the workbook. */
const ID = "{6D0C4B1E-52A7-4B0F-9A53-0D1C7E5B8F24}";
const PROPERTIES = "http://schemas.openxmlformats.org/officeDocument/2006/customXml";
const PROPERTIES_TYPE = "application/vnd.openxmlformats-officedocument.customXmlProperties+xml";

/** Keeps the pane's settings in a part of custom XML, which other programs carry along. */
export function putSettings(file: PackageEdit, workbook: string, settings: Readonly<Record<string, string>>): void {
  const isOurs = (path: string): boolean => {
    const text = file.text(path);
    return text !== undefined && openingTag(text).includes(`"${NAMESPACE}"`);
  };
  const known = file.relations(workbook).find(({ kind, target }) => kind === "customXml" && isOurs(target));
  const said = Object.entries(settings).map(([key, text]) => element("setting", { key }, escapeXml(text)));
  const written = XML + element("settings", { xmlns: NAMESPACE }, ...said);
  if (known) {
    file.write(known.target, written);
    return;
  }
  if (said.length === 0) return;
  const path = file.freePath("customXml/item", ".xml");
  const properties = path.replace("item", "itemProps");
  file.write(path, written);
  file.relate(workbook, "customXml", { path });
  const name = `<ds:schemaRefs><ds:schemaRef ds:uri="${NAMESPACE}"/></ds:schemaRefs>`;
  const item = element("ds:datastoreItem", { "ds:itemID": ID, "xmlns:ds": PROPERTIES }, name);
  file.add(properties, PROPERTIES_TYPE, XML + item);
  file.relate(path, "customXmlProps", { path: properties });
}
