const STRING_OR_CALL = /"[^"]*"|\bPOUR\.([A-Z0-9]+)(?=\()|\b(?:TEXTJOIN|MAXIFS)(?=\()/gi;

/**
 * A formula as a workbook file holds it: without its `=`, with `POUR.X(` as `_xldudf_POUR_X(`, the name Excel keeps
 * for an add-in's function, and with the mark of functions that are younger than the file format. Text in quotes
 * stays as it is.
 */
export function fileFormula(formula: string): string {
  return formula.replace(/^=/, "").replace(STRING_OR_CALL, (found, id?: string) => {
    if (id) return `_xldudf_POUR_${id.toUpperCase()}`;
    return found.startsWith('"') ? found : `_xlfn.${found.toUpperCase()}`;
  });
}

/** Whether a formula in its file form calls one of our functions, and so may spill. */
export const callsOurs = (inFile: string): boolean => inFile.includes("_xldudf_POUR_");
