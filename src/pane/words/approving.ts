/** The words of approving a wick. */

export const APPROVING = {
  under: "Approving the wick",
  approve: (wick: string, vessel: string) => `Approve ${wick} for ${vessel}`,
  anyway: (wick: string, vessel: string) => `Approve ${wick} for ${vessel} anyway`,
  doubts: (wick: string) => `Before ${wick} is approved, check these:`,
  changed: "What is to check has changed since this was shown. Look at it once more, then press again.",
} as const;
