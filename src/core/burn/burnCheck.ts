import { burnFindings } from "./burnFindings";
import { NOT_FINISHED } from "./openings";

/**
 * The findings of one candle in one text, empty only when all was read and all is within. One that is not to burn on
 * is not asked to.
 * @param given see burnFindings
 */
export function burnCheck(...given: Parameters<typeof burnFindings>): string {
  const { beyond, remarks, lacks, ends } = burnFindings(...given);
  const open = lacks.length > 0 ? [`${NOT_FINISHED}${lacks.join(", ")}`] : [];
  return [...beyond, ...remarks, ...(ends ? ["end this test"] : open)].join("; ");
}
