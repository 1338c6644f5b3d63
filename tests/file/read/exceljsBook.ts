import ExcelJS, { type Cell } from "exceljs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import type { CellValue } from "../../../src/sheet/sheet";

/** A workbook as exceljs reads it, a reader that has nothing in common with ours. */
export async function exceljsBook(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  // exceljs cannot read a table column that has a formula (4.4.0 loses the columns after it).
  const parts = Object.entries(unzipSync(bytes)).map(([path, content]): [string, Uint8Array] => [
    path,
    path.includes("tables/")
      ? strToU8(strFromU8(content).replace(/<calculatedColumnFormula.*?<\/calculatedColumnFormula>/gs, ""))
      : content,
  ]);
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(zipSync(Object.fromEntries(parts)).buffer as ArrayBuffer);
  return book;
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null;

/** What a cell holds, in our own form: days as numbers, rich and linked texts as texts. */
export function exceljsValue(cell: Cell): CellValue {
  return plain(cell.formula === undefined ? cell.value : (cell.result ?? null));
}

function plain(value: unknown): CellValue {
  if (value instanceof Date) return value.getTime() / 86_400_000 + 25_569;
  if (!isObject(value)) return (value as CellValue) ?? null;
  if ("error" in value) return { error: String(value.error) };
  if (Array.isArray(value.richText)) return value.richText.map(({ text }: { text: string }) => text).join("");
  if ("text" in value) return plain(value.text);
  return null;
}
