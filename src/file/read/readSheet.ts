import { cellPlace } from "../addresses";
import type { BookSheet, BookTable, Note } from "../book";
import { damaged } from "../refused";
import { type Element, readTree, within } from "../xml/tree";
import { type Relationship, relationships } from "../zip/package";
import type { Package } from "../zip/unpack";
import { type CellContext, inOrder } from "./cells";
import { readConditions } from "./conditions";
import { readFilter } from "./filters";
import { readLinks } from "./links";
import type { Names } from "./names";
import { readConversations, readNotes } from "./notes";
import { readPrint } from "./print";
import type { Remarks } from "./remarks";
import { readFrame } from "./sheetFrame";
import { readSheetPart } from "./sheetPart";
import { remarkOnSheet } from "./sheetRemarks";
import type { Styles } from "./styles";
import { readTable } from "./tables";
import { readValidations } from "./validations";

/** A sheet as the workbook lists it. */
export interface ListedSheet {
  readonly id: string;
  readonly name: string;
  readonly state: BookSheet["state"];
  /** Where its part stands. */
  readonly path: string;
}

/** What a sheet needs of the workbook. */
export interface SheetContext {
  readonly pack: Package;
  readonly cells: CellContext;
  readonly overlays: Styles["overlays"];
  readonly titles: Names["titles"];
  /** Who wrote in conversations. */
  readonly people: Element | undefined;
  readonly remarks: Remarks;
}

export function readSheet(listed: ListedSheet, context: SheetContext, progress?: (share: number) => void): BookSheet {
  const { pack, cells, overlays, titles, people, remarks } = context;
  const { id, name, state, path } = listed;
  const part = readSheetPart(path, partOf(pack, path), cells, progress);
  const find = (wanted: string): Element | undefined => part.others.find((one) => one.name === wanted);
  const related = relationships(pack, path);
  remarkOnSheet(name, part, related, pack, remarks);
  return {
    id,
    name,
    state,
    rows: inOrder(part.cells.rows, "row"),
    ...readFrame(find, cells.styles.length, cells.colors),
    tables: tablesOf(find("tableParts"), related, pack),
    filter: readFilter(find("autoFilter")),
    validations: readValidations(find("dataValidations"), younger(find("extLst")), cells.from1904),
    conditions: readConditions(
      part.others.filter((one) => one.name === "conditionalFormatting"),
      find("extLst"),
      overlays,
      cells.colors,
    ),
    notes: notesOf(related, people, context),
    links: readLinks(find("hyperlinks"), related),
    print: readPrint(find("pageSetup"), titles.get(id), find("rowBreaks")),
  };
}

const younger = (extensions: Element | undefined): Element | undefined =>
  within(extensions, "x14:dataValidations").next().value ?? undefined;

/** A part that others refer to; one that is missing makes the file a damaged one. */
export function partOf({ parts }: Package, path: string): Uint8Array {
  const bytes = parts.get(path);
  if (!bytes) throw damaged(`The part "${path}" is missing.`);
  return bytes;
}

function tablesOf(list: Element | undefined, related: readonly Relationship[], pack: Package): BookTable[] {
  return (list?.children ?? []).flatMap(({ name, attributes }) => {
    if (name !== "tablePart") return [];
    const target = related.find(({ id }) => id === attributes["r:id"])?.target;
    if (target === undefined) throw damaged("A table that a sheet names is missing.");
    return [readTable(readTree(target, partOf(pack, target)))];
  });
}

/** Notes, those of conversations with all that was said. */
function notesOf(related: readonly Relationship[], people: Element | undefined, { pack, cells }: SheetContext): Note[] {
  const roots = (wanted: string): Element[] =>
    related.flatMap(({ kind, target }) => (kind === wanted ? [readTree(target, partOf(pack, target))] : []));
  const said = new Map(
    roots("threadedComment").flatMap((root) =>
      [...readConversations(root, people)].flatMap(([address, conversation]) => {
        const place = cellPlace(address);
        return place ? [[`${place.row} ${place.column}`, conversation] as const] : [];
      }),
    ),
  );
  return roots("comments")
    .flatMap((root) => readNotes(root, cells.colors))
    .map((note) => ({ ...note, ...said.get(`${note.row} ${note.column}`) }));
}
