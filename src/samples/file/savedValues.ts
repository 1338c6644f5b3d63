import { readFileSync } from "node:fs";
import { openFile } from "../../file/openFile";
import type { KnownValues } from "../../sheet/knownValues";

/** What the formulas of a workbook file gave when it was saved. Throws where one has no plain value. */
export function savedValues(file: URL): KnownValues {
  const { book } = openFile(new Uint8Array(readFileSync(file)), file.pathname);
  return Object.fromEntries(
    book.sheets.map(({ name, rows }) => [
      name,
      rows.flatMap(({ row, cells }) =>
        cells
          .filter(({ formula, spilled }) => formula !== undefined || spilled)
          .map(({ column, value, spill }) => {
            if (value === null || typeof value === "object") throw new Error(`${name}: a formula has no value`);
            const { rows = 1, columns = 1 } = spill ?? {};
            return { row, column, value, ...(rows * columns > 1 && { fills: { rows, columns } }) };
          }),
      ),
    ]),
  );
}
