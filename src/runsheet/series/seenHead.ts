import type { CellValue, Content } from "../../sheet/sheet";
import { dayText } from "../dayText";
import { fieldName } from "../tables/registry";
import { isFirstOf } from "./firstOfName";
import { KEYS, type SeenColumns, type SeenKeys, type SeenTables } from "./seenColumns";
import { ACROSS, type Blocks, cellAt, headCell, headRef, NOTE_ROW, RENAMED, type SheetCells } from "./seenPlaces";
import type { SeenSettings, SeriesToShow } from "./seenSheet";
import { type CandleRanges, countOfWicks } from "./wickFormulas";

/** The rows of the series in the table of burn tests: all that have what the head of the sheet says. */
export function ownRows({ test }: SeenColumns): string {
  const is = KEYS.flatMap((field) => {
    const column = test(field);
    if (!column) return [];
    const said = `TRIM(${column.ref})`;
    return field === "product"
      ? [`(IF(${said}="","container",${said})=TRIM(${headRef(field)}))`]
      : [`(${said}=TRIM(${headRef(field)}))`];
  });
  return is.join("*");
}

/** The title, what the sheet follows, and the cells that say which candles these are. */
export function headRows(
  at: SheetCells,
  { name, tests, fill }: SeriesToShow,
  given: { readonly tables: SeenTables; readonly columns: SeenColumns; readonly keys: SeenKeys },
  blocks: Blocks,
  ranges: CandleRanges,
  { today, unit }: SeenSettings,
): void {
  const { tables, columns, keys } = given;
  const { burnTests, readings } = tables;
  const [candles, wicks] = [blocks.candles.count, blocks.figures.count];
  at.text(0, 0, `Series: ${name}`, "title");
  at.text(
    1,
    0,
    `Written ${dayText(today)} with ${tests.length} candles. It follows the tables ${burnTests.name} and ${readings.name}: a reading that is changed or added shows here. It has room for ${candles} candles and ${wicks} wicks. Written again, it stands on a new sheet; this one stays.`,
    "note",
    { across: ACROSS },
  );
  for (const field of KEYS) {
    const value = field === "product" ? keys.product || "container" : keys[field];
    const isShare = field === "load" && typeof value === "number";
    put(at, field, fieldName("burnTests", field), contentOf(value), isShare ? "0.0#%" : undefined);
  }
  const weight = fill === undefined ? undefined : { number: Number(fill.toPrecision(6)) };
  put(at, "fill", `Wax and scent (${unit})`, weight);
  at.text(
    NOTE_ROW,
    0,
    `The candles here are all rows of ${burnTests.name} that say the same as these cells. Wax and scent (fragrance oil) of one candle, with the rate, tell the hours until the last of the wax; a candle that is burnt until 10 mm are left tells them better.`,
    "note",
    { across: ACROSS },
  );
  const test = columns.test("test")?.ref ?? "";
  const names = `TRIM(${test})`;
  const many = `SUM(${ownRows(columns)}*(${names}<>"")*${isFirstOf(names, test)})`;
  const none = `"No row of ${burnTests.name} says the same as these cells."`;
  at.formula(RENAMED.row, RENAMED.column, columns.renamed);
  const renamed = cellAt(RENAMED.column, RENAMED.row);
  const counted = `LET(many,${many},IF(many=0,${none},${tooMany("candles", candles)}))`;
  at.alert(NOTE_ROW + 1, `=IF(${renamed}<>"",${renamed}&".",${counted})`);
  at.alert(NOTE_ROW + 2, `=LET(many,${countOfWicks(ranges)},${tooMany("wicks", wicks)})`);
}

const tooMany = (what: string, room: number): string =>
  `IF(many>${room},many-${room}&" more ${what} than this sheet has rows for: write it again in the pane.","")`;

function put(
  at: SheetCells,
  field: Parameters<typeof headCell>[0],
  label: string,
  content: Content | undefined,
  format?: string,
): void {
  const { row, label: column, labelAcross, value } = headCell(field);
  at.text(row, column, label, "label", { across: labelAcross });
  at.put(row, value, content, "input", {
    ...{ align: "left", across: field === "fill" ? 1 : 3 },
    ...(format && { format }),
  });
}

const contentOf = (value: CellValue): Content | undefined => {
  if (typeof value === "number") return { number: value };
  return value === null || typeof value === "object" ? undefined : { text: String(value) };
};
