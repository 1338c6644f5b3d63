/** A rich value stands for its basic one: `{ type: "Double", basicValue: 12 }` is 12. */
export function basic(cell: unknown): unknown {
  return typeof cell === "object" && cell !== null && "basicValue" in cell ? cell.basicValue : cell;
}

/** Whether a cell holds nothing, or a formula's empty text. */
export function isBlank(cell: unknown): boolean {
  const value = basic(cell);
  return value === null || value === undefined || value === "";
}
