import { areaList, cellAddress } from "../addresses";
import type { Book, BookSheet, Filter, Remark } from "../book";
import { same } from "../same";
import { contentTypes } from "../zip/package";
import { sameCell } from "./cells";
import { losingYounger, OLDER_SETS } from "./conditions";
import { isListTooLong, LONGEST_TEXT } from "./limits";
import { cellsMoved } from "./moved";
import type { PackageEdit } from "./packageEdit";
import { attributeOf, cut, unescapeText } from "./rawXml";
import { sheetsIn } from "./renames";
import type { Listed } from "./workbookSheets";
import { aloneYounger } from "./youngerConditions";

/** What the file cannot keep as it was. */
export function lostIn(file: PackageEdit, listed: readonly Listed[], before: Book, now: Book): Remark[] {
  const pairs = before.sheets.map((was) => ({ was, is: now.sheets.find(({ id }) => id === was.id) }));
  const unsteady = new Set(pairs.filter(({ was, is }) => !is || cellsMoved(was, is)).map(({ was }) => was.name));
  const sheets = pairs.flatMap(({ was, is }) => {
    const path = listed.find(({ id }) => id === was.id)?.path;
    if (!is || path === undefined || same(was, is)) return [];
    return ofSheet(file, path, was, is, unsteady.has(was.name)).map((remark) => ({ ...remark, sheet: is.name }));
  });
  const tooLong = now.sheets.flatMap((sheet) => beyondLimits(sheet).map((loss) => ({ ...loss, sheet: sheet.name })));
  const filters = now.sheets.flatMap((sheet) =>
    wordlessFilters(
      before.sheets.find(({ id }) => id === sheet.id),
      sheet,
    ).map((loss) => ({ ...loss, sheet: sheet.name })),
  );
  return [...sheets, ...tooLong, ...filters, ...readingElsewhere(file, unsteady), ...signatures(file)];
}

type Loss = Omit<Remark, "sheet">;

function ofSheet(file: PackageEdit, path: string, was: BookSheet, is: BookSheet, moved: boolean): Loss[] {
  const xml = file.text(path) ?? "";
  return [
    ...(moved ? leftBehind(file, path, xml) : []),
    ...editedNotes(file, path, was, is),
    ...editedCells(xml, was, is),
    ...editedConditions(xml, was.conditions, is.conditions),
  ];
}

function editedConditions(xml: string, was: BookSheet["conditions"], is: BookSheet["conditions"]): Loss[] {
  if (same(was, is)) return [];
  return losingYounger(cut(xml), was, is).map(({ areas }) => ({
    what: `the conditional format in ${areaList(areas)}`,
    consequence: "It was changed here and keeps what the page knows of it, not all that newer programs had set.",
  }));
}

/** What stands over the cells or tells of them by their places, and does not move with them. */
function leftBehind(file: PackageEdit, path: string, xml: string): Loss[] {
  const relations = file.relations(path);
  const drawings = relations.filter(({ kind }) => kind === "drawing").map(({ target }) => target);
  const kinds = drawings.flatMap((drawing) => file.relations(drawing).map(({ kind }) => kind));
  const isChart = (kind: string): boolean => /^chart/.test(kind);
  const pivots = relations.filter(({ kind }) => kind === "pivotTable").length;
  const found: readonly (readonly [number, string, string])[] = [
    [kinds.filter(isChart).length, "chart", "charts"],
    [kinds.filter((kind) => kind === "image").length, "picture", "pictures"],
    [kinds.length === 0 ? drawings.length : 0, "drawing", "drawings"],
    [pivots, "pivot table", "pivot tables"],
    [/<(?:\w+:)?sparklineGroups/.test(xml) ? 2 : 0, "", "charts in cells"],
    [/\soutlineLevel="[1-7]"/.test(xml) ? 2 : 0, "", "an outline"],
    [/<(?:\w+:)?(?:row|col)Breaks/.test(xml) ? 2 : 0, "", "page breaks"],
    [/<protectedRanges/.test(xml) ? 2 : 0, "", "protected ranges"],
    [aloneYounger(cut(xml)), "conditional format of a younger kind", "conditional formats of a younger kind"],
  ];
  return found.flatMap(([count, one, many]) => {
    if (count === 0) return [];
    const what = one === "" ? many : count === 1 ? `a ${one}` : `${count} ${many}`;
    return [
      {
        what,
        consequence:
          "Rows or columns of this sheet moved and it did not move with them: look whether it is still at the right cells.",
      },
    ];
  });
}

function editedNotes(file: PackageEdit, path: string, was: BookSheet, is: BookSheet): Loss[] {
  const threads = file.relations(path).filter(({ kind }) => kind === "threadedComment");
  const places = new Set(
    threads.flatMap(({ target }) =>
      cut(file.text(target) ?? "<none/>").pieces.flatMap(({ name, raw }) =>
        name === "" ? [] : [attributeOf(raw, "ref")],
      ),
    ),
  );
  const edited = was.notes.filter(
    (note) => places.has(cellAddress(note.row, note.column)) && !is.notes.some((one) => same(one, note)),
  );
  return edited.map(({ row, column }) => ({
    what: `the conversation at ${cellAddress(row, column)}`,
    consequence: "It was changed or taken away here: what stays of it is a plain note.",
  }));
}

/** A cell's address and its formula. */
const FORMULA = /\sr="([A-Z]+\d+)"[^>]*>\s*<(?:\w+:)?f\b[^>]*>([^<]*)</g;

/** `[1]Prices!A1`: a workbook by its number; a number in the brackets of a table follows the table's name. */
const OTHER_WORKBOOK = /(?:^|[^\p{L}\p{N}_.\]])\[\d+\]/u;

function editedCells(xml: string, was: BookSheet, is: BookSheet): Loss[] {
  const now = new Map(is.rows.map(({ row, cells }) => [row, new Map(cells.map((cell) => [cell.column, cell]))]));
  const changed = was.rows.flatMap(({ row, cells }) =>
    cells.flatMap((cell) => {
      const other = now.get(row)?.get(cell.column);
      return other && sameCell(cell, other) ? [] : [{ cell, other, address: cellAddress(row, cell.column) }];
    }),
  );
  const rich = changed.filter(({ cell, other }) => cell.runs && other && !other.runs).map(({ address }) => address);
  const linked = new Set(
    [...xml.matchAll(/<(?:\w+:)?c\b[^>]*\svm="[^>]*>/g)].map(([tag]) => attributeOf(tag, "r") ?? ""),
  );
  const elsewhere = new Set(
    [...xml.matchAll(FORMULA)].flatMap(([, at = "", formula = ""]) => (OTHER_WORKBOOK.test(formula) ? [at] : [])),
  );
  const foreign = changed.map(({ address }) => address).filter((address) => elsewhere.has(address));
  const values = changed.map(({ address }) => address).filter((address) => linked.has(address));
  return [
    ...(rich.length === 0
      ? []
      : [
          {
            what: `looks within the text of ${list(rich)}`,
            consequence: "The text was changed here and has one look now.",
          },
        ]),
    ...(foreign.length === 0
      ? []
      : [
          {
            what: `formulas that look into another workbook, from ${list(foreign)}`,
            consequence: "These cells were moved or changed here and hold plain values now.",
          },
        ]),
    ...(values.length === 0
      ? []
      : [
          {
            what: `pictures or linked data in ${list(values)}`,
            consequence: "The cells were changed here and hold plain values now.",
          },
        ]),
  ];
}

/** Filters that were set here by something that is not written into files. */
function wordlessFilters(was: BookSheet | undefined, is: BookSheet): Loss[] {
  const wordless = (filter: Filter | null | undefined) =>
    (filter?.columns ?? []).filter(({ other }) => other).map(({ column }) => column);
  const pairs = [
    { where: "the sheet", now: is.filter, earlier: was?.filter },
    ...is.tables.map((table) => ({
      where: `the table ${table.name}`,
      now: table.filter,
      earlier: was?.tables.find(({ name }) => name === table.name)?.filter,
    })),
  ];
  return pairs.flatMap(({ where, now, earlier }) => {
    const known = wordless(earlier);
    if (wordless(now).every((column) => known.includes(column))) return [];
    return [
      {
        what: `a filter of ${where}`,
        consequence: "Files get no filter of this kind from here: its rows stay hidden, and the column has no filter.",
      },
    ];
  });
}

/** What is longer than files may hold. */
function beyondLimits({ rows, validations, conditions }: BookSheet): Loss[] {
  const texts = rows.flatMap(({ row, cells }) =>
    cells
      .filter(({ value }) => typeof value === "string" && value.length > LONGEST_TEXT)
      .map(({ column }) => cellAddress(row, column)),
  );
  const icons = conditions.filter(({ icons }) => icons && (icons.mixed || icons.set in OLDER_SETS));
  const boxes = validations.filter(({ tickBox }) => tickBox).map(({ areas }) => areaList(areas));
  const lists = validations.filter(isListTooLong).map(({ areas }) => areaList(areas));
  return [
    ...(texts.length === 0
      ? []
      : [
          {
            what: `long texts in ${list(texts)}`,
            consequence: `A cell of a file holds ${LONGEST_TEXT.toLocaleString("en-US")} characters at most; the rest is cut off.`,
          },
        ]),
    ...icons.map(({ areas }) => ({
      what: `the icons in ${areaList(areas)}`,
      consequence: "Files have no such icons: there other ones stand for them, with the same bounds.",
    })),
    ...boxes.map((where) => ({
      what: `the boxes to tick in ${where}`,
      consequence:
        "Files have no such boxes: there the cells get a list of what a box may hold, and keep what they hold.",
    })),
    ...lists.map((where) => ({
      what: `the list to choose from in ${where}`,
      consequence: "It is too long to be written out in a file. Put its words into cells and let the rule read these.",
    })),
  ];
}

const list = (addresses: readonly string[]): string =>
  addresses.length > 5 ? `${addresses.slice(0, 5).join(", ")} and ${addresses.length - 5} more` : addresses.join(", ");

/** Charts and pivot tables that read cells which moved or went with their sheet. */
function readingElsewhere(file: PackageEdit, unsteady: ReadonlySet<string>): Remark[] {
  if (unsteady.size === 0) return [];
  const typeOf = contentTypes(file);
  const count = (type: string, reads: (xml: string) => readonly string[]): number =>
    [...file.parts.keys()].filter(
      (path) => typeOf(path).endsWith(type) && reads(file.text(path) ?? "").some((name) => unsteady.has(name)),
    ).length;
  const charts = count(".chart+xml", (xml) =>
    [...xml.matchAll(/<(?:\w+:)?f>([^<]*)</g)].flatMap(([, formula = ""]) => sheetsIn(unescapeText(formula))),
  );
  const pivots = count(".pivotcachedefinition+xml", (xml) =>
    [...xml.matchAll(/<(?:\w+:)?worksheetSource\b[^>]*>/g)].map(([tag]) => attributeOf(tag, "sheet") ?? ""),
  );
  const consequence = `It still reads the cells that it read on ${[...unsteady].map((name) => `"${name}"`).join(", ")}: look whether they are the right ones.`;
  return [
    ...(charts > 0 ? [{ sheet: null, what: charts === 1 ? "a chart" : `${charts} charts`, consequence }] : []),
    ...(pivots > 0
      ? [{ sheet: null, what: pivots === 1 ? "a pivot table" : `${pivots} pivot tables`, consequence }]
      : []),
  ];
}

const signatures = (file: PackageEdit): Remark[] =>
  file.relations("").some(({ kind }) => kind === "origin")
    ? [
        {
          sheet: null,
          what: "a digital signature",
          consequence: "It is for the file as it was and is taken away; who signed it can sign it again.",
        },
      ]
    : [];
