/** The toolbar's Text to Number takes percentages too, and says which texts it leaves. */

import {
  CellValueType,
  getNumfmtParseValueFilter,
  type ICellData,
  ICommandService,
  type Injector,
  type IRange,
  isTextFormat,
  type Nullable,
  type Worksheet,
} from "@univerjs/core";
import { SheetsSelectionsService, TextToNumberCommand } from "@univerjs/preset-sheets-core";
import { cellName } from "../../../engine/problems";
import type { Consequence } from "./edits";
import { written } from "./newRows";
import { plainMinus } from "./percent";
import { selectedCell } from "./selected";
import { readingOf } from "./typedReadings";

const PLAIN = /^([-+]?(?:\d+\.?\d*|\.\d+))\s*(%?)$/;

/** A text that looks as if it were to be a number. */
const NUMBERLIKE = /^[-+\u2212€$£¥.,]?\s*\d/;

export class TextToNumber {
  /** The cells that it is at. */
  #ranges: readonly IRange[] | null = null;

  constructor(
    private readonly injector: Injector,
    private readonly say: (words: string) => void,
  ) {
    const commands = injector.get(ICommandService);
    commands.beforeCommandExecuted(({ id, params }) => {
      if (id === TextToNumberCommand.id) this.#ranges = (params as { ranges?: IRange[] })?.ranges ?? this.#selected();
    });
    commands.onCommandExecuted(({ id }) => {
      if (id === TextToNumberCommand.id) this.#ranges = null;
    });
  }

  #selected(): readonly IRange[] {
    const selections = this.injector.get(SheetsSelectionsService).getCurrentSelections();
    return selections.map(({ range }) => range);
  }

  /** What is to be done beside what Univer does by itself: it leaves whole columns, and all but plain numbers. */
  follow(): Consequence | null {
    const sheet = this.#ranges && selectedCell(this.injector)?.sheet;
    if (!sheet || !this.#ranges) return null;
    const value: Record<number, Record<number, ICellData>> = {};
    const left: string[] = [];
    for (const { row, column, text } of textsIn(sheet, this.#ranges)) {
      const read = numberIn(text, sheet.getComposedCellStyle(row, column)?.n?.pattern);
      if (read) value[row] = { ...value[row], [column]: read };
      else if (NUMBERLIKE.test(text)) left.push(`${cellName({ row, column })} (${text.slice(0, 40)})`);
    }
    const [first, ...more] = left;
    if (first) {
      const others = more.length === 0 ? "" : more.length === 1 ? " and 1 more cell" : ` and ${more.length} more cells`;
      this.say(`${first}${others} stayed text: type a plain number there, such as 12.5 or 12.5%.`);
    }
    return written(this.injector, sheet, value);
  }
}

/** The texts that stand in these cells. */
function textsIn(sheet: Worksheet, ranges: readonly IRange[]): { row: number; column: number; text: string }[] {
  const found: { row: number; column: number; text: string }[] = [];
  sheet.getCellMatrix().forValue((row, column, cell: Nullable<ICellData>) => {
    const isText = cell && !cell.f && !cell.si && typeof cell.v === "string" && cell.t !== CellValueType.NUMBER;
    if (isText && ranges.some((range) => holds(range, row, column)))
      found.push({ row, column, text: String(cell.v).trim() });
  });
  return found;
}

/** Whole rows and columns begin and end with NaN. */
const holds = ({ startRow, endRow, startColumn, endColumn }: IRange, row: number, column: number): boolean =>
  !(row < startRow || row > endRow || column < startColumn || column > endColumn);

function numberIn(text: string, look: string | undefined): ICellData | null {
  const reading = readingOf(text);
  const plain = reading?.kind === "spaces" ? reading.entry : plainMinus(text);
  const [, number = "", percent = ""] = PLAIN.exec(plain) ?? [];
  const read = number ? getNumfmtParseValueFilter(number + percent) : null;
  if (typeof read?.v !== "number") return null;
  const isText = isTextFormat(look);
  const isShown = percent === "" ? !isText : look?.includes("%");
  const pattern = read.z ?? "General";
  return { v: read.v, t: CellValueType.NUMBER, p: null, ...(!isShown && { s: { n: { pattern } } }) };
}
