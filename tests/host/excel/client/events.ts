/** The numbers by which Excel tells office.js of its events. */
export const EVENTS: Readonly<Record<string, number>> = {
  "worksheets.onChanged": 10,
  "worksheets.onActivated": 11,
  "worksheets.onAdded": 13,
  "worksheets.onDeleted": 15,
  "worksheets.onCalculated": 16,
  "worksheets.onRowSorted": 19,
  "worksheets.onColumnSorted": 20,
  "worksheets.onRowHiddenChanged": 22,
  "worksheets.onNameChanged": 25,
  "tables.onAdded": 102,
  "tables.onDeleted": 103,
};
