/** What Univer says when a workbook may not be changed: here that has one reason only. */
const REFUSAL = "Here this workbook can only be looked at. It is as it was.";

/** These texts, but with our words where a change is refused. */
export function refusalTexts<T extends object>(texts: T, isPermission = false): T {
  const parts = Object.entries(texts).map(([key, part]: [string, unknown]) => {
    if (typeof part === "object" && part !== null && !Array.isArray(part)) {
      return [key, refusalTexts(part, isPermission || key === "permission")];
    }
    return [key, isPermission && (key.endsWith("Err") || key === "alertContent") ? REFUSAL : part];
  });
  return Object.fromEntries(parts);
}
