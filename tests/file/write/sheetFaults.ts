import { columnOf, doubled, inside, isA, overlapping, type Parts, partWith, relationsOf, rowOf, tags } from "./parts";

/** The order of a sheet's elements, ECMA-376 Part 1, 18.3.1.99 (from memory). */
const ORDER =
  "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter rowBreaks colBreaks customProperties cellWatches ignoredErrors smartTags drawing legacyDrawing legacyDrawingHF drawingHF picture oleObjects controls webPublishItems tableParts extLst".split(
    " ",
  );

/** What is wrong in the sheets: with places, with what cells refer to, beyond what a sheet can hold. */
export function sheetFaults(parts: Parts): string[] {
  const styles = partWith(parts, "styleSheet");
  const texts = partWith(parts, "sst");
  const there: There = {
    looks: tags(inside(styles, "cellXfs"), "xf").length,
    conditionLooks: tags(inside(styles, "dxfs"), "dxf").length,
    marks: tags(inside(partWith(parts, "metadata"), "cellMetadata"), "bk").length,
    texts: tags(texts, "si").length,
  };
  return Object.entries(parts)
    .filter(([, xml]) => isA(xml, "worksheet"))
    .flatMap(([path, xml]) =>
      [...order(xml), ...cells(xml, there), ...looks(xml, there), ...blocks(xml), ...notes(parts, path, xml)].map(
        (fault) => `${path} ${fault}`,
      ),
    );
}

/** How many of each thing there are that cells refer to. */
type There = Readonly<Record<"looks" | "conditionLooks" | "marks" | "texts", number>>;

function order(xml: string): string[] {
  const places = topLevel(xml)
    .map((name) => ORDER.indexOf(name))
    .filter((place) => place >= 0);
  const rows = tags(xml, "row").map(({ r }) => Number(r));
  return [...(isRising(places, 0) ? [] : ["is out of order"]), ...(isRising(rows, 1) ? [] : ["has rows out of order"])];
}

const isRising = (list: readonly number[], least: number): boolean =>
  list.every((one, i) => i === 0 || one - (list[i - 1] ?? 0) >= least);

const ERRORS = /^#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|GETTING_DATA)$/;
/** A number as XML Schema has it, without the infinite ones. */
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:E[+-]?\d+)?$/i;

function cells(xml: string, there: There): string[] {
  const all = tags(inside(xml, "sheetData"), "c");
  const rows = [...xml.matchAll(/<row\b([^>]*)>(.*?)<\/row>/gs)];
  const values = [...xml.matchAll(/<c\b([^>]*[^/])>(.*?)<\/c>/gs)].map(([, tag = "", content = ""]) => {
    const { r, t = "n" } = tags(`<c ${tag}>`, "c")[0] ?? {};
    return { r, t, v: /<v\b[^>]*>(.*?)<\/v>/s.exec(content)?.[1] };
  });
  const isGood = ({ t, v }: { t: string; v?: string | undefined }): boolean => {
    if (v === undefined) return true;
    if (t === "s") return Number(v) < there.texts;
    if (t === "b") return /^[01]$/.test(v);
    if (t === "e") return ERRORS.test(v);
    return t !== "n" || NUMBER.test(v);
  };
  return [
    ...doubled(all.map(({ r }) => r)).map((address) => `has ${address} twice`),
    ...rows.flatMap(([, tag = "", content = ""]) => {
      const { r } = tags(`<row ${tag}>`, "row")[0] ?? {};
      const places = tags(content, "c").flatMap(({ r: place }) => place ?? []);
      const isThere = places.every((place) => rowOf(place) === Number(r)) && isRising(places.map(columnOf), 1);
      return isThere || r === undefined ? [] : [`has cells out of order in row ${r}`];
    }),
    ...all.filter(({ cm }) => cm !== undefined && Number(cm) > there.marks).map(({ r }) => `${r} has no mark`),
    ...all.filter(({ s = "0" }) => Number(s) >= there.looks).map(({ r }) => `${r} has no look`),
    ...values.filter((one) => !isGood(one)).map(({ r, v }) => `${r} cannot hold ${v}`),
  ];
}

/** What other things than cells look like: rows, columns, conditions. */
function looks(xml: string, there: There): string[] {
  const columns = tags(xml, "col").map(({ min, max, width = "0" }) => ({ min: Number(min), max: Number(max), width }));
  const isInOrder = columns.every(({ min, max }, i) => min > (columns[i - 1]?.max ?? 0) && max >= min && max <= 16_384);
  return [
    ...(isInOrder ? [] : ["has columns out of order"]),
    ...(columns.every(({ width }) => Number(width) <= 255) ? [] : ["has a column that is too wide"]),
    ...(tags(xml, "row").every(({ ht = "0" }) => Number(ht) <= 409.5) ? [] : ["has a row that is too high"]),
    ...tags(xml, "cfRule")
      .filter(({ dxfId = "-1" }) => Number(dxfId) >= there.conditionLooks)
      .map(({ dxfId }) => `has a condition without its look ${dxfId}`),
  ];
}

/** Blocks of formulas that spill or fill are of no cell at once. */
function blocks(xml: string): string[] {
  const arrays = tags(xml, "f").flatMap(({ t, ref }) => (t === "array" && ref ? [ref] : []));
  return overlapping(arrays).map((ref) => `has a formula over another at ${ref}`);
}

/** Notes have a drawing in which their boxes stand. */
function notes(parts: Parts, path: string, xml: string): string[] {
  const kinds = relationsOf(parts, path).map(({ kind }) => kind);
  const isDrawn = kinds.includes("vmlDrawing") && tags(xml, "legacyDrawing").length === 1;
  return kinds.includes("comments") && !isDrawn ? ["has notes without boxes"] : [];
}

/** The names of the elements right under the root. */
function topLevel(xml: string): string[] {
  const names: string[] = [];
  let depth = 0;
  for (const [tag, closing, name] of xml.matchAll(/<(\/?)(?:\w+:)?(\w+)(?:\s(?:"[^"]*"|'[^']*'|[^>"'])*)?>/g)) {
    if (depth === 1 && !closing) names.push(name ?? "");
    if (closing) depth--;
    else if (!tag.endsWith("/>")) depth++;
  }
  return names;
}
