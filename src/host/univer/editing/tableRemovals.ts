/** Corrections of what becomes of a table when rows or columns at its edge are removed; table plugin, version 0.25.1. */

import type { IMutationInfo, IRange } from "@univerjs/core";
import { RemoveColCommand, RemoveRowCommand, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { AddSheetTableMutation, SetSheetTableMutation } from "@univerjs/preset-sheets-table";

type Mutations = ReturnType<SheetInterceptorService["onCommandExecute"]>;

interface Setting {
  readonly tableId: string;
  readonly config: { readonly updateRange?: { readonly newRange: IRange } };
}

const interceptors = SheetInterceptorService.prototype;
const mutationsOf = interceptors.onCommandExecute;
interceptors.onCommandExecute = function (command) {
  const all = mutationsOf.call(this, command);
  const { range } = (command.params ?? {}) as { range?: IRange };
  if (range && command.id === RemoveRowCommand.id) return withoutRows(all, range);
  if (range && command.id === RemoveColCommand.id) return withoutColumns(all, range);
  return all;
};

// It would take all rows that are removed from the table's, also those below it: the table would end above its heading.
function withoutRows(all: Mutations, removed: IRange): Mutations {
  const before = new Map(settings(all.undos).map(({ tableId, config }) => [tableId, config.updateRange?.newRange]));
  return {
    ...all,
    redos: all.redos.map((one) => {
      const [setting] = settings([one]);
      const was = setting && before.get(setting.tableId);
      if (!was || removed.startRow <= was.startRow) return one;
      const rows = Math.min(removed.endRow, was.endRow) - removed.startRow + 1;
      return resized(one, { ...was, endRow: was.endRow - rows });
    }),
  };
}

// Where columns left of the table go too, it would move the table by all that are removed, and then take out others than
// the first ones. So these go before, and the table moves by what is removed left of the rest.
function withoutColumns(all: Mutations, removed: IRange): Mutations {
  const before = new Map(
    all.undos
      .filter(({ id }) => id === AddSheetTableMutation.id)
      .map(({ params }) => params as { tableId: string; range: IRange })
      .filter(({ range }) => removed.startColumn < range.startColumn && removed.endColumn < range.endColumn)
      .map(({ tableId, range }) => [tableId, range]),
  );
  const rest = (one: IMutationInfo): IRange | undefined => before.get(settings([one])[0]?.tableId ?? "");
  return {
    ...all,
    preRedos: [
      ...(all.preRedos ?? []),
      ...all.redos.flatMap((one) => {
        const was = rest(one);
        return was ? resized(one, { ...was, startColumn: removed.endColumn + 1 }) : [];
      }),
    ],
    redos: all.redos.filter((one) => !rest(one)),
  };
}

const settings = (mutations: readonly IMutationInfo[]): Setting[] =>
  mutations.filter(({ id }) => id === SetSheetTableMutation.id).map(({ params }) => params as Setting);

const resized = (one: IMutationInfo, newRange: IRange): IMutationInfo => ({
  ...one,
  params: { ...one.params, config: { updateRange: { newRange } } },
});
