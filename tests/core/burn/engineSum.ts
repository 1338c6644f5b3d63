import { HyperFormula } from "hyperformula";

// Numbers as they are: its ten digits would hide the rest.
const engine = HyperFormula.buildFromArray([[]], { licenseKey: "gpl-v3", smartRounding: false });

/** What a general spreadsheet engine makes of a formula: a second calculation by other people's code. */
export function engineSum(formula: string): number {
  const value = engine.calculateFormula(formula, 0);
  if (typeof value !== "number") throw new Error(`${formula} gives ${JSON.stringify(value)}`);
  return value;
}

/** Values as an array of a formula. */
export const inFormula = (values: readonly number[]): string => `{${values.join(";")}}`;
