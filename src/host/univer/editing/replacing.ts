/** Replacing leaves a text of digits one: the lot 0123 does not become the number 124. */

import {
  CellValueType,
  type ICellData,
  ICommandService,
  type Injector,
  IUniverInstanceService,
  type Nullable,
  type Workbook,
} from "@univerjs/core";
import { SetRangeValuesCommand } from "@univerjs/preset-sheets-core";

interface Writing {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly value: Readonly<Record<number, Readonly<Record<number, ICellData>>>>;
}

const REPLACING = /^ui\.command\.replace-/;

export function keepReplacedTexts(injector: Injector): void {
  const commands = injector.get(ICommandService);
  let isReplacing = false;
  commands.beforeCommandExecuted(({ id, params }) => {
    if (REPLACING.test(id)) isReplacing = true;
    else if (isReplacing && id === SetRangeValuesCommand.id) keepTexts(injector, params as Writing);
  });
  commands.onCommandExecuted(({ id }) => {
    if (REPLACING.test(id)) isReplacing = false;
  });
}

function keepTexts(injector: Injector, { unitId, subUnitId, value }: Writing): void {
  const sheet = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId)?.getSheetBySheetId(subUnitId);
  for (const [row, cells] of Object.entries(value)) {
    for (const [column, cell] of Object.entries(cells)) {
      const before = sheet?.getCellMatrix().getValue(Number(row), Number(column));
      if (isTextOfDigits(before) && typeof cell.v === "string") cell.t = CellValueType.FORCE_STRING;
    }
  }
}

const isTextOfDigits = (cell: Nullable<ICellData>): boolean =>
  cell?.t === CellValueType.FORCE_STRING ||
  (cell?.t === CellValueType.STRING && String(cell.v).trim() !== "" && Number.isFinite(Number(cell.v)));
