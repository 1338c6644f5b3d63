import type { Bundle } from "../../engine/bundle";
import { calculate } from "../../engine/calculate";
import type { Sample } from "../index";
import { writeWorkbook } from "./writeWorkbook";

/** The file of a sample workbook, its formulas worked out by the built functions in the embedded spreadsheet's engine. */
export async function makeSample({ title, sheets }: Sample, functions: Bundle): Promise<Uint8Array> {
  const described = sheets();
  return writeWorkbook(title, described, await calculate(described, functions));
}
