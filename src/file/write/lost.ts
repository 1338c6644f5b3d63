import { areaList, cellAddress } from "../addresses";
import type { Area, Book, BookSheet, Filter, Remark } from "../book";
import { same } from "../same";
import { contentTypes } from "../zip/package";
import { sameCell } from "./cells";
import { losingYounger } from "./conditions";
import { areUnknown } from "./iconSets";
import { isListTooLong, LONGEST_TEXT } from "./limits";
import { cellsMoved } from "./moved";
import type { PackageEdit } from "./packageEdit";
import { aloneOn, type Counted, counted, partsOf, placesIn } from "./partsOf";
import { attributeOf, cut, unescapeText } from "./rawXml";
import { sheetsIn } from "./renames";
import type { Listed } from "./workbookSheets";

/** What the file cannot keep as it was. */
export function lostIn(file: PackageEdit, listed: readonly Listed[], before: Book, now: Book): Remark[] {
  const pathOf = (id: string) => listed.find((one) => one.id === id)?.path;
  const pairs = before.sheets.map((was) => ({ was, is: now.sheets.find(({ id }) => id === was.id) }));
  const unsteady = new Set(pairs.filter(({ was, is }) => !is || cellsMoved(was, is)).map(({ was }) => was.name));
  const sheets = pairs.flatMap(({ was, is }) => {
    const path = pathOf(was.id);
    if (!is || path === undefined || same(was, is)) return [];
    return ofSheet(file, path, was, is, unsteady.has(was.name)).map((remark) => ({ ...remark, sheet: is.name }));
  });
  const duplicates = now.sheets.flatMap((is) => {
    const was = before.sheets.some(({ id }) => id === is.id)
      ? undefined
      : before.sheets.find(({ id }) => id === is.copyOf);
    const path = was && pathOf(was.id);
    if (!was || path === undefined) return [];
    return ofDuplicate(file, path, was, is).map((loss) => ({ ...loss, sheet: is.name }));
  });
  const tooLong = now.sheets.flatMap((sheet) => beyondLimits(sheet).map((loss) => ({ ...loss, sheet: sheet.name })));
  const filters = now.sheets.flatMap((sheet) =>
    wordlessFilters(
      before.sheets.find(({ id }) => id === sheet.id) ?? before.sheets.find(({ id }) => id === sheet.copyOf),
      sheet,
    ).map((loss) => ({ ...loss, sheet: sheet.name })),
  );
  return [...sheets, ...duplicates, ...tooLong, ...filters, ...readingElsewhere(file, unsteady), ...signatures(file)];
}

type Loss = Omit<Remark, "sheet">;

function ofSheet(file: PackageEdit, path: string, was: BookSheet, is: BookSheet, moved: boolean): Loss[] {
  const xml = file.text(path) ?? "";
  return [
    ...(moved ? [...leftBehind([...partsOf(file, path), ...placesIn(xml)]), ...rulesBelow(was, is)] : []),
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

/** A duplicate begins with the text of the sheet that it was made from, without what stands in parts of its own. */
function ofDuplicate(file: PackageEdit, path: string, was: BookSheet, is: BookSheet): Loss[] {
  const xml = file.text(path) ?? "";
  const consequence = `This sheet is a duplicate of "${was.name}" and goes without.`;
  return [
    ...counted([...partsOf(file, path), ...aloneOn(file, path, xml)]).map((what) => ({ what, consequence })),
    ...(cellsMoved(was, is) ? [...leftBehind(placesIn(xml)), ...rulesBelow(was, is)] : []),
    ...editedCells(xml, was, is),
    ...editedConditions(xml, was.conditions, is.conditions),
  ];
}

/** Rules for cells below all that is filled, which stand where they stood: they may be too many for the page to move. */
function rulesBelow({ rows, conditions, validations }: BookSheet, is: BookSheet): Loss[] {
  const last = rows.at(-1)?.row ?? 0;
  const below = (rules: BookSheet["conditions"] | BookSheet["validations"]): Area[] =>
    rules.flatMap(({ areas }) => areas).filter(({ row }) => row > last);
  const staying = (was: readonly Area[], now: readonly Area[]): Area[] =>
    was.filter((area) => now.some((one) => same(one, area)));
  const consequence =
    "Rows of this sheet moved, and its cells, far below them, stayed: look whether it is still at the right ones.";
  return [
    ...staying(below(conditions), below(is.conditions)).map((area) => ({
      what: `the conditional format in ${areaList([area])}`,
      consequence,
    })),
    ...staying(below(validations), below(is.validations)).map((area) => ({
      what: `the rule of what may be typed in ${areaList([area])}`,
      consequence,
    })),
  ];
}

/** What stands over the cells or tells of them by their places, and does not move with them. */
const leftBehind = (found: readonly Counted[]): Loss[] =>
  counted(found).map((what) => ({
    what,
    consequence:
      "Rows or columns of this sheet moved and it did not move with them: look whether it is still at the right cells.",
  }));

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
  const icons = conditions.filter(({ icons }) => icons && areUnknown(icons));
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
