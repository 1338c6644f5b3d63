const STRING_OR_OURS = /"[^"]*"|\bPOUR\.([A-Z0-9]+)(?=\()/gi;

/**
 * A formula as a workbook file holds it: without its `=`, and with `POUR.X(` as `_xldudf_POUR_X(`, the name
 * Excel keeps for an add-in's function. Text in quotes stays as it is.
 */
export function fileFormula(formula: string): string {
  return formula
    .replace(/^=/, "")
    .replace(STRING_OR_OURS, (found, id?: string) => (id ? `_xldudf_POUR_${id.toUpperCase()}` : found));
}

/** Whether a formula in its file form calls one of our functions, and so may spill. */
export const callsOurs = (inFile: string): boolean => inFile.includes("_xldudf_POUR_");
