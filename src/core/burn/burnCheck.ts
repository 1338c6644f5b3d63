import { burnFindings } from "./burnFindings";

/**
 * The findings of one candle in one text, empty only when all was read and all is within.
 * @param given see burnFindings
 */
export function burnCheck(...given: Parameters<typeof burnFindings>): string {
  const { beyond, lacks } = burnFindings(...given);
  return [...beyond, ...(lacks.length > 0 ? [`not finished: ${lacks.join(", ")}`] : [])].join("; ");
}
