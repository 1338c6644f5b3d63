const OFFICE = "http://schemas.openxmlformats.org";
const STRICT = "http://purl.oclc.org/ooxml";
const MICROSOFT = "http://schemas.microsoft.com/office";

/**
 * The prefix that the reader calls each namespace by, whatever a file calls it. What is of the workbook's, the package's
 * or our own goes without. The strict form of the standard has namespaces of its own, which mean the same.
 */
const PREFIXES = new Map(
  Object.entries({
    [`${OFFICE}/spreadsheetml/2006/main`]: "",
    [`${STRICT}/spreadsheetml/main`]: "",
    [`${OFFICE}/package/2006/relationships`]: "",
    [`${OFFICE}/package/2006/content-types`]: "",
    "urn:pourwright:settings": "",
    [`${OFFICE}/officeDocument/2006/relationships`]: "r:",
    [`${STRICT}/officeDocument/relationships`]: "r:",
    [`${OFFICE}/drawingml/2006/main`]: "a:",
    [`${STRICT}/drawingml/main`]: "a:",
    [`${OFFICE}/drawingml/2006/spreadsheetDrawing`]: "xdr:",
    [`${STRICT}/drawingml/spreadsheetDrawing`]: "xdr:",
    [`${OFFICE}/markup-compatibility/2006`]: "mc:",
    "http://www.w3.org/XML/1998/namespace": "xml:",
    [`${MICROSOFT}/spreadsheetml/2009/9/main`]: "x14:",
    [`${MICROSOFT}/spreadsheetml/2010/11/main`]: "x15:",
    [`${MICROSOFT}/spreadsheetml/2009/9/ac`]: "x14ac:",
    [`${MICROSOFT}/spreadsheetml/2018/threadedcomments`]: "tc:",
    [`${MICROSOFT}/spreadsheetml/2017/dynamicarray`]: "xda:",
    [`${MICROSOFT}/spreadsheetml/2022/featurepropertybag`]: "xfpb:",
    [`${MICROSOFT}/excel/2006/main`]: "xm:",
    [`${MICROSOFT}/webextensions/webextension/2010/11`]: "we:",
  }),
);

/** What stands before a name of this namespace; a question mark for one that nothing here asks for. */
export const prefixOf = (namespace: string): string => PREFIXES.get(namespace) ?? "?:";

/** Whether what a file says for programs that know this namespace is said to us. */
export const isKnown = (namespace: string): boolean => PREFIXES.has(namespace);
