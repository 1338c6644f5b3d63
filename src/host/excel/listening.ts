type Event = (workbook: Excel.Workbook) => {
  add(handler: () => Promise<void>): { remove(): void };
};

/**
 * After these, tables may have changed or another sheet is shown. What is sorted, filtered, hidden and renamed is told by
 * newer Excel than the manifest asks for.
 */
const CHANGES: readonly Event[] = [
  ({ worksheets }) => worksheets.onChanged,
  ({ worksheets }) => worksheets.onAdded,
  ({ worksheets }) => worksheets.onDeleted,
  ({ worksheets }) => worksheets.onRowSorted,
  ({ worksheets }) => worksheets.onColumnSorted,
  ({ worksheets }) => worksheets.onNameChanged,
  ({ worksheets }) => worksheets.onRowHiddenChanged,
  ({ worksheets }) => worksheets.onActivated,
  ({ tables }) => tables.onAdded,
  ({ tables }) => tables.onDeleted,
];
const CALCULATED: Event = ({ worksheets }) => worksheets.onCalculated;

/** Has an event heard, by itself, so that one which Excel does not know leaves the others; gives the way to stop. */
function hear(event: Event, handler: () => Promise<void>): () => void {
  const hearing = Excel.run({ delayForCellEdit: true }, async (context) => {
    const heard = event(context.workbook).add(handler);
    await context.sync();
    return { context, heard };
  });
  // What Excel refuses to tell stays unheard: who writes must read the cells again just before.
  hearing.catch(() => {});
  return () => {
    hearing
      .then(({ context, heard }) =>
        Excel.run(context, async () => {
          heard.remove();
          await context.sync();
        }),
      )
      .catch(() => {});
  };
}

/**
 * Hears of every change, and of every calculation; gives the way to stop. After that nothing is told, even what was on
 * its way.
 */
export function listen(changed: () => void, calculated: () => void): () => void {
  let live = true;
  const whileLive = (tell: () => void) => async (): Promise<void> => {
    if (live) tell();
  };
  const stops = [...CHANGES.map((event) => hear(event, whileLive(changed))), hear(CALCULATED, whileLive(calculated))];
  return () => {
    live = false;
    for (const stop of stops) stop();
  };
}
