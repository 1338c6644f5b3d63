/** Why something could not be kept, in words for the maker. */
export class KeepFault extends Error {
  constructor(
    readonly reason: "full" | "refused" | "newer" | "elsewhere",
    message: string,
  ) {
    super(message);
  }
}

/** What the browser's own fault means. */
export function keepFault(fault: unknown): KeepFault {
  if (fault instanceof KeepFault) return fault;
  const name = fault instanceof DOMException || fault instanceof Error ? fault.name : "";
  if (name === "QuotaExceededError") {
    return new KeepFault(
      "full",
      "The browser has no room left: the last changes are not kept. Save a file, then remove workbooks that you no longer need.",
    );
  }
  if (name === "VersionError") {
    return new KeepFault("newer", "A newer version of this page kept your workbooks. Reload the page to work on them.");
  }
  if (name === "ConstraintError") {
    return new KeepFault(
      "elsewhere",
      "This workbook was changed in another tab. What you do here is not kept: save it as a file.",
    );
  }
  return new KeepFault(
    "refused",
    "This browser keeps nothing for this page: what you do here is lost when you close it. Save a file before you leave.",
  );
}
