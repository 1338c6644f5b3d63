/** Texts that a spreadsheet would compute or change, a page would run, or a file could hardly hold. */
export const HOSTILE_TEXTS: readonly string[] = [
  "=1+1",
  "+SUM(A1)",
  "@x",
  "-2",
  "'quoted",
  "=cmd|' /C calc'!A0",
  "=POUR.FILLWEIGHT(1)",
  "<img src=x onerror=alert(1)>",
  "x".repeat(5000),
  "long ".repeat(1000),
  "שעוות סויה",
  "كأس زجاجي",
  "12",
  "007",
  "6%",
  "1/2",
  "2026-11-26",
  "TRUE",
  "#N/A",
  "  spaced ",
];

/** Those that can be a vessel's name on a run sheet, where spaces around a name are taken away. */
export const HOSTILE_NAMES = HOSTILE_TEXTS.filter((text) => text === text.trim());
