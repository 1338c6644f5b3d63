import { ArrayValueObject, type BaseValueObject } from "@univerjs/engine-formula";

/** Values in rows of the same length, as a formula gives them: they stand nowhere yet. */
export const arrayOfRows = (rows: BaseValueObject[][]): ArrayValueObject =>
  ArrayValueObject.create({
    calculateValueList: rows,
    rowCount: rows.length,
    columnCount: rows[0]?.length ?? 0,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
